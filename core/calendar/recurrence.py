"""When somebody trains: days and times on the client's own clock, with what was skipped or moved.

A recurrence is a value. It names local times and an IANA zone, never instants: 19:00 stays 19:00 when the
clocks change and when zone data are corrected. Occurrences are computed (`core.calendar.occurrences`).
"""

from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from enum import StrEnum

from core.calendar.zones import zone_named

MOST_WEEKS = 52  # a longer cycle than a year is a slip


class Weekday(StrEnum):
    """Stored. In the order of the ISO week."""

    MON = "mon"
    TUE = "tue"
    WED = "wed"
    THU = "thu"
    FRI = "fri"
    SAT = "sat"
    SUN = "sun"

    @property
    def number(self) -> int:
        """0 for Monday to 6 for Sunday, as `date.weekday()`."""
        return WEEK.index(self)


WEEK = tuple(Weekday)


def weekday_of(day: date) -> Weekday:
    """The weekday of a date."""
    return WEEK[day.weekday()]


@dataclass(frozen=True, slots=True)
class Slot:
    """One training time of a week, local, to the minute."""

    weekday: Weekday
    at: time

    def __post_init__(self) -> None:
        if self.at.tzinfo is not None or self.at.second or self.at.microsecond:
            raise ValueError("at: a local time in hours and minutes")


@dataclass(frozen=True, slots=True)
class Span:
    """Dates from `first` to `last`, both included."""

    first: date
    last: date

    def __post_init__(self) -> None:
        if self.last < self.first:
            raise ValueError("last: before first")

    def __contains__(self, day: date) -> bool:
        return self.first <= day <= self.last


@dataclass(frozen=True, slots=True)
class Moved:
    """The occurrence of `day` takes place at `to` (local, naive) instead."""

    day: date
    to: datetime

    def __post_init__(self) -> None:
        if self.to.tzinfo is not None:
            raise ValueError("to: a local time, without a zone")


@dataclass(frozen=True, slots=True)
class Recurrence:
    """Weekly training times, in every `every`-th week from the week of `start` on (weeks begin on Monday).

    `until` is the last date on which it may fall, None: no end. At most one slot a weekday, so that a date
    names an occurrence. `extra` are single local times besides the rule. Raises ValueError with the field named.
    """

    slots: tuple[Slot, ...]
    zone: str
    start: date
    every: int = 1
    until: date | None = None
    skipped: tuple[Span, ...] = ()
    moved: tuple[Moved, ...] = ()
    extra: tuple[datetime, ...] = ()

    def __post_init__(self) -> None:
        zone_named(self.zone)
        if any(at.tzinfo is not None for at in self.extra):
            raise ValueError("extra: local times, without a zone")
        days = [slot.weekday for slot in self.slots]
        if not (days or self.extra) or len(set(days)) != len(days):
            raise ValueError("slots: one time for each weekday, and at least one weekday")
        if not 1 <= self.every <= MOST_WEEKS:
            raise ValueError(f"every: 1 to {MOST_WEEKS} weeks")
        if self.until is not None and self.until < self.start:
            raise ValueError("until: before start")

    def falls_on(self, day: date) -> Slot | None:
        """The slot of that date by the rule alone, whether skipped or moved or not."""
        if day < self.start or (self.until is not None and day > self.until):
            return None
        if (monday(day) - monday(self.start)).days // 7 % self.every:
            return None
        return next((slot for slot in self.slots if slot.weekday is weekday_of(day)), None)


@dataclass(frozen=True, slots=True)
class Once:
    """A single time, local (naive) in `zone`."""

    at: datetime
    zone: str

    def __post_init__(self) -> None:
        zone_named(self.zone)
        if self.at.tzinfo is not None:
            raise ValueError("at: a local time, without a zone")


When = Recurrence | Once


def monday(day: date) -> date:
    """The Monday of the week of `day`."""
    return day - timedelta(days=day.weekday())


def weekly(
    weekdays: tuple[Weekday, ...],
    at: time,
    zone: str,
    start: date,
    *,
    every: int = 1,
    weeks: int | None = None,
) -> Recurrence:
    """The same time on each of `weekdays`; with `weeks`, for 7 x `weeks` days from `start` on."""
    if weeks is not None and weeks < 1:
        raise ValueError("weeks: at least 1")
    until = start + timedelta(days=7 * weeks - 1) if weeks is not None else None
    slots = tuple(Slot(day, at) for day in sorted(set(weekdays), key=WEEK.index))
    return Recurrence(slots, zone, start, every, until)


def skip(recurrence: Recurrence, first: date, last: date | None = None) -> Recurrence:
    """Without the occurrences from `first` to `last` (default: that date only), as they stand now.

    One that was moved into the span is gone; one that was moved out of it stays where it is. Extra ones in the
    span are gone.
    """
    span = Span(first, last or first)
    gone = tuple(Span(moved.day, moved.day) for moved in recurrence.moved if moved.to.date() in span)
    kept = tuple(moved for moved in recurrence.moved if moved.to.date() not in span)
    extra = tuple(at for at in recurrence.extra if at.date() not in span)
    return replace(recurrence, skipped=(*recurrence.skipped, span, *gone), moved=kept, extra=extra)


def move(recurrence: Recurrence, day: date, to: datetime) -> Recurrence:
    """With the occurrence of `day` at the local time `to` instead; moving it again replaces the first move.

    Raises ValueError when there is no occurrence on that date.
    """
    kept = tuple(moved for moved in recurrence.moved if moved.day != day)
    if kept == recurrence.moved and (recurrence.falls_on(day) is None or is_skipped(recurrence, day)):
        raise ValueError(f"day: nothing is planned on {day}")
    return replace(recurrence, moved=(*kept, Moved(day, to)))


def is_skipped(recurrence: Recurrence, day: date) -> bool:
    """Whether the rule's occurrence on `day` was skipped."""
    return any(day in span for span in recurrence.skipped)
