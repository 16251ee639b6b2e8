"""The coach lets a client train more often than usual, with a reason, and takes it back; played on both sides."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

import pytest

from bot.engine.training import recovery
from core.calendar.limits import USUAL, Limits, limits_from_text, limits_to_text
from core.store.people import Person
from tests.bot.coach_room import COACH, MILO, RUTA, SQUATS, Room


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    made.client(
        RUTA, "Ruta", replace(SQUATS, when=SQUATS.when.replace("thu", "wed") if SQUATS.when else None)
    )
    yield made
    made.stage.close()


def allows(room: Room, *answers: str) -> None:
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "How often")
    for answer in answers:
        room.types(COACH, answer)


def test_a_standing_permission_is_stored_shown_and_told(room: Room) -> None:
    allows(room, "5 a week", "24 hours", "Light loads, back from holiday, sleeps well")
    assert "Noted: Ruta may train the same limbs at most 5 times a week, 24 hours apart." in room.says(COACH)
    assert room.says(RUTA).startswith("Your coach lets you train the same limbs at most 5 times a week")
    room.types(COACH, "ruta")
    assert "May train at most 5 times a week, 24 hours apart: Light loads" in room.says(COACH)
    room.taps(COACH, "More")
    room.taps(COACH, "Log")
    assert "how often to train" in room.says(COACH)


def one_more(room: Room, text: str) -> None:
    """The client asks for one more session and not for another time."""
    room.types(RUTA, text)
    room.types(RUTA, "2")


def test_days_that_the_permission_covers_are_not_asked_about_again(room: Room) -> None:
    allows(room, "4", "24", "Light loads")
    one_more(room, "tomorrow 7pm")
    assert room.says(RUTA).startswith("Good, noted.")


def test_without_it_they_are(room: Room) -> None:
    one_more(room, "tomorrow 7pm")
    assert "less than 36 hours" in room.says(RUTA)


def test_what_goes_over_the_permission_is_asked_about_with_its_own_numbers(room: Room) -> None:
    allows(room, "4", "24", "Light loads")
    one_more(room, "tomorrow 6:59pm")
    assert "less than 24 hours" in room.says(RUTA)


def test_a_session_that_the_permission_covers_starts_without_a_warning(room: Room) -> None:
    client = room.person(RUTA).id
    room.trained(client, "a", (30, 15, 15), room.now)
    room.later(hours=25)
    room.types(RUTA, "start")
    assert any("less than 36 hours ago" in message.text for message in room.messages(RUTA))
    room.types(RUTA, "cancel")
    allows(room, "4", "24", "Light loads")
    seen = len(room.messages(RUTA))
    room.types(RUTA, "start")
    assert not any("hours ago" in message.text for message in room.messages(RUTA)[seen:])


def test_it_is_taken_back_in_one_tap_and_the_client_hears_it(room: Room) -> None:
    allows(room, "4", "24", "Light loads")
    allows(room)
    room.taps(COACH, "As usual again")
    assert "the usual limits hold again" in room.says(COACH)
    assert "usual rhythm" in room.says(RUTA)
    assert recovery.allowed(room.stage.engine, room.person(RUTA).id) == USUAL
    room.types(COACH, "ruta")
    assert "May train" not in room.says(COACH)


@pytest.mark.parametrize("typed", ["2", "7", "often"])
def test_no_number_outside_the_bounds_is_taken(room: Room, typed: str) -> None:
    allows(room, typed)
    assert "Noted" not in room.says(COACH)
    assert recovery.allowed(room.stage.engine, room.person(RUTA).id) == USUAL


@pytest.mark.parametrize("typed", ["23", "37"])
def test_no_gap_outside_the_bounds_is_taken(room: Room, typed: str) -> None:
    allows(room, "4", typed)
    assert "Why?" not in room.says(COACH)


@pytest.mark.parametrize("typed", ["yes", "-", "..."])
def test_more_than_usual_wants_a_reason(room: Room, typed: str) -> None:
    allows(room, "4", "24", typed)
    assert recovery.allowed(room.stage.engine, room.person(RUTA).id) == USUAL


def test_another_coachs_client_is_not_theirs_to_allow(room: Room) -> None:
    from tests.bot.coach_room import SECOND

    milo = room.client(MILO, "Milo", coach=SECOND)
    asked(room, room.person(COACH), milo, room.now)
    assert "allowing" not in [row["dialogue"] for row in room.store.rows("SELECT dialogue FROM thread")]


def asked(room: Room, coach: Person, client: int, now: datetime) -> None:
    from bot.engine.coach import menu

    with room.store.transaction():
        menu.chosen(room.stage.engine, coach, f"menu:allow:{client}", now)


@pytest.mark.parametrize("limits", [Limits(4, 24), Limits(3, 30), Limits(6, 36), USUAL])
def test_limits_come_back_as_they_were_stored(limits: Limits) -> None:
    assert limits_from_text(limits_to_text(limits)) == limits


@pytest.mark.parametrize("text", ["2/36", "7/36", "4/23", "4/37", "x", "4"])
def test_limits_outside_the_bounds_are_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"sessions_a_week|hours_apart|invalid literal"):
        limits_from_text(text)
