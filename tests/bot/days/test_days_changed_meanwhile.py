"""Coach and client change days at once: who answers last writes over nothing that the other has just set."""

from collections.abc import Iterator
from datetime import date

import pytest

from bot.engine import status
from core.calendar.changing import on_date
from core.calendar.stored import when_from_text
from core.facts import CalendarChanged, PlanGiven
from core.store import facts
from tests.bot.coach_room import COACH, RUTA, Room

THURSDAY, FRIDAY = date(2026, 3, 5), date(2026, 3, 6)


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    made.client(RUTA, "Ruta")
    made.later(minutes=1)
    yield made
    made.stage.close()


def trains_on(room: Room, day: date) -> bool:
    """Whether Ruta has a session that day as things stand."""
    plan = status.plan_of(room.stage.engine, room.person(RUTA).id)
    assert plan is not None
    assert plan.when is not None
    return on_date(when_from_text(plan.when), day) is not None


def moves_to_friday(room: Room) -> None:
    """Ruta moves her Thursday."""
    room.types(RUTA, "move thursday to friday")
    room.taps(RUTA, "Yes")
    room.later(minutes=1)
    assert trains_on(room, FRIDAY)


def test_a_coach_who_answers_late_is_asked_once_more_and_the_clients_move_stays(room: Room) -> None:
    room.types(COACH, "ruta: skip next week")
    moves_to_friday(room)
    room.taps(COACH, "Yes")
    heard = [message.text for message in room.messages(COACH)]
    assert heard[-2].startswith("The days were changed while I asked")
    assert heard[-1].startswith("No sessions from Monday 9 March")
    assert trains_on(room, FRIDAY)
    room.taps(COACH, "Yes")
    assert trains_on(room, FRIDAY)
    assert not trains_on(room, THURSDAY)
    assert not trains_on(room, date(2026, 3, 9))


def test_a_client_who_answers_late_reads_the_days_as_they_are(room: Room) -> None:
    room.types(RUTA, "move thursday to friday")
    room.types(COACH, "ruta: skip thursday")
    room.taps(COACH, "Yes")
    room.later(minutes=1)
    room.taps(RUTA, "Yes")
    assert room.says(RUTA).startswith("Nothing is planned then.")
    assert not trains_on(room, THURSDAY)
    assert not trains_on(room, FRIDAY)


def test_a_reason_for_the_record_is_asked_about_the_days_of_now(room: Room) -> None:
    room.types(COACH, "ruta: move thursday to tuesday")
    room.taps(COACH, "Yes, all the same")
    room.types(RUTA, "skip monday")
    room.taps(RUTA, "Yes")
    room.later(minutes=1)
    room.types(COACH, "Light day.")
    assert not [
        one
        for one in facts.current(room.store, CalendarChanged, room.person(RUTA).id)
        if one.by == room.person(COACH).id
    ]


@pytest.mark.parametrize("part", ["Pain ceiling", "Tempo"])
def test_another_part_of_the_plan_leaves_a_day_moved_meanwhile(room: Room, part: str) -> None:
    room.types(COACH, "ruta")
    room.taps(COACH, "Change the plan")
    room.taps(COACH, part)
    value = room.labels(COACH)[-1]
    moves_to_friday(room)
    room.taps(COACH, value)
    room.types(COACH, "It fits.")
    room.later(minutes=1)
    given = facts.latest(room.store, PlanGiven, room.person(RUTA).id)
    assert given is not None
    assert given.why == "It fits."
    assert trains_on(room, FRIDAY)
    assert not trains_on(room, THURSDAY)


def test_days_that_a_coach_names_hold_whatever_was_moved_meanwhile(room: Room) -> None:
    room.types(COACH, "ruta")
    room.taps(COACH, "Change the plan")
    room.taps(COACH, "Days")
    room.types(COACH, "tue and sat 7pm")
    moves_to_friday(room)
    room.types(COACH, "It fits.")
    room.later(minutes=1)
    assert trains_on(room, date(2026, 3, 7))
    assert not trains_on(room, FRIDAY)


def test_a_yes_typed_in_the_second_of_the_coachs_tap_and_after_it_holds(room: Room) -> None:
    """Typed words carry the whole second only, a tap its millisecond."""
    room.types(COACH, "plan ruta")
    room.taps(COACH, "New plan")
    while "Send it" not in room.labels(COACH):
        room.taps(COACH, room.labels(COACH)[0])
    room.types(RUTA, "move thursday to friday")
    room.later(milliseconds=1500 - room.now.microsecond // 1000)
    room.taps(COACH, "Send it")
    room.types(RUTA, "yes")
    assert trains_on(room, FRIDAY)
    assert not trains_on(room, THURSDAY)
