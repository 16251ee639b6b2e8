"""Whoever stopped in the middle of a talk before an upgrade goes on after it."""

from datetime import timedelta

import msgspec
import pytest

from conversations.catalogue import CATALOGUE
from tests.conversations.stored_states import kept, missing
from tests.conversations.test_every_dialogue import KINDS, START, TEXTS, event_of

STORED = kept()


def test_every_dialogue_has_stored_states_and_none_was_dropped() -> None:
    assert set(STORED) == set(CATALOGUE), "python -m tests.conversations.stored_states adds what is missing"
    assert all(STORED.values())


@pytest.mark.parametrize("name", sorted(CATALOGUE))
def test_every_question_and_every_answer_that_may_be_stored_has_a_sample(name: str) -> None:
    left = missing(CATALOGUE[name], STORED[name])
    assert not left, f"python -m tests.conversations.stored_states {name}; where that finds none: BEGINNINGS"


@pytest.mark.parametrize("name", sorted(STORED))
def test_a_state_from_before_opens_and_any_event_gets_a_turn(name: str) -> None:
    dialogue, at = CATALOGUE[name], START + timedelta(minutes=1)
    for stored in STORED[name]:
        for kind in KINDS:
            state = msgspec.json.decode(msgspec.json.encode(stored), type=dialogue.state)
            turn = dialogue.advance(state, event_of(kind, TEXTS[0], at, None), at)
            assert turn.state is None or msgspec.json.encode(turn.state)
