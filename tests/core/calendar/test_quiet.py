"""Quiet hours."""

from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.quiet import QuietHours, defer
from core.calendar.zones import instant, local

LISBON = "Europe/Lisbon"
NIGHT = QuietHours(time(21), time(7))
NOON = QuietHours(time(12), time(14))


def lisbon(day: date, hour: int, minute: int = 0) -> datetime:
    return instant(day, time(hour, minute), LISBON)


DAY = date(2026, 7, 1)
NEXT = date(2026, 7, 2)


@pytest.mark.parametrize(
    ("at", "sent"),
    [
        (lisbon(DAY, 20, 59), lisbon(DAY, 20, 59)),
        (lisbon(DAY, 21), lisbon(NEXT, 7)),
        (lisbon(DAY, 23, 59), lisbon(NEXT, 7)),
        (lisbon(NEXT, 0), lisbon(NEXT, 7)),
        (lisbon(NEXT, 6, 59), lisbon(NEXT, 7)),
        (lisbon(NEXT, 7), lisbon(NEXT, 7)),
    ],
)
def test_a_night_ends_in_the_morning_that_follows(at: datetime, sent: datetime) -> None:
    assert defer(at, NIGHT, LISBON) == sent


@pytest.mark.parametrize(("hour", "minute", "sent"), [(11, 59, (11, 59)), (12, 0, (14, 0)), (14, 0, (14, 0))])
def test_quiet_hours_may_lie_within_a_day(hour: int, minute: int, sent: tuple[int, int]) -> None:
    assert defer(lisbon(DAY, hour, minute), NOON, LISBON) == lisbon(DAY, *sent)


def test_equal_ends_mean_no_quiet_hours() -> None:
    at = lisbon(DAY, 3)
    assert defer(at, QuietHours(time(7), time(7)), LISBON) == at


def test_an_end_that_comes_twice_is_waited_for_once_more_after_the_first() -> None:
    # Lisbon, 25 October 2026: 01:00-02:00 comes twice, first at UTC+1.
    quiet = QuietHours(time(22), time(1, 30))
    second_ten_past = datetime(2026, 10, 25, 1, 10, tzinfo=UTC)
    assert defer(second_ten_past, quiet, LISBON) == datetime(2026, 10, 25, 1, 30, tzinfo=UTC)


TIMES = st.builds(time, st.integers(0, 23), st.integers(0, 59))
MOMENTS = st.datetimes(
    datetime.combine(date(2025, 1, 1), time()),
    datetime.combine(date(2028, 1, 1), time()),
    timezones=st.just(UTC),
)
ZONES = st.sampled_from([LISBON, "America/New_York", "Australia/Lord_Howe", "Africa/Cairo", "UTC"])


@given(MOMENTS, TIMES, TIMES, ZONES)
def test_what_is_deferred_is_never_early_never_quiet_and_at_most_a_day_late(
    at: datetime, start: time, end: time, zone: str
) -> None:
    quiet = QuietHours(start, end)
    sent = defer(at, quiet, zone)
    assert at <= sent <= at + timedelta(hours=25)
    assert local(sent, zone).time() not in quiet
    assert defer(sent, quiet, zone) == sent
