"""A client travels: in the calendar file every session stands on the clock that holds on its day."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from icalendar import Calendar

from core.calendar.recurrence import Weekday, weekly
from core.calendar.stored import when_to_text
from core.facts import PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan
from core.store import facts
from tests.bot.days.test_ical import read_back
from tests.practice import CLIENT, SQUAT, START, Practice

LISBON, TOKYO = ZoneInfo("Europe/Lisbon"), ZoneInfo("Asia/Tokyo")
UNTIL = datetime(2026, 4, 20, tzinfo=UTC)


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    when = when_to_text(weekly((Weekday.MON, Weekday.THU), time(19), "Europe/Lisbon", date(2026, 3, 2)))
    store = made.stage.engine.store
    with store.transaction():
        plan = plan_to_text(Plan("squats", (SQUAT,), when=when))
        facts.put(store, made.client, PlanGiven(START, plan, 1), START)
    yield made
    made.stage.close()


def asked(practice: Practice) -> bytes:
    practice.types(CLIENT, "calendar")
    sent = practice.newest(CLIENT).document
    assert sent is not None
    return sent


def expected() -> list[datetime]:
    """Mondays and Thursdays at 19:00, from 9 to 15 March on the clock of Tokyo, else on Lisbon's."""
    days = [date(2026, 3, 2) + timedelta(days=offset) for offset in range(49)]
    at = [
        datetime.combine(
            day, time(19), tzinfo=TOKYO if date(2026, 3, 9) <= day <= date(2026, 3, 15) else LISBON
        )
        for day in days
        if day.weekday() in (0, 3)
    ]
    return [one.astimezone(UTC) for one in at]


def travels(practice: Practice) -> None:
    practice.types(CLIENT, "I am in Tokyo from 9 march to 15 march")
    practice.taps(CLIENT, "Yes")


@pytest.mark.parametrize("days", [0, 9, 20])
def test_before_in_and_after_the_trip_the_file_gives_the_same_sessions(practice: Practice, days: int) -> None:
    travels(practice)
    practice.later(days=days)
    assert read_back(asked(practice), UNTIL) == expected()


def test_both_zones_are_in_the_file_and_no_id_stands_for_two_series(practice: Practice) -> None:
    travels(practice)
    ids = []
    for days in (0, 9, 11):
        practice.later(days=days)
        calendar = Calendar.from_ical(asked(practice))
        assert {str(zone["tzid"]) for zone in calendar.walk("VTIMEZONE")} == {"Europe/Lisbon", "Asia/Tokyo"}
        ids.append([str(event["uid"]) for event in calendar.walk("VEVENT")])
        assert len(set(ids[-1])) == len(ids[-1]) == 3
    assert ids[0] == ids[1] == ids[2]


def test_without_a_trip_it_is_one_series_as_ever(practice: Practice) -> None:
    practice.later(days=3)
    assert len(Calendar.from_ical(asked(practice)).walk("VEVENT")) == 1
