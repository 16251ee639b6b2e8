"""Local times in IANA zones: the rule for hours that do not exist, and for hours that come twice.

RFC 5545 section 3.3.5: a local time in a gap is read with the offset before the gap (02:30 becomes 03:30
when clocks jump from 2 to 3); one that occurs twice means the first. Python's fold=0 reads so (PEP 495).
"""

from collections.abc import Iterable
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

AN_HOUR, A_DAY, A_WEEK = timedelta(hours=1), timedelta(days=1), timedelta(weeks=1)
AHEAD = timedelta(days=2 * 366)  # looked ahead, for rules that begin to differ; own choice


def zone_named(name: str) -> ZoneInfo:
    """The zone with this IANA name. Raises ValueError when there is none."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, OSError, ValueError):
        raise ValueError(f"zone: {name!r} is no IANA time zone") from None


def instant(day: date, at: time, zone: str, second: bool = False) -> datetime:
    """When the local time `at` of `day` happens in `zone`, in UTC; with `second` the later of two.

    In UTC because Python compares two datetimes of one zone by their clock faces, which is wrong when
    clocks go back.
    """
    return datetime.combine(day, at.replace(fold=int(second)), tzinfo=zone_named(zone)).astimezone(UTC)


def in_last_day(until: datetime) -> datetime:
    """A moment in the last day of what ends at midnight: noon or so, as a day has 23 to 25 hours."""
    return until - A_DAY / 2


def same_clock(one: str, other: str, first: date, last: date) -> bool:
    """Whether the clocks of two zones agree at every hour of these days, both included, as they are in `one`."""
    begin, end = instant(first, time(0), one), instant(last + A_DAY, time(0), one)
    return _agree(one, other, (begin + number * AN_HOUR for number in range((end - begin) // AN_HOUR)))


def same_zone(one: str, other: str, today: date) -> bool:
    """Whether two names mean one zone: their clocks agree since 1970, as the IANA database defines a zone."""
    begin, end = datetime(1970, 1, 1, tzinfo=UTC), datetime.combine(today, time(0), UTC) + AHEAD
    return _agree(one, other, (begin + number * A_WEEK for number in range((end - begin) // A_WEEK)))


def _agree(one: str, other: str, times: Iterable[datetime]) -> bool:
    here, there = zone_named(one), zone_named(other)
    return one == other or all(
        at.astimezone(here).utcoffset() == at.astimezone(there).utcoffset() for at in times
    )


def local(at: datetime, zone: str) -> datetime:
    """`at` as the clocks in `zone` show it. Raises ValueError when `at` is naive."""
    if at.tzinfo is None:
        raise ValueError("at: a time without a zone")
    return at.astimezone(zone_named(zone))
