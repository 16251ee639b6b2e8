"""The travel plan: one tap, given dates, and back by itself; asked for by either side."""

from collections.abc import Iterator

import pytest

from bot.engine import status
from core.plans import Plan
from core.templates import TEMPLATES, build
from tests.bot.coach_room import COACH, RACK, RUTA, SQUATS, WEEKLY, Room

BOTH = build(TEMPLATES["dumbbells"], RACK, {"goblet_squat": RACK[1], "curl": RACK[0]}, when=WEEKLY)


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


def movements(room: Room) -> list[str]:
    plan = status.plan_of(room.stage.engine, room.person(RUTA).id)
    assert plan is not None
    return [one.movement for one in plan.exercises]


def begin(room: Room, plan: Plan = BOTH) -> None:
    room.client(RUTA, "Ruta", plan)
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "Travel plan")


def test_the_coach_swaps_the_plan_and_it_comes_back_by_itself(room: Room) -> None:
    begin(room)
    assert "goblet squat becomes chair squat, curl becomes towel curl" in room.says(COACH)
    room.taps(COACH, "One week")
    assert "Chair squat" in "".join(message.text for message in room.messages(RUTA))
    assert "Your coach swapped your plan for one without equipment." in room.says(RUTA)
    assert movements(room) == ["chair_squat", "towel_curl"]
    room.types(COACH, "ruta")
    assert "Without equipment until 8 Mar 2026." in room.says(COACH)
    room.later(days=6, hours=14)
    assert any("Back to your usual plan" in message.text for message in room.messages(RUTA))
    assert any("Ruta is back on the usual plan" in message.text for message in room.messages(COACH))
    assert movements(room) == ["goblet_squat", "curl"]


def test_the_client_asks_for_it_and_the_coach_hears(room: Room) -> None:
    room.client(RUTA, "Ruta", SQUATS)
    room.types(RUTA, "travelling")
    assert "goblet squat becomes chair squat" in room.says(RUTA)
    room.types(RUTA, "from 5 march to 7 march")
    assert "the usual plan comes back by itself" in room.says(RUTA)
    assert "Ruta travels." in room.says(COACH)
    assert movements(room) == ["goblet_squat"]
    room.later(days=2, hours=14)
    assert any("From today on, without equipment" in message.text for message in room.messages(RUTA))
    assert movements(room) == ["chair_squat"]
    room.types(RUTA, "cancel")  # the reminder
    room.types(RUTA, "travelling")
    room.taps(RUTA, "I am back")
    assert movements(room) == ["goblet_squat"]
    room.later(days=5)
    assert sum("back on the usual plan" in message.text for message in room.messages(COACH)) == 1


def test_a_session_away_is_done_with_the_chair(room: Room) -> None:
    begin(room, SQUATS)
    room.taps(COACH, "Two weeks")
    room.in_a_set(RUTA)
    assert "Chair squat" in room.says(RUTA)


def test_a_plan_that_needs_nothing_goes_along_as_it_is(room: Room) -> None:
    begin(room, build(TEMPLATES["travel"], (), {}))
    assert "needs no equipment" in room.says(COACH)


def test_the_coach_ends_it_before_its_time(room: Room) -> None:
    begin(room)
    room.taps(COACH, "Two weeks")
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "Back from travel")
    assert movements(room) == ["goblet_squat", "curl"]
    assert "Your plan" in room.says(RUTA)
