"""The questions after a session, played as scripts."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from conversations.after import DIALOGUE, Brief
from conversations.protocol import Alert, Begin, Cancelled, Do, Effect, Opened, Record, Said, Say, Woke
from conversations.words import after as words
from core.facts import Answered, Rated

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
    told = [alert for alert in alerts(effects) if alert.cause == "pain_after"]
    assert bool(told) is (pain > 3 and value != "muscle")
    assert all(said[-1].text == alert.told for alert in told)
    assert effects[-1] == RECAP


@pytest.mark.parametrize("reply", ["yes", "not sure"])
def test_numb_that_stays_goes_to_the_coach_now_with_what_to_do(reply: str) -> None:
    said, effects, over = play(DONE, "7", "0", reply)
    assert over
    assert [alert.cause for alert in alerts(effects)] == ["numb_after"]
    assert "112" in said[-1].text
    assert said[-1].text == alerts(effects)[0].told
    assert effects[-1] == RECAP


def test_a_red_flag_typed_instead_of_a_number_ends_in_help() -> None:
    _, effects, over = play(DONE, "my left foot is blue and cold")
    assert over
    assert [alert.cause for alert in alerts(effects)] == ["said_circulation"]
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
