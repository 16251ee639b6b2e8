"""Against RFC 5545 and against python-dateutil, an independent implementation of its recurrence rules."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo, available_timezones

import pytest
from dateutil import rrule
from dateutil.tz import resolve_imaginary
from hypothesis import given, settings
from hypothesis import strategies as st

from core.calendar.occurrences import occurrences_between
from core.calendar.recurrence import Recurrence, Slot, Weekday, weekly
from core.calendar.zones import instant

NEW_YORK = "America/New_York"


# RFC 5545 section 3.3.5, its own example: a time in the gap of 11 March 2007 in New York is read as EST.
def test_a_time_in_the_gap_has_the_offset_from_before_it() -> None:
    assert instant(date(2007, 3, 11), time(2, 30), NEW_YORK) == datetime(2007, 3, 11, 7, 30, tzinfo=UTC)


# The same section: 1:30 on 4 November 2007 in New York comes twice and means the first, EDT.
def test_a_time_that_comes_twice_is_the_first_of_the_two() -> None:
    assert instant(date(2007, 11, 4), time(1, 30), NEW_YORK) == datetime(2007, 11, 4, 5, 30, tzinfo=UTC)


@pytest.mark.parametrize(
    ("zone", "day", "at", "utc"),
    [
        # Lord Howe moves by half an hour: the gap of 4 October 2026 is 02:00-02:30 (IANA time zone database).
        ("Australia/Lord_Howe", date(2026, 10, 4), time(2, 15), datetime(2026, 10, 3, 15, 45, tzinfo=UTC)),
        # Cairo springs forward at midnight on 24 April 2026: 00:30 does not exist (IANA).
        ("Africa/Cairo", date(2026, 4, 24), time(0, 30), datetime(2026, 4, 23, 22, 30, tzinfo=UTC)),
        # Samoa had no 30 December 2011 (IANA): ten in the morning is that of the 31st.
        ("Pacific/Apia", date(2011, 12, 30), time(10), datetime(2011, 12, 30, 20, tzinfo=UTC)),
    ],
)
def test_odd_gaps_follow_the_same_rule(zone: str, day: date, at: time, utc: datetime) -> None:
    assert instant(day, at, zone) == utc


def test_a_date_that_a_zone_left_out_is_trained_once() -> None:
    daily = Recurrence(tuple(Slot(day, time(10)) for day in Weekday), "Pacific/Apia", date(2011, 12, 28))
    begin = datetime(2011, 12, 27, tzinfo=UTC)
    found = [one.at for one in occurrences_between(daily, begin, begin + timedelta(days=7))]
    assert len(set(found)) == len(found)
    assert {later - earlier for earlier, later in pairwise(found)} == {timedelta(days=1)}


DATEUTIL_DAYS = (rrule.MO, rrule.TU, rrule.WE, rrule.TH, rrule.FR, rrule.SA, rrule.SU)
SPREAD = sorted(available_timezones())[::25]


def by_dateutil(recurrence: Recurrence, end: datetime) -> list[datetime]:
    """The same rule by dateutil: naive local times, then its own reading of gaps."""
    zone = ZoneInfo(recurrence.zone)
    found = []
    for slot in recurrence.slots:
        rule = rrule.rrule(
            rrule.WEEKLY,
            dtstart=datetime.combine(recurrence.start, slot.at),
            interval=recurrence.every,
            wkst=rrule.MO,
            byweekday=DATEUTIL_DAYS[slot.weekday.number],
            until=end,
        )
        found += [resolve_imaginary(day.replace(tzinfo=zone)).astimezone(UTC) for day in rule]
    return sorted(set(found))


def ours(recurrence: Recurrence, end: datetime) -> list[datetime]:
    begin = datetime.combine(recurrence.start, time(0), UTC) - timedelta(days=3)
    found = occurrences_between(recurrence, begin, end.replace(tzinfo=UTC) + timedelta(days=3))
    return [one.at for one in found if datetime.combine(one.day, time(0)) <= end]


@pytest.mark.parametrize("zone", SPREAD)
def test_two_years_of_night_hours_agree_with_dateutil(zone: str) -> None:
    end = datetime.combine(date(2027, 12, 31), time(23, 59))
    for at in (time(0, 30), time(1, 30), time(2, 30), time(23, 30)):
        daily = weekly(tuple(Weekday), at, zone, date(2026, 1, 1))
        assert ours(daily, end) == by_dateutil(daily, end), at


@settings(max_examples=60)
@given(
    st.sets(st.sampled_from(Weekday), min_size=1),
    st.times().map(lambda at: at.replace(second=0, microsecond=0)),
    st.sampled_from(SPREAD),
    st.dates(date(2025, 1, 1), date(2027, 1, 1)),
    st.integers(1, 8),
)
def test_any_weekly_rule_agrees_with_dateutil(
    days: set[Weekday], at: time, zone: str, start: date, every: int
) -> None:
    recurrence = weekly(tuple(days), at, zone, start, every=every)
    end = datetime.combine(start, time(23, 59)) + timedelta(days=300)
    assert ours(recurrence, end) == by_dateutil(recurrence, end)
