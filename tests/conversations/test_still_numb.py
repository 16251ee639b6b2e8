"""Ten minutes after bands off, played as a script."""

from datetime import UTC, datetime, timedelta

import pytest

from conversations.protocol import Alert, Opened, Said, Turn, Woke
from conversations.training.still_numb import DIALOGUE, Brief
from conversations.words import after as words
from conversations.words import common, safety
from core.safety.causes import Cause

START = datetime(2026, 3, 2, 18, 40, tzinfo=UTC)
TOLD = safety.told(Cause.NUMB_STILL, "112")


def opened() -> Turn[object]:
    """The question is asked."""
    return DIALOGUE.advance(None, Opened(START, Brief("7-1", "112")), START)


def causes(turn: Turn[object]) -> list[Cause]:
    """Why the coach is told."""
    return [effect.cause for effect in turn.effects if isinstance(effect, Alert)]


@pytest.mark.parametrize("reply", ["yes", "not sure", "my hand is still numb"])
def test_still_numb_goes_to_the_coach_now(reply: str) -> None:
    turn = DIALOGUE.advance(opened().state, Said(START, reply), START)
    assert causes(turn) == [Cause.NUMB_STILL]
    assert turn.replies[-1].text == TOLD


def test_gone_is_good() -> None:
    turn = DIALOGUE.advance(opened().state, Said(START, "no"), START)
    assert causes(turn) == []
    assert turn.replies[-1].text == words.NOT_NUMB


def test_silence_counts_as_still_numb_after_five_minutes_and_not_before() -> None:
    turn = opened()
    asked = DIALOGUE.advance(turn.state, Woke(START), START + timedelta(minutes=2))
    assert asked.replies[0].text == common.NO_WORD_YET
    early = DIALOGUE.advance(asked.state, Woke(START), START + timedelta(minutes=4, seconds=59))
    assert causes(early) == []
    late = DIALOGUE.advance(early.state, Woke(START), START + timedelta(minutes=5))
    assert causes(late) == [Cause.NUMB_STILL]
    assert late.state is None
