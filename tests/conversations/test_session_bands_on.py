"""Bands that go on: too early, in the break, or not at all."""

import pytest

from conversations.protocol import Alert, Hurts
from conversations.session.state import Phase
from conversations.words import session as words
from core.facts import BandsOff, BandsOn
from tests.conversations.test_session import CURL, SQUAT, Played, played


def in_the_break() -> Played:
    return played(SQUAT, CURL).fits().types("31 16 8", 200).types("off")


@pytest.mark.parametrize("text", ["bands are on", "they're on", "both on", "on"])
def test_on_in_the_break_is_off_again_first_and_three_minutes_from_then(text: str) -> None:
    p = in_the_break().types(text, 60)
    assert p.heard == words.ON_TOO_EARLY.format(minutes=3)
    assert len(p.facts(BandsOn)) == 2
    p.types("off", 20)
    assert len(p.facts(BandsOff)) == 2
    assert p.wake_at is not None
    assert (p.wake_at - p.now).total_seconds() == 180
    p.waits()
    assert "Bands on" in p.heard
    assert p.state is not None
    assert p.state.phase is Phase.FIT


def test_counts_in_the_break_are_still_counts() -> None:
    p = in_the_break().types("no, set 1 was 30")
    assert p.sets()[1] == 30


def test_a_second_not_on_is_asked_about_again() -> None:
    p = played()
    for _ in range(2):
        p.waits()
        assert p.heard == words.MAYBE_ON
        p.types("not on")
        assert p.heard == words.NOT_ON_YET
    assert len(p.facts(BandsOn)) == len(p.facts(BandsOff)) == 2


def test_a_question_about_it_is_no_answer() -> None:
    p = played().waits().types("how tight?")
    assert p.said[-1].text == words.MAYBE_ON
    p.waits()
    assert p.heard == words.MAYBE_ON
    p.waits()
    assert words.MAYBE_ALARM in p.heard


def test_after_loosening_the_question_is_about_the_fit_and_not_to_put_them_on() -> None:
    p = played().types("on").types("8").types("hmm?")
    assert "Fit the bands anew" in p.said[-1].text


@pytest.mark.parametrize("text", ["on", "8", "what now", "they sit well"])
def test_whatever_is_said_with_bands_on_that_should_be_off_asks_for_them_off_again(text: str) -> None:
    p = played(SQUAT).types("on").types("9").types("off").types("on", 60)
    assert p.state is not None
    assert p.state.on_at is not None
    p.types(text)
    assert "ands off" in p.heard
    assert p.said[-1].choices[0].value == "off"


@pytest.mark.parametrize(
    "text", ["never had cramp before, came on at lunch", "not numb but my bag fell on it"]
)
def test_a_tale_of_a_sign_that_is_denied_puts_no_band_on(text: str) -> None:
    p = played().types(text)
    assert p.facts(BandsOn) == []


@pytest.mark.parametrize("answered", [(), ("6",), ("6", "2"), ("6", "2", "2")])
@pytest.mark.parametrize("text", ["the left one pinches", "it caught my skin"])
def test_a_band_that_pinches_is_fitted_anew_whatever_the_check_asks(
    answered: tuple[str, ...], text: str
) -> None:
    p = played(SQUAT).types("on")
    for answer in answered:
        p.types(answer)
    p.give(Hurts(p.now, text))
    assert p.heard == f"{words.OFF_NOW} {words.OFF_WHY['hurts']}"
    assert [one for one in p.effects if isinstance(one, Alert)] == []
    assert words.LOOSER in p.types("off").waits().heard
    assert p.types("on").give(Hurts(p.now, text)).types("off").over  # twice is enough for one session


def test_a_joint_that_pinches_during_the_check_is_no_band() -> None:
    p = played(SQUAT).types("on")
    assert p.give(Hurts(p.now, "my knee pinches")).heard == words.HURTS


def test_a_pinch_in_the_middle_of_a_set_is_asked_about() -> None:
    p = played(SQUAT).fits()
    assert p.give(Hurts(p.now, "it pinches")).heard == words.HURTS
