"""Every IANA zone, every day of two years, several times of day, against python-dateutil's rrule.

    python -m tests.bench.calendar

Prints how many occurrences were compared, the mismatches and the missing or doubled days; exits with 1 if
there are any.
"""

import sys
import time as clock
from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo, available_timezones

from dateutil import rrule
from dateutil.tz import resolve_imaginary

from core.calendar.occurrences import Occurrence, next_occurrence, occurrences_between
from core.calendar.recurrence import Weekday, weekly

FIRST, LAST = date(2026, 1, 1), date(2027, 12, 31)
DAYS = (LAST - FIRST).days + 1
TIMES = tuple(
    time(hour, minute) for hour, minute in ((0, 0), (0, 30), (1, 30), (2, 15), (2, 30), (7, 0), (19, 0))
)


def local_times(at: time) -> list[datetime]:
    """The rule by dateutil, in local time."""
    start, end = datetime.combine(FIRST, at), datetime.combine(LAST, time(23, 59))
    return list(rrule.rrule(rrule.DAILY, dtstart=start, until=end))


def ours(zone: str, at: time) -> tuple[Occurrence, ...]:
    daily = weekly(tuple(Weekday), at, zone, FIRST)
    begin = datetime.combine(FIRST, time(), UTC) - timedelta(days=2)
    found = occurrences_between(daily, begin, begin + timedelta(days=DAYS + 4))
    return tuple(one for one in found if one.day <= LAST)


def differences(zone: str, at: time, naive: list[datetime]) -> Iterator[str]:
    """What is wrong in one zone at one time of day."""
    found = ours(zone, at)
    if [one.day for one in found] != [day.date() for day in naive]:
        yield f"{zone} {at}: {len(found)} days instead of {len(naive)}, or out of order"
    info = ZoneInfo(zone)
    for one, day in zip(found, naive, strict=False):
        expected = resolve_imaginary(day.replace(tzinfo=info)).astimezone(UTC)
        if one.at != expected:
            yield f"{zone} {day}: {one.at} instead of {expected}"


def walked(zone: str) -> int:
    """How many occurrences a walk from each to the next finds in two years: none lost, none twice."""
    daily = weekly(tuple(Weekday), time(2, 30), zone, FIRST)
    at, count = datetime.combine(FIRST, time(), UTC) - timedelta(days=2), 0
    while (following := next_occurrence(daily, at)) is not None and following.day <= LAST:
        at, count = following.at, count + 1
    return count


def main() -> int:
    zones = sorted(available_timezones())
    began, compared, wrong = clock.perf_counter(), 0, 0
    for at in TIMES:
        naive = local_times(at)
        for zone in zones:
            compared += len(naive)
            for line in differences(zone, at, naive):
                wrong += 1
                print(line)
    short = [zone for zone in zones if walked(zone) != DAYS]
    seconds = clock.perf_counter() - began
    print(f"{len(zones)} zones, {DAYS} days, {len(TIMES)} times of day: {compared:,} occurrences compared")
    print(f"{wrong} mismatches; {len(short)} zones with a missing or doubled day; {seconds:.0f} s")
    return 1 if wrong or short else 0


if __name__ == "__main__":
    sys.exit(main())
