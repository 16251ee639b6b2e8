"""Heights of the hands and leans of one's own: a table, a stair, a strap."""

import pytest

from core.bodyweight import hands_on, row_lean
from core.movements import MOVEMENTS
from core.plans import OPEN_AIMS, Exercise, Plan, Region, Scheme
from core.templates import TEMPLATES, build
from tests.conversations.test_adjusting import play

TRAVEL = build(TEMPLATES["travel"], (), {})
ROWS = MOVEMENTS["suspended_row"].rungs
ROW = Plan(
    "rows", (Exercise("suspended_row", Region.ARMS, Scheme.OPEN, OPEN_AIMS, rung=ROWS[0].name, rungs=ROWS),)
)


def test_a_coach_puts_the_hands_on_a_height_of_the_clients_own() -> None:
    chat = play(TRAVEL, "load", "0", "hands 45 cm", "has a bench of that height")
    push_up = chat.given.exercises[0]
    assert push_up.rung == "hands 45 cm up"
    names = [rung.name for rung in push_up.rungs]
    at = names.index("hands 45 cm up")
    assert names[at - 2 : at + 2] == [
        "hands 61 cm up",
        "hands 61 cm up, tempo 2/2",
        "hands 45 cm up",
        "hands 45 cm up, tempo 2/2",
    ]
    assert push_up.rungs[at].fraction == hands_on(45).share
    assert set(rung.name for rung in TRAVEL.exercises[0].rungs) < set(names)


def test_what_was_not_measured_is_said_to_be_in_between() -> None:
    text = play(TRAVEL, "load", "0", "hands 45 cm").says[-1].text
    assert "hands 45 cm up (its share of body weight is read between measured ones)" in text
    assert "between measured" not in play(TRAVEL, "load", "0", "on the floor").says[-1].text


@pytest.mark.parametrize("typed", ["hands 61 cm", "hands on 30 cm", "Hands 30 cm up"])
def test_a_height_that_is_there_is_that_one(typed: str) -> None:
    chat = play(TRAVEL, "load", "0", typed, "why not")
    assert chat.given.exercises[0].rungs == TRAVEL.exercises[0].rungs


@pytest.mark.parametrize("typed", ["hands 62 cm", "hands 90 cm"])
def test_no_fraction_is_made_up_where_nobody_measured(typed: str) -> None:
    chat = play(TRAVEL, "load", "0", typed)
    assert "from 0 to 60" in chat.says[-2].text + chat.says[-1].text
    assert not chat.effects


def test_a_row_takes_a_lean_of_its_own_by_the_sine() -> None:
    chat = play(ROW, "load", "lean 50 degrees", "between two")
    row = chat.given.exercises[0]
    assert row.rung == "lean 50 degrees"
    assert next(rung.fraction for rung in row.rungs if rung.name == row.rung) == row_lean(50).share


def test_the_question_says_that_a_height_may_be_typed() -> None:
    assert "hands 45 cm" in play(TRAVEL, "load", "0").says[-1].text
