"""What was understood, said back: weekday, date, time and zone, so that a wrong reading is seen."""

from datetime import date, datetime, time

from conversations.dates.meaning import (
    Ambiguous,
    ClockFace,
    Dates,
    DayOrder,
    Delay,
    Move,
    NotToday,
    NotUnderstood,
    OneTime,
    Problem,
    Repeat,
    Skip,
    Understood,
)
from conversations.dates.zones import ZoneNotFound, ZoneProblem
from core.calendar.recurrence import Recurrence, Slot, Span, Weekday, weekday_of
from core.calendar.zones import instant, local

DAY_NAMES = {
    Weekday.MON: "Monday",
    Weekday.TUE: "Tuesday",
    Weekday.WED: "Wednesday",
    Weekday.THU: "Thursday",
    Weekday.FRI: "Friday",
    Weekday.SAT: "Saturday",
    Weekday.SUN: "Sunday",
}
MONTH_NAMES = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)

WHICH_ONE = "Which one do you mean?"
NOT_UNDERSTOOD = {
    Problem.NO_IDEA: "I couldn't read a day or time there. Like this: tomorrow 7pm, or mon and thu 18:30.",
    Problem.NO_TIME: "At what time? Like this: 7pm, or 18:30.",
    Problem.NO_DAY: "On which days? Like this: mon and thu.",
    Problem.NO_SUCH_DATE: "That date isn't in the calendar. Once more, please.",
    Problem.NO_SUCH_TIME: "The clock doesn't show that time. Like this: 7pm, or 18:30.",
    Problem.WRONG_WEEKDAY: "The weekday and the date don't match. Which one is right?",
    Problem.IN_THE_PAST: "That is already over. When from now on?",
    Problem.TOO_FAR: "That is too far off for me. Something nearer, please.",
}
ZONE_NOT_FOUND = {
    ZoneProblem.UNKNOWN_PLACE: "I don't know that place. The biggest city near you, please, like Lisbon.",
    ZoneProblem.OFFSET: "I need a city, so that summer time comes out right. The biggest near you, please.",
}


def not_understood(reading: NotUnderstood) -> str:
    """The re-ask for a phrase without a reading."""
    return NOT_UNDERSTOOD[reading.problem]


def zone_not_found(reading: ZoneNotFound) -> str:
    """The re-ask for a place without a zone."""
    return ZONE_NOT_FOUND[reading.problem]


def which_of(
    reading: Ambiguous, zone: str, face: ClockFace = ClockFace.H24, order: DayOrder | None = None
) -> tuple[str, ...]:
    """One label for each reading, for the buttons below `WHICH_ONE`."""
    return tuple(say_back(one, zone, face, order) for one in reading.readings)


def say_back(
    understood: Understood, zone: str, face: ClockFace = ClockFace.H24, order: DayOrder | None = None
) -> str:
    """What was understood, in the client's way of writing; `zone` is the client's."""
    match understood:
        case OneTime(once):
            return moment(instant(once.at.date(), once.at.time(), once.zone), once.zone, face, order)
        case Repeat(recurrence):
            return rhythm(recurrence, face, order)
        case Dates(span):
            return stretch(span, order)
        case Skip(span):
            return f"No training: {stretch(span, order) if span else 'the next session'}"
        case Move():
            return _move(understood, zone, face, order)
        case Delay(minutes):
            return f"In {_minutes(minutes)}"
        case NotToday():
            return "Not today"


def moment(at: datetime, zone: str, face: ClockFace, order: DayOrder | None) -> str:
    """An instant on the client's clock: "Thursday 26 November 2026, 19:00 (Lisbon time)"."""
    here = local(at, zone)
    return f"{day(here.date(), order)}, {clock_time(here.time(), face)} ({zone_name(zone)})"


def rhythm(recurrence: Recurrence, face: ClockFace, order: DayOrder | None) -> str:
    """Weekly times with their first date, their end and their zone."""
    start = f"from {day(recurrence.start, order)}"
    end = f" to {day(recurrence.until, order)}" if recurrence.until is not None else ""
    return f"{weekly(recurrence, face)} ({zone_name(recurrence.zone)}), {start}{end}"


def weekly(recurrence: Recurrence, face: ClockFace) -> str:
    """Weekly times alone: "Every Monday and Thursday at 10:00"."""
    how_often = {1: "Every", 2: "Every other"}.get(recurrence.every, f"Every {recurrence.every} weeks on")
    times = {at: [slot for slot in recurrence.slots if slot.at == at] for at in _times(recurrence)}
    days = " and ".join(f"{_days(slots)} at {clock_time(at, face)}" for at, slots in times.items())
    return f"{how_often} {days}"


def _times(recurrence: Recurrence) -> list[time]:
    return list(dict.fromkeys(slot.at for slot in recurrence.slots))


def _days(slots: list[Slot]) -> str:
    names = [DAY_NAMES[slot.weekday] for slot in slots]
    if len(names) == len(DAY_NAMES):
        return "day"
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def stretch(span: Span, order: DayOrder | None) -> str:
    """One date, or the first and the last."""
    first = day(span.first, order)
    return first if span.first == span.last else f"{first} to {day(span.last, order)}"


def _move(move: Move, zone: str, face: ClockFace, order: DayOrder | None) -> str:
    what = f"The session of {day(move.day, order)}" if move.day is not None else "The next session"
    to = f" moves to {day(move.to, order)}" if move.to is not None else " stays on its day"
    if move.at is None:
        return f"{what}{to}, same time"
    return f"{what}{to}, at {clock_time(move.at, face)} ({zone_name(zone)})"


def _minutes(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    parts = [_counted(hours, "hour")] if hours else []
    if rest:
        parts.append(_counted(rest, "minute"))
    return " ".join(parts)


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def day(on: date, order: DayOrder | None) -> str:
    """A date with its weekday and year, the month in letters."""
    month = MONTH_NAMES[on.month - 1]
    name = DAY_NAMES[weekday_of(on)]
    if order is DayOrder.MONTH_FIRST:
        return f"{name}, {month} {on.day}, {on.year}"
    return f"{name} {on.day} {month} {on.year}"


def clock_time(at: time, face: ClockFace) -> str:
    """19:00, or 7:00 pm; noon and midnight in words on a 12-hour clock."""
    if face is ClockFace.H24:
        return f"{at:%H:%M}"
    if at.minute == 0 and at.hour % 12 == 0:
        return "noon" if at.hour else "midnight"
    return f"{(at.hour - 1) % 12 + 1}:{at.minute:02} {'am' if at.hour < 12 else 'pm'}"


def zone_name(zone: str) -> str:
    """The zone as people call it: "Lisbon time"."""
    return "UTC" if zone == "UTC" else f"{zone.rpartition('/')[2].replace('_', ' ')} time"
