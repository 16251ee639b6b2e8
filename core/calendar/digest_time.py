"""When a coach's weekly digest comes: one local weekday and time, by the same rules as training days."""

from datetime import date, datetime, time, timedelta

from core.calendar.occurrences import Occurrence, next_occurrence
from core.calendar.recurrence import Recurrence, Slot, Weekday
from core.calendar.zones import local

WEEK = timedelta(days=7)
USUAL = Slot(Weekday.MON, time(7))  # own choice


def slot_to_text(slot: Slot) -> str:
    """As stored: "sun 18:00"."""
    return f"{slot.weekday.value} {slot.at:%H:%M}"


def slot_from_text(text: str) -> Slot:
    """The slot that was stored, the usual one for "". Raises ValueError for anything else."""
    if not text:
        return USUAL
    weekday, _, at = text.partition(" ")
    return Slot(Weekday(weekday), time.fromisoformat(at))


def next_digest(slot: Slot, zone: str, now: datetime, last: date | None) -> Occurrence:
    """The first one after `now` that is seven dates or more after the one of the local date `last`.

    So no change of day or hour makes two digests of one week; None: there was none yet.
    """
    today = local(now, zone).date()
    first = today if last is None else max(today, last + WEEK)
    coming = next_occurrence(Recurrence((slot,), zone, first), now)
    assert coming is not None, "a weekly time without an end always comes again"
    return coming
