"""A `When` as plain calendar entries, in the words of RFC 5545, for whoever writes the .ics file."""

from dataclasses import dataclass
from datetime import datetime, time, timedelta

from core.calendar.recurrence import Moved, Once, Recurrence, Slot, When, monday
from core.calendar.zones import instant

DAY_NAMES = {"mon": "MO", "tue": "TU", "wed": "WE", "thu": "TH", "fri": "FR", "sat": "SA", "sun": "SU"}


@dataclass(frozen=True, slots=True)
class Entry:
    """One VEVENT. Times are local and naive, in `zone` (TZID); `minutes` is its length.

    `rule` holds the parts of an RRULE (`UNTIL` in UTC), empty for a single event; `without` are EXDATEs;
    `instead_of` is the RECURRENCE-ID of an occurrence that was moved. Entries of one series share `series`.
    """

    series: int
    start: datetime
    zone: str
    minutes: int
    rule: dict[str, str | int | list[str] | datetime]
    without: tuple[datetime, ...] = ()
    instead_of: datetime | None = None


def entries(when: When, minutes: int) -> tuple[Entry, ...]:
    """The entries of a plan: one series for each time of day, one entry for each moved and each extra session."""
    match when:
        case Once():
            return (Entry(0, when.at, when.zone, minutes, {}),)
        case Recurrence():
            times = sorted({slot.at for slot in when.slots})
            weekly = [
                entry for series, at in enumerate(times) for entry in _series(when, series, at, minutes)
            ]
            single = enumerate(sorted(when.extra), start=len(times))
            return (*weekly, *(Entry(series, at, when.zone, minutes, {}) for series, at in single))


def _series(when: Recurrence, series: int, at: time, minutes: int) -> list[Entry]:
    slots = [slot for slot in when.slots if slot.at == at]
    start = _first(when, slots)
    if start is None:
        return []
    main = Entry(series, start, when.zone, minutes, _rule(when, slots, at), _without(when, slots))
    return [main, *(_moved(main, moved, at) for moved in when.moved if _belongs(when, moved, slots))]


def _first(when: Recurrence, slots: list[Slot]) -> datetime | None:
    """The first local time the rule gives: RFC 5545 wants DTSTART to be one of the occurrences."""
    for week in (0, when.every):
        for slot in slots:
            day = monday(when.start) + timedelta(weeks=week, days=slot.weekday.number)
            if when.falls_on(day) is not None:
                return datetime.combine(day, slot.at)
    return None


def _rule(when: Recurrence, slots: list[Slot], at: time) -> dict[str, str | int | list[str] | datetime]:
    rule: dict[str, str | int | list[str] | datetime] = {
        "FREQ": "WEEKLY",
        "INTERVAL": when.every,
        "BYDAY": [DAY_NAMES[slot.weekday] for slot in slots],
        "WKST": "MO",
    }
    if when.until is not None:
        rule["UNTIL"] = instant(when.until, at, when.zone)
    return rule


def _without(when: Recurrence, slots: list[Slot]) -> tuple[datetime, ...]:
    """The local times of the skipped dates that the rule would give."""
    days = {
        span.first + timedelta(days=offset)
        for span in when.skipped
        for offset in range((span.last - span.first).days + 1)
    }
    moved = {moved.day for moved in when.moved}
    found = [(day, when.falls_on(day)) for day in sorted(days - moved)]
    return tuple(datetime.combine(day, slot.at) for day, slot in found if slot in slots and slot is not None)


def _belongs(when: Recurrence, moved: Moved, slots: list[Slot]) -> bool:
    return when.falls_on(moved.day) in slots


def _moved(main: Entry, moved: Moved, at: time) -> Entry:
    was = datetime.combine(moved.day, at)
    return Entry(main.series, moved.to, main.zone, main.minutes, {}, (), was)
