"""A coach chooses when the weekly digest comes, in plain words; played in the chat."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine.days import calendar
from core.calendar.zones import local
from core.store import duties
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, Room
from tests.practice import Practice

ZONE = "Europe/Lisbon"


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    made.client(RUTA, "Ruta")
    yield made
    made.stage.close()


def chooses(room: Room, text: str, coach: int = COACH) -> None:
    room.types(coach, "settings")
    room.taps(coach, "Weekly digest")
    room.types(coach, text)


def digests(room: Room, coach: int = COACH) -> list[str]:
    """The local times at which a digest came."""
    return [
        f"{local(message.at, ZONE):%a %d %b %H:%M}"
        for message in room.messages(coach)
        if message.text.startswith("Your week.")
    ]


def test_the_day_and_hour_are_said_back_with_the_next_date_and_the_zone(room: Room) -> None:
    chooses(room, "sunday 6pm")
    assert room.says(COACH) == (
        "Noted. Weekly digest: Sunday 18:00. The next one: Sunday 8 March 2026, 18:00 (Lisbon time). "
        "'week' shows it at any time."
    )
    room.types(COACH, "settings")
    assert "Weekly digest: Sunday 18:00." in room.says(COACH)


def test_it_comes_then_and_every_week_after_also_over_summer_time(room: Room) -> None:
    chooses(room, "every sunday at 18:00")
    room.later(days=30)
    assert digests(room) == ["Sun 08 Mar 18:00", "Sun 15 Mar 18:00", "Sun 22 Mar 18:00", "Sun 29 Mar 18:00"]


def test_a_day_alone_keeps_the_hour_and_another_coach_keeps_monday(room: Room) -> None:
    room.client(MILO, "Milo", coach=SECOND)
    chooses(room, "thursday")
    assert "Thursday 07:00" in room.says(COACH)
    room.later(days=8)
    assert digests(room) == ["Thu 05 Mar 07:00"]
    assert digests(room, SECOND) == ["Mon 09 Mar 07:00"]


def test_six_o_clock_is_asked_back_with_both_readings(room: Room) -> None:
    room.types(COACH, "settings")
    room.taps(COACH, "Clock")
    room.taps(COACH, "7:00 pm")
    chooses(room, "sunday at 6")
    assert room.labels(COACH) == ["Sunday 6:00 am", "Sunday 6:00 pm"]
    room.taps(COACH, "Sunday 6:00 pm")
    assert "Sunday 8 March 2026, 6:00 pm" in room.says(COACH)


@pytest.mark.parametrize(
    "text", ["sometimes", "sunday and monday 6pm", "every other sunday 6pm", "6pm", "tomorrow 6pm"]
)
def test_what_is_no_weekly_time_is_asked_again(room: Room, text: str) -> None:
    chooses(room, text)
    assert "Noted" not in room.says(COACH)
    room.types(COACH, "sunday 6pm")
    assert "Sunday 8 March 2026" in room.says(COACH)


def test_a_change_of_time_never_makes_two_digests_of_one_week(room: Room) -> None:
    room.later(days=7)  # Monday's has come
    assert digests(room) == ["Mon 09 Mar 07:00"]
    chooses(room, "tuesday 8am")
    assert "Tuesday 17 March 2026" in room.says(COACH)
    chooses(room, "friday 8am")
    assert "Friday 20 March 2026" in room.says(COACH)
    room.later(days=14)
    assert digests(room) == ["Mon 09 Mar 07:00", "Fri 20 Mar 08:00"]


def test_one_that_came_late_does_not_put_off_the_next(room: Room) -> None:
    coach = room.person(COACH)
    room.later(days=6)
    room.stage.clock.skip_to(room.now + timedelta(days=2))  # nobody was running on Monday
    room.settle()
    assert [day[:3] for day in digests(room)] == ["Tue"]
    with room.store.transaction():
        calendar.plan_week(room.stage.engine, coach, room.now)
    planned = duties.next_talk(room.store, coach.id, "weekly")
    assert planned is not None
    assert f"{local(planned.due_at, ZONE):%a %d %b %H:%M}" == "Mon 16 Mar 07:00"


def test_a_client_has_no_digest_to_choose(room: Room) -> None:
    room.types(RUTA, "settings")
    assert "Weekly digest" not in room.labels(RUTA)


def test_whoever_has_no_clients_gets_no_week_unless_asked_for() -> None:
    practice = Practice()
    practice.later(days=8)
    assert any(text.startswith("Your week.") for text in practice.heard(COACH))
    assert not any(text.startswith("Your week.") for text in practice.heard(SECOND))
    practice.types(SECOND, "week")
    assert practice.newest(SECOND).text == "Your week.\nNo clients yet."
    practice.stage.close()
