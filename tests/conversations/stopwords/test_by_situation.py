"""No sign is met with silence where bands may be on or were of late: lists of others, played in each situation."""

from pathlib import Path

import pytest

from conversations.stopwords import Kind, read
from conversations.stopwords.unread import worth_asking
from tests.conversations.stopwords.by_situation import FINE, FLAG, Row, rows
from tests.conversations.stopwords.situations import SITUATIONS, Moment, Outcome
from tests.conversations.stopwords.table import lines

LISTS = sorted((Path(__file__).parent / "by_others").glob("*.txt"))
ROWS = [row for path in LISTS for row in rows(path)]
A_SAMPLE = 6  # every so many-th phrase, another offset for each situation; the tool plays them all
RARE = 0.12  # of harmless phrases that are asked about with nothing of late


def flags(sample: list[Row]) -> list[str]:
    """The signs among them."""
    return [phrase for what, phrase in sample if what == FLAG]


@pytest.mark.parametrize(("place", "name"), list(enumerate(SITUATIONS)))
def test_no_sign_is_met_with_silence(place: int, name: str) -> None:
    moment = Moment(name)
    for phrase in flags(ROWS[place % A_SAMPLE :: A_SAMPLE]):
        assert moment.outcome(phrase) in (Outcome.ROUTED, Outcome.ASKED), phrase


def test_a_phrase_leaves_nothing_behind() -> None:
    moment = Moment("idle, none recently")
    assert moment.outcome("my hand is numb") is Outcome.ROUTED
    assert moment.outcome("see you on friday") is Outcome.SILENT


@pytest.mark.parametrize("phrase", flags(ROWS))
def test_every_sign_is_read_or_worth_asking_about_at_any_time(phrase: str) -> None:
    assert worth_asking(phrase, near=False)


@pytest.mark.parametrize("line", lines() + lines(held_out=True), ids=lambda line: line.text)
def test_what_must_be_read_is_also_worth_asking_about(line: object) -> None:
    assert worth_asking(line.text, near=False) or line.wanted is Kind.NONE  # type: ignore[attr-defined]


def test_harmless_words_are_rarely_asked_about_with_nothing_of_late() -> None:
    harmless = [line.text for line in lines() + lines(held_out=True) if line.wanted is Kind.NONE]
    asked = [text for text in harmless if worth_asking(text, near=False)]
    assert 0 < len(asked) <= RARE * len(harmless)


@pytest.mark.parametrize(
    ("text", "near", "asked"),
    [
        ("not numb anymore", True, False),
        ("the pain has settled", True, False),
        ("my knee feels much better", True, False),
        ("was numb, fine now", True, True),
        ("no tingling but my ribs creak", True, True),
        ("the cupboard dances", True, True),
        ("the cupboard dances", False, False),
        ("good morning coach, my arm", False, True),
        ("left leg 20 right leg 18", True, False),
        ("left leg", True, True),
        ("thrity", True, False),
    ],
)
def test_what_is_asked_about(text: str, near: bool, asked: bool) -> None:
    assert worth_asking(text, near=near) is asked


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("chestpain", Kind.EMERGENCY),
        ("mylegisnumb", Kind.NERVE),
        ("cantbreathe", Kind.EMERGENCY),
        ("backlog", Kind.NONE),
        ("went to the loo and it was dark red", Kind.URINE),
        ("quads are burning as usual", Kind.NONE),
        ("quads are burning", Kind.HURTS),
        ("he collapsed", Kind.EMERGENCY),
        ("my wife collapsed", Kind.UNSURE),
    ],
)
def test_words_run_together_two_clauses_and_a_third_person(text: str, kind: Kind) -> None:
    assert read(text).kind is kind


def test_the_lists_are_there() -> None:
    assert len(LISTS) >= 4
    assert sum(what == FLAG for what, _ in ROWS) >= 240
    assert sum(what == FINE for what, _ in ROWS) >= 80
