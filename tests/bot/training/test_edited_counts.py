"""Edits of counts when their movement, or their session, is over."""

from collections.abc import Iterator
from datetime import UTC, datetime
from decimal import Decimal

import pytest

from bot.engine import recording
from bot.engine.training import edited_counts
from bot.play.stage import Stage
from core.facts import SetDone
from core.plans import Side
from core.store import facts, people
from core.store.people import Person, Role
from core.units import Load

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
COACH, CLIENT = 1001, 2001


@pytest.fixture
def stage() -> Iterator[Stage]:
    made = Stage(START, (COACH,), "Europe/Lisbon", lambda *_: None)
    made.add(CLIENT, "Ruta", lambda message, now: None)
    people.add(made.engine.store, CLIENT, "Ruta", Role.CLIENT, "Europe/Lisbon", START)
    yield made
    made.close()


def client(stage: Stage) -> Person:
    found = people.by_chat(stage.engine.store, CLIENT)
    assert found is not None
    return found


def noted(stage: Stage, side: Side, reps: int, message: int, left: int | None = None) -> None:
    load = str(Load(Decimal(6)))
    one = SetDone(START, "1-1", 1, "one_arm_row", 1, side, load, reps, False, START, None, 6, False, left)
    recording.record(stage.engine, client(stage).id, one, message)


def stored(stage: Stage) -> dict[Side, int]:
    return {one.side: one.reps for one in facts.current(stage.engine.store, SetDone, client(stage).id)}


@pytest.mark.parametrize("words", ["30 left 29 right", "29 right, 30 left", "30 29"])
def test_an_edited_pair_of_counts_keeps_its_sides(stage: Stage, words: str) -> None:
    noted(stage, Side.LEFT, 28, 7)
    noted(stage, Side.RIGHT, 31, 7)
    edited_counts.amend(stage.engine, client(stage), words, 7, START)
    assert stored(stage) == {Side.LEFT: 30, Side.RIGHT: 29}


def test_an_edit_that_names_one_side_changes_that_side(stage: Stage) -> None:
    noted(stage, Side.LEFT, 28, 7)
    noted(stage, Side.RIGHT, 31, 7)
    edited_counts.amend(stage.engine, client(stage), "29 right", 7, START)
    assert stored(stage) == {Side.LEFT: 28, Side.RIGHT: 29}


def test_editing_the_answer_to_what_was_left_does_not_change_the_count(stage: Stage) -> None:
    noted(stage, Side.BOTH, 20, 7)
    noted(stage, Side.BOTH, 20, 9, left=4)  # the same set again, now with what was left
    edited_counts.amend(stage.engine, client(stage), "3", 9, START)
    assert stored(stage) == {Side.BOTH: 20}
    edited_counts.amend(stage.engine, client(stage), "21", 7, START)
    assert stored(stage) == {Side.BOTH: 21}
