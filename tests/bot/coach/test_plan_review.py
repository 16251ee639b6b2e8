"""A plan is reviewed after six weeks: what was reached, back to heavier loads or on; played on both sides."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine import status
from bot.engine.numbers import weeks
from core.facts import Detail, LoadMoved, Rated
from tests import played
from tests.bot.coach_room import COACH, RUTA, Room


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    client = made.client(RUTA, "Ruta")

    def six_weeks() -> None:
        for week in range(6):
            made.trained(client, f"w{week}", (30, 15, 8), made.now)
            made.later(days=7)

    played.once("six weeks of squats", made.stage, played.mark(made.stage), six_weeks)
    made.put(client, LoadMoved(made.now, "w5", "goblet_squat", "10 kg", "14 kg", "up", "in_range", True))
    made.put(client, Rated(made.now, "w5", "pain", "after", 2, "joint"))
    yield made
    made.stage.close()


def reviews(room: Room) -> str:
    room.types(COACH, "ruta")
    room.taps(COACH, "Review the plan")
    return room.says(COACH)


def test_the_review_says_what_was_reached_and_asks_about_heavier_loads(room: Room) -> None:
    said = reviews(room)
    assert said.startswith("Review, Ruta: 6 weeks, 6 sessions.")
    assert "from 10 kg to 14 kg" in said
    assert "Pain: at most 2 of 10, last 2." in said
    assert "Back to heavier loads?" in said
    assert "ask them first" in said


def test_going_back_to_heavier_loads_ends_the_bands_and_the_client_waits_for_the_coach(room: Room) -> None:
    reviews(room)
    room.taps(COACH, "Back to heavier loads")
    room.later(hours=12)
    heard = [message.text for message in room.messages(RUTA)]
    assert any("This plan is done: 6 sessions." in text for text in heard)
    assert any("back to heavier loads, without bands" in text for text in heard)
    assert status.plan_of(room.stage.engine, room.person(RUTA).id) is None
    room.types(RUTA, "start")
    assert "bands on" not in room.says(RUTA).lower()


def test_a_plan_that_goes_on_is_due_again_after_six_more_weeks(room: Room) -> None:
    reviews(room)
    room.taps(COACH, "This plan goes on")
    room.later(hours=12)
    assert any("The plan goes on." in message.text for message in room.messages(RUTA))
    client, reviewed = room.person(RUTA), room.now - timedelta(hours=12)
    assert not weeks.review_due(room.stage.engine, client, reviewed + timedelta(days=42, seconds=-1))
    assert weeks.review_due(room.stage.engine, client, reviewed + timedelta(days=42))
    room.types(COACH, "ruta")
    assert "Review the plan" not in room.labels(COACH)


def test_the_coach_sees_the_clients_emergency_card(room: Room) -> None:
    room.put(room.person(RUTA).id, Detail(room.now, "address", "Rua Nova 3"))
    room.types(COACH, "ruta")
    room.taps(COACH, "More")
    room.taps(COACH, "Emergency card")
    assert room.says(COACH).startswith("EMERGENCY CARD\nRuta")
    assert "Rua Nova 3" in room.says(COACH)
