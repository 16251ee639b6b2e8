"""Planned and not done: asked about the next day, without guilt; two in a row go to the coach's list."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from enum import StrEnum

from core.calendar.occurrences import Occurrence
from core.calendar.zones import instant, local

LATE_OR_EARLY = timedelta(days=1)  # a session a day off still counts; own caution, no source
TELL_COACH_AFTER = 2  # missed in a row; own caution, no source
ASK_AT = time(10)  # local; own caution, no source


class Attendance(StrEnum):
    """What became of a planned session. Stored."""

    DONE = "done"
    MISSED = "missed"
    AHEAD = "ahead"  # today or later: not missed yet


@dataclass(frozen=True, slots=True)
class Kept:
    """A planned occurrence and what became of it."""

    occurrence: Occurrence
    attendance: Attendance


def attendance(
    planned: Iterable[Occurrence], started: Iterable[datetime], now: datetime, zone: str
) -> tuple[Kept, ...]:
    """Each planned occurrence with what became of it, in order.

    A session counts for the earliest unmet occurrence of its date, else of the day before or after it.
    Missed is only what lies on a date before today.
    """
    in_order = sorted(planned)
    met = _met(in_order, [local(at, zone).date() for at in sorted(started, key=_utc)], zone)
    today = local(now, zone).date()
    return tuple(Kept(one, _became(one, met, today, zone)) for one in in_order)


def missed_in_a_row(kept: Iterable[Kept]) -> int:
    """How many sessions were missed since the last one done."""
    count = 0
    for one in kept:
        match one.attendance:
            case Attendance.DONE:
                count = 0
            case Attendance.MISSED:
                count += 1
            case Attendance.AHEAD:
                pass
    return count


def ask_at(occurrence: Occurrence, zone: str) -> datetime:
    """When to ask about a missed occurrence, in UTC: the next morning, local time."""
    return instant(local(occurrence.at, zone).date() + timedelta(days=1), ASK_AT, zone)


def _utc(at: datetime) -> datetime:
    return at.astimezone(UTC)


def _met(planned: list[Occurrence], done: list[date], zone: str) -> set[Occurrence]:
    """The occurrences that a session counts for: those of its own date first, then a day off."""
    met: set[Occurrence] = set()
    left = list(done)
    for off in (timedelta(0), LATE_OR_EARLY):
        for one in planned:
            day = local(one.at, zone).date()
            near = next((other for other in left if abs(other - day) == off), None)
            if one not in met and near is not None:
                met.add(one)
                left.remove(near)
    return met


def _became(one: Occurrence, met: set[Occurrence], today: date, zone: str) -> Attendance:
    if one in met:
        return Attendance.DONE
    return Attendance.MISSED if local(one.at, zone).date() < today else Attendance.AHEAD
