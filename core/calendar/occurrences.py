"""From a recurrence to instants: the next one, and all within a stretch of time."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from core.calendar.recurrence import Once, Recurrence, When, is_skipped, monday
from core.calendar.zones import instant, local

# A zone change can shift a local time by up to a day (Samoa skipped 30 December 2011).
MARGIN = timedelta(days=2)
HORIZON = timedelta(days=3660)  # ten years; a recurrence skipped for longer has no next occurrence


@dataclass(frozen=True, slots=True, order=True)
class Occurrence:
    """One time to train: the instant `at`, in UTC, and the local date `day` that the rule gave it.

    `day` is its name: it stays when the occurrence is moved, so reminders come once per `day`.
    """

    at: datetime
    day: date


def occurrences_between(when: When, start: datetime, end: datetime) -> tuple[Occurrence, ...]:
    """All occurrences with start <= at < end, in order, no instant twice.

    Raises ValueError for naive bounds.
    """
    first, last = local(start, when.zone).date() - MARGIN, local(end, when.zone).date() + MARGIN
    begin, finish = start.astimezone(UTC), end.astimezone(UTC)
    return _distinct(found for found in sorted(_all(when, first, last)) if begin <= found.at < finish)


def next_occurrence(when: When, after: datetime) -> Occurrence | None:
    """The first occurrence later than `after`, None: there is none. Raises ValueError for a naive `after`."""
    first = local(after, when.zone).date() - MARGIN
    later = (found for found in _following(when, first, after) if found.at > after.astimezone(UTC))
    return min(later, default=None)


def _all(when: When, first: date, last: date) -> list[Occurrence]:
    match when:
        case Once():
            return [_once(when)]
        case Recurrence():
            return [*_by_rule(when, first, last), *_moved(when), *_extra(when)]


def _following(when: When, first: date, after: datetime) -> list[Occurrence]:
    match when:
        case Once():
            return [_once(when)]
        case Recurrence():
            return [*_moved(when), *_extra(when), *_next_by_rule(when, first, after)]


def _once(when: Once) -> Occurrence:
    return Occurrence(instant(when.at.date(), when.at.time(), when.zone), when.at.date())


def _moved(recurrence: Recurrence) -> list[Occurrence]:
    return [
        Occurrence(instant(moved.to.date(), moved.to.time(), recurrence.zone), moved.day)
        for moved in recurrence.moved
    ]


def _extra(recurrence: Recurrence) -> list[Occurrence]:
    return [Occurrence(instant(at.date(), at.time(), recurrence.zone), at.date()) for at in recurrence.extra]


def _by_rule(recurrence: Recurrence, first: date, last: date) -> Iterator[Occurrence]:
    """The occurrences that stand where the rule puts them, for dates from `first` to `last`."""
    moved = {moved.day for moved in recurrence.moved}
    for day in _dates(recurrence, first, last):
        slot = recurrence.falls_on(day)
        if slot is not None and day not in moved and not is_skipped(recurrence, day):
            yield Occurrence(instant(day, slot.at, recurrence.zone), day)


def _next_by_rule(recurrence: Recurrence, first: date, after: datetime) -> list[Occurrence]:
    """The first few after `after`, from the date `first` on; the earliest instant is among them."""
    found: list[Occurrence] = []
    last = recurrence.until or max(first, recurrence.start) + HORIZON
    for occurrence in _by_rule(recurrence, first, last):
        if occurrence.at > after:
            found.append(occurrence)
        if found and occurrence.day > found[0].day + MARGIN:
            break
    return found


def _dates(recurrence: Recurrence, first: date, last: date) -> Iterator[date]:
    """The dates of the weeks that count, from `first` to `last`."""
    begin = max(first, recurrence.start)
    cycle = timedelta(weeks=recurrence.every)
    week = monday(recurrence.start)
    week += (monday(begin) - week) // cycle * cycle
    while week <= last:
        for slot in sorted(recurrence.slots, key=lambda slot: slot.weekday.number):
            day = week + timedelta(days=slot.weekday.number)
            if begin <= day <= last:
                yield day
        week += cycle


def _distinct(found: Iterable[Occurrence]) -> tuple[Occurrence, ...]:
    """Two local times can be one instant when a zone skips a day; train once."""
    kept: list[Occurrence] = []
    for occurrence in found:
        if not kept or kept[-1].at != occurrence.at:
            kept.append(occurrence)
    return tuple(kept)
