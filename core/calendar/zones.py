"""Local times in IANA zones: the rule for hours that do not exist, and for hours that come twice.

RFC 5545 section 3.3.5: a local time in a gap is read with the offset before the gap (02:30 becomes 03:30
when clocks jump from 2 to 3); one that occurs twice means the first. Python's fold=0 reads so (PEP 495).
"""

from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError


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


def local(at: datetime, zone: str) -> datetime:
    """`at` as the clocks in `zone` show it. Raises ValueError when `at` is naive."""
    if at.tzinfo is None:
        raise ValueError("at: a time without a zone")
    return at.astimezone(zone_named(zone))
