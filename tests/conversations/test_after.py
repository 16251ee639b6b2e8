"""The questions after a session, played as scripts."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from conversations.protocol import Alert, Begin, Cancelled, Do, Effect, Opened, Record, Said, Say, Woke
from conversations.training.after import DIALOGUE, Brief
from conversations.words import after as words
from conversations.words import safety
from core.facts import Answered, Rated
from core.safety.causes import Cause
from core.safety.pain import PainDay

START = datetime(2026, 3, 2, 7, 0, tzinfo=UTC)
DONE = Brief("7-1", emergency_number="112")
RECAP = Do("recap", {"session": "7-1"})


def play(brief: Brief, *texts: str) -> tuple[list[Say], list[Effect], bool]:
    """What was said and done, and whether it is over."""
    turn = DIALOGUE.advance(None, Opened(START, brief), START)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        assert turn.state is not None, f"over before {text!r}"
        turn = DIALOGUE.advance(turn.state, Said(START, text), START)
        said += turn.replies
        effects += turn.effects
    return said, effects, turn.state is None


def alerts(effects: list[Effect]) -> list[Alert]:
    """What the coach is told."""
    return [effect for effect in effects if isinstance(effect, Alert)]


def test_a_good_session_is_three_answers_and_the_recap() -> None:
    said, effects, over = play(DONE, "7", "0", "no")
    assert over
    assert said[0].text == words.OPENING
    assert effects == [
        Record(Rated(START, "7-1", "effort", "after", 7)),
        Record(Rated(START, "7-1", "pain", "after", 0)),
        Record(Answered(START, "7-1", "after", "numb", "no")),
        RECAP,
    ]


def test_a_stopped_session_begins_with_a_kind_word() -> None:
    assert play(replace(DONE, why="said_hurts"))[0][0].text == words.OPENING_STOPPED


@pytest.mark.parametrize(("typed", "score"), [("none", 0), ("10", 10), ("6/10", 6), ("about 4", 4)])
def test_ratings_are_read_as_people_write_them(typed: str, score: int) -> None:
    assert play(DONE, typed)[1] == [Record(Rated(START, "7-1", "effort", "after", score))]


def test_eleven_is_asked_again() -> None:
    said, effects, _ = play(DONE, "11")
    assert not effects
    assert "0 to 10" in said[-2].text
    assert (said[-1].asks or "").startswith("effort.")


@pytest.mark.parametrize("where", [label for label, _ in words.WHERES])
@pytest.mark.parametrize("pain", [2, 3, 4])
def test_pain_above_the_ceiling_is_told_unless_it_is_the_working_muscle(where: str, pain: int) -> None:
    said, effects, _ = play(DONE, "7", str(pain), where, "no")
    value = dict(words.WHERES)[where]
    assert Record(Rated(START, "7-1", "pain", "after", pain, value)) in effects
    told = [alert for alert in alerts(effects) if alert.cause is Cause.PAIN_AFTER]
    assert bool(told) is (pain > 3 and value in ("band", "elsewhere"))
    assert all(said[-1].text == alert.told for alert in told)
    eased = said[-1].text == safety.told(Cause.PAIN_EASED, "112")
    assert eased is (pain > 3 and value == "joint")
    assert effects[-1] == RECAP


@pytest.mark.parametrize(
    ("before", "pain", "paused"),
    [((), 5, False), ((), 6, True), ((PainDay(4),), 4, True), ((PainDay(3),), 4, False)],
)
def test_joint_pain_above_five_or_twice_in_a_row_waits_for_the_coach(
    before: tuple[PainDay, ...], pain: int, paused: bool
) -> None:
    brief = replace(DONE, pain_days=(*before, PainDay(0)))
    _, effects, _ = play(brief, "7", str(pain), "A joint", "no")
    assert [alert.cause for alert in alerts(effects)] == ([Cause.PAIN_PAUSED] if paused else [])


@pytest.mark.parametrize("reply", ["yes", "not sure"])
def test_numb_right_after_is_told_to_the_coach_and_asked_again_at_ten_minutes(reply: str) -> None:
    said, effects, over = play(DONE, "7", "0", reply)
    assert over
    assert [alert.cause for alert in alerts(effects)] == [Cause.NUMB_AFTER]
    assert "112" in said[-1].text
    assert said[-1].text == alerts(effects)[0].told
    assert Begin("still_numb", {"session": "7-1"}, at=START + timedelta(minutes=10)) in effects
    assert effects[-1] == RECAP


def test_a_red_flag_typed_instead_of_a_number_ends_in_help() -> None:
    _, effects, over = play(DONE, "my left foot is blue and cold")
    assert over
    assert [alert.cause for alert in alerts(effects)] == [Cause.CIRCULATION]
    assert effects[-2] == RECAP
    assert isinstance(effects[-1], Begin)
    assert effects[-1].dialogue == "trouble"


def test_silence_or_leaving_still_brings_the_recap() -> None:
    opened = DIALOGUE.advance(None, Opened(START, DONE), START)
    reminded = DIALOGUE.advance(opened.state, Woke(START), START + timedelta(minutes=20))
    early = DIALOGUE.advance(reminded.state, Woke(START), START + timedelta(minutes=119))
    assert early.state is not None
    assert DIALOGUE.advance(early.state, Woke(START), START + timedelta(hours=2)).effects == (RECAP,)
    assert DIALOGUE.advance(opened.state, Cancelled(START), START).effects == (RECAP,)


@pytest.mark.parametrize(
    ("typed", "score"),
    [("hard", 5), ("Very hard.", 7), ("it was easy", 2), ("moderate", 3), ("a bit hard", 4), ("7/10", 7)],
)
def test_how_hard_it_was_may_be_said_in_the_words_of_the_question(typed: str, score: int) -> None:
    assert play(DONE, typed)[1] == [Record(Rated(START, "7-1", "effort", "after", score))]


@pytest.mark.parametrize("typed", ["no, all gone", "all gone", "no they feel fine", "gone"])
def test_gone_is_no_longer_numb(typed: str) -> None:
    _, effects, over = play(DONE, "7", "0", typed)
    assert over
    assert Record(Answered(START, "7-1", "after", "numb", "no")) in effects


@pytest.mark.parametrize("typed", ["not gone", "gone on the left, still there on the right", "no better"])
def test_not_gone_is_no_no(typed: str) -> None:
    _, effects, _ = play(DONE, "7", "0", typed)
    assert Record(Answered(START, "7-1", "after", "numb", "no")) not in effects
