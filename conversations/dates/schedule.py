"""Single times and weekly times: "tomorrow 6:30", "mon and thu 7pm", "every other saturday morning"."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from itertools import product

from conversations.dates.days import CALENDAR_DATES, Days, coming, take_day, take_weekdays
from conversations.dates.meaning import OneTime, Problem, Repeat, Setting, Stuck
from conversations.dates.plain import is_spent, take
from conversations.dates.spans import FROM, LENGTH, TO, UNTIL_WORD, take_after
from conversations.dates.times import Times, take_times
from core.calendar.recurrence import WEEK, Once, Recurrence, Slot, Weekday, weekday_of

EVERY = re.compile(r"\bevery(?: (\d{1,2}) weeks?)?(?: on)?\b")
HOW_OFTEN = re.compile(r"\b(?:once|twice|\d ?x|\d+ times) (?:1|per|every 1|in 1) ?weeks?\b")
FOR_WEEKS = re.compile(r"\bfor (?:the next )?\d{1,2} weeks\b")
SAME_TIME = re.compile(r"\b(?:at )?(?:the )?(?:same|usual) (?:time|hour)(?: as (?:always|usual|before))?\b")
SEGMENTS = re.compile(r",|;|\band\b")

Slots = tuple[Slot, ...]


@dataclass(frozen=True, slots=True)
class Frame:
    """What surrounds the days of a weekly time. Empty `starts` or `ends`: not said."""

    every: int
    starts: Days
    ends: Days
    days: int | None


def read_schedule(text: str, setting: Setting) -> list[OneTime | Repeat]:
    """The readings of a phrase that gives a time or weekly times. Raises `Stuck` when it does not."""
    if HOW_OFTEN.search(text):
        raise Stuck(Problem.NO_DAY)
    every, rest = take(EVERY, text)
    starts, rest = take_after(FROM, EVERY.sub(" ", rest), setting)
    ends, rest = take_after(UNTIL_WORD, rest, setting)
    if not ends:
        ends, rest = take_after(TO, rest, setting, CALENDAR_DATES)
    weekdays = take_weekdays(take_day(rest, setting, CALENDAR_DATES)[1])[0]
    framed = starts or FOR_WEEKS.search(rest)
    if not (every or ends or (framed and weekdays) or len(weekdays) > 1):
        return list(_single(text, setting))
    length, rest = take(LENGTH, rest)
    frame = Frame(int(every[1] or 1) if every else 1, starts, ends, _days(length))
    return list(_weekly(rest, setting, frame))


def _days(length: re.Match[str] | None) -> int | None:
    """The days of "for 6 weeks"."""
    if length is None:
        return None
    return int(length[1]) * (7 if length[2].startswith("week") else 1)


def _weekly(rest: str, setting: Setting, frame: Frame) -> Iterator[Repeat]:
    for slots in _slot_readings(rest, setting):
        for start in frame.starts or (_first_day(slots, setting),):
            for end in frame.ends or (None,):
                yield Repeat(_recurrence(slots, setting.zone, start, end, frame))


def _recurrence(slots: Slots, zone: str, start: date, end: date | None, frame: Frame) -> Recurrence:
    if frame.days is not None:
        end = start + timedelta(days=frame.days - 1)
    if end is not None and end < start:
        raise Stuck(Problem.NO_SUCH_DATE)
    return Recurrence(slots, zone, start, frame.every, end)


def _first_day(slots: Slots, setting: Setting) -> date:
    """The date of the first training still to come: the week that every-other-week counts from."""
    return min(_still_to_come(slot.weekday, slot.at, setting) for slot in slots)


def _still_to_come(weekday: Weekday, at: time, setting: Setting) -> date:
    day = coming(weekday, setting.today)
    return day + timedelta(days=7) if day == setting.today and at <= setting.clock else day


def _slot_readings(text: str, setting: Setting) -> list[Slots]:
    """The days and times, one reading for each way the times can be meant."""
    rest = SAME_TIME.sub(" ", text)
    times, left = take_times(rest, setting)
    weekdays, left = take_weekdays(left)
    if not is_spent(left):
        raise Stuck(Problem.NO_IDEA)
    if not weekdays:
        raise Stuck(Problem.NO_DAY)
    if len(times) > 1:
        return _in_segments(rest, setting)
    return [tuple(Slot(day, at) for day in weekdays) for at in _one_of(times, setting)]


def _one_of(times: list[Times], setting: Setting) -> Times:
    if times:
        return times[0]
    if setting.usual is None:
        raise Stuck(Problem.NO_TIME)
    return (setting.usual,)


def _in_segments(text: str, setting: Setting) -> list[Slots]:
    """Each time belongs to the days said since the last time: "mon 7pm and thu 6am"."""
    groups: list[tuple[tuple[Weekday, ...], Times]] = []
    waiting: tuple[Weekday, ...] = ()
    for segment in SEGMENTS.split(text):
        times, left = take_times(segment, setting)
        waiting += take_weekdays(left)[0]
        if len(times) > 1 or (times and not waiting):
            raise Stuck(Problem.NO_IDEA)
        if times:
            groups.append((waiting, times[0]))
            waiting = ()
    if waiting:
        raise Stuck(Problem.NO_TIME)
    return [_slots(groups, chosen) for chosen in product(*(times for _, times in groups))]


def _slots(groups: list[tuple[tuple[Weekday, ...], Times]], chosen: Times) -> Slots:
    found = [Slot(day, at) for (days, _), at in zip(groups, chosen, strict=True) for day in days]
    if len({slot.weekday for slot in found}) != len(found):
        raise Stuck(Problem.NO_IDEA)
    return tuple(sorted(found, key=lambda slot: WEEK.index(slot.weekday)))


def _single(text: str, setting: Setting) -> Iterator[OneTime]:
    """One date and time."""
    rest = SAME_TIME.sub(" ", text)
    calendar, rest = take_day(rest, setting, CALENDAR_DATES)
    days, rest = (_checked(calendar, rest)) if calendar else take_day(rest, setting)
    times, rest = take_times(rest, setting)
    if not is_spent(rest) or len(times) > 1 or not (days or times):
        raise Stuck(Problem.NO_IDEA)
    named = not calendar and bool(take_weekdays(text)[0])
    moments = _moments(_around_midnight(days, text), _one_of(times, setting), named, setting)
    if not moments:
        raise Stuck(Problem.IN_THE_PAST)
    for moment in moments:
        yield OneTime(Once(moment, setting.zone))


def _checked(days: Days, rest: str) -> tuple[Days, str]:
    """A weekday said beside a date must be that date's."""
    weekdays, left = take_weekdays(rest)
    fitting = tuple(day for day in days if not weekdays or weekdays == (weekday_of(day),))
    if not fitting:
        raise Stuck(Problem.WRONG_WEEKDAY)
    return fitting, left


def _around_midnight(days: Days, text: str) -> Days:
    """Midnight begins the day for some and ends it for others, so both dates are possible."""
    if "midnight" not in text:
        return days
    return tuple(dict.fromkeys(day + timedelta(days=ahead) for day in days for ahead in (0, 1)))


def _moments(days: Days, times: Times, named: bool, setting: Setting) -> list[datetime]:
    """The local times still to come; a weekday that is today and past means next week's."""
    now = datetime.combine(setting.today, setting.clock)
    if not days:
        return sorted(_next(at, now) for at in times)
    moments = [datetime.combine(day, at) for day in days for at in times]
    if named:
        moments = [moment if moment > now else moment + timedelta(days=7) for moment in moments]
    return sorted({moment for moment in moments if moment > now})


def _next(at: time, now: datetime) -> datetime:
    """The next time the clock shows `at`."""
    moment = datetime.combine(now.date(), at)
    return moment if moment > now else moment + timedelta(days=1)
