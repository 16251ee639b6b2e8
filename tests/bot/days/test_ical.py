"""The calendar file, read back by the library and by dateutil, gives the same sessions as the plan."""

from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from dateutil.rrule import rruleset, rrulestr
from icalendar import Calendar

from bot.making.ical import calendar_file
from core.calendar.changing import added, left_out, on_date, shifted
from core.calendar.occurrences import occurrences_between
from core.calendar.recurrence import Once, Recurrence, Slot, Span, Weekday, When, weekly

LISBON = "Europe/Lisbon"
NOW = datetime(2026, 1, 2, 9, tzinfo=UTC)
EVENINGS = weekly((Weekday.MON, Weekday.THU), time(19), LISBON, date(2026, 1, 5))
# Both hemispheres, half-hour steps of summer time, none at all, and one beyond the date line.
ZONES = (
    "Europe/Lisbon",
    "America/New_York",
    "Australia/Lord_Howe",
    "Asia/Kolkata",
    "America/Santiago",
    "Pacific/Apia",
)


def clock(month: int, day: int, hour: int) -> datetime:
    """A local time of 2026."""
    return datetime.combine(date(2026, month, day), time(hour))


def read_back(data: bytes, until: datetime) -> list[datetime]:
    """Every start that the file gives, in UTC, by dateutil's rules for what the library parsed."""
    events = [event for event in Calendar.from_ical(data).walk("VEVENT")]
    moved = [(event["uid"], event.decoded("recurrence-id")) for event in events if "recurrence-id" in event]
    starts: set[datetime] = set()
    for event in events:
        starts |= {
            at for at in _starts(event, until) if "recurrence-id" in event or (event["uid"], at) not in moved
        }
    return sorted(at.astimezone(UTC) for at in starts if at.astimezone(UTC) < until)


def _starts(event: Any, until: datetime) -> list[datetime]:
    start: datetime = event.decoded("dtstart")
    if "rrule" not in event:
        return [start]
    rules = rruleset()
    rules.rrule(rrulestr(event["rrule"].to_ical().decode(), dtstart=start))
    dropped = event.get("exdate", [])
    for one in dropped if isinstance(dropped, list) else [dropped]:
        for left in one.dts:
            rules.exdate(left.dt)
    return list(rules.between(start, until, inc=True))


def sessions(when: When, until: datetime) -> list[datetime]:
    """What the plan itself says."""
    return [one.at for one in occurrences_between(when, datetime(2025, 12, 1, tzinfo=UTC), until)]


def changed() -> When:
    """Every other week at two times, with holidays, a moved session and an extra one."""
    slots = (Slot(Weekday.MON, time(19)), Slot(Weekday.THU, time(6, 30)))
    plain: When | None = Recurrence(slots, LISBON, date(2026, 1, 5), every=2, until=date(2026, 12, 20))
    plain = left_out(plain, Span(date(2026, 3, 1), date(2026, 3, 20)))
    assert plain is not None
    moved = on_date(plain, date(2026, 4, 2)) or on_date(plain, date(2026, 4, 9))
    assert moved is not None
    return added(shifted(plain, moved, clock(4, 10, 8)), clock(4, 18, 10), LISBON)


@pytest.mark.parametrize("zone", ZONES)
def test_the_file_gives_the_same_sessions_for_a_year_in_every_kind_of_zone(zone: str) -> None:
    when = weekly((Weekday.SUN, Weekday.WED), time(19), zone, date(2026, 1, 4))
    until = datetime(2027, 1, 1, tzinfo=UTC)
    assert read_back(calendar_file((when,), 40, "Squats", "7", NOW), until) == sessions(when, until)


def test_holidays_moves_and_extra_sessions_come_through() -> None:
    until = datetime(2027, 2, 1, tzinfo=UTC)
    found = read_back(calendar_file((changed(),), 40, "Squats", "7", NOW), until)
    assert found == sessions(changed(), until)
    assert len(found) > 40


def test_a_single_session_is_a_single_event() -> None:
    when = Once(clock(1, 8, 7), LISBON)
    until = datetime(2027, 1, 1, tzinfo=UTC)
    assert read_back(calendar_file((when,), 40, "Squats", "7", NOW), until) == [
        datetime(2026, 1, 8, 7, tzinfo=UTC)
    ]


def test_the_file_has_its_zone_its_length_and_ids_that_stay() -> None:
    first = Calendar.from_ical(calendar_file((EVENINGS,), 40, "Squats", "7", NOW))
    later = on_date(EVENINGS, date(2026, 1, 8))
    assert later is not None
    second = Calendar.from_ical(
        calendar_file((shifted(EVENINGS, later, clock(1, 9, 19)),), 40, "Squats", "7", NOW, 3)
    )
    [event] = first.walk("VEVENT")
    assert event.decoded("duration") == timedelta(minutes=40)
    assert event.decoded("dtstart").tzinfo == ZoneInfo(LISBON)
    assert [zone["tzid"] for zone in first.walk("VTIMEZONE")] == [LISBON]
    assert {one["uid"] for one in second.walk("VEVENT")} == {event["uid"]}
    assert all(one["sequence"] == 3 for one in second.walk("VEVENT"))


def test_nothing_about_health_stands_in_the_file() -> None:
    data = calendar_file((EVENINGS,), 40, "Squats", "7", NOW).decode()
    assert "SUMMARY:Squats" in data
    assert "DESCRIPTION" not in data
