"""Readings as one short line each, so that a table of phrases can be read and checked by eye."""

from conversations.dates import (
    Ambiguous,
    Dates,
    Delay,
    Move,
    NotToday,
    NotUnderstood,
    OneTime,
    Reading,
    Repeat,
    Skip,
)
from core.calendar.recurrence import Recurrence, Span


def short(reading: Reading) -> str:
    """For example "once Thu 2026-11-26 19:00", "skip 2026-11-25..2026-11-29", "? no_time"."""
    match reading:
        case OneTime(once):
            return f"once {once.at:%a %Y-%m-%d %H:%M}"
        case Repeat(recurrence):
            return f"repeat {_rhythm(recurrence)}"
        case Dates(span):
            return f"dates {_span(span)}"
        case Skip(span):
            return f"skip {_span(span) if span else 'next'}"
        case Move(day, to, at):
            return f"move {day or 'next'} to {to or 'same day'} at {f'{at:%H:%M}' if at else 'same time'}"
        case Delay(minutes):
            return f"in {minutes} min"
        case NotToday():
            return "not today"
        case Ambiguous(readings):
            return " | ".join(short(one) for one in readings)
        case NotUnderstood(problem):
            return f"? {problem}"


def _rhythm(recurrence: Recurrence) -> str:
    slots = " ".join(f"{slot.weekday} {slot.at:%H:%M}" for slot in recurrence.slots)
    end = f" until {recurrence.until}" if recurrence.until else ""
    every = f" every {recurrence.every}" if recurrence.every > 1 else ""
    return f"{slots}{every} from {recurrence.start}{end}"


def _span(span: Span) -> str:
    return f"{span.first}..{span.last}"
