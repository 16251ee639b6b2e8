"""Times of day in a phrase. A time may have two readings: "at 7" on a 12-hour clock is morning or evening."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import time
from enum import StrEnum

from conversations.dates.meaning import ClockFace, Problem, Setting, Stuck
from conversations.dates.plain import take


class Part(StrEnum):
    """A part of the day."""

    MORNING = "morning"
    AFTERNOON = "afternoon"
    EVENING = "evening"
    NIGHT = "night"


# What is proposed, and always said back, when only the part of the day was named; common sense, no source.
USUAL_TIMES = {
    Part.MORNING: time(9),
    Part.AFTERNOON: time(15),
    Part.EVENING: time(19),
    Part.NIGHT: time(20),
}
# Hours that a part covers, from and up to, to tell seven in the morning from seven in the evening.
HOURS = {Part.MORNING: (4, 12), Part.AFTERNOON: (12, 18), Part.EVENING: (16, 24), Part.NIGHT: (18, 24)}
PART = re.compile(r"\b(?:in the |this |at |during the )?(morning|afternoon|evening|night)s?\b")

MIDNIGHT = 24  # the hour of the word "midnight", which begins one day and ends another

Times = tuple[time, ...]


@dataclass(frozen=True, slots=True)
class Spoken:
    """A time as said: `sure` when am or pm or 24-hour writing leaves one reading.

    `aloud`: in words ("half past six"), which on no clock tells morning from evening.
    """

    hour: int
    minute: int
    sure: bool
    aloud: bool = False


def _half_day(found: re.Match[str]) -> Spoken:
    return Spoken(_half_day_hour(int(found[1]), found[3]), int(found[2] or 0), True)


def _half_day_hour(hour: int, half: str) -> int:
    if not 1 <= hour <= 12:
        raise Stuck(Problem.NO_SUCH_TIME)
    return hour % 12 + (12 if half == "pm" else 0)


def _written(found: re.Match[str]) -> Spoken:
    hour, minute = found[1], int(found[2] or 0)
    if int(hour) == MIDNIGHT:  # 24:00 of which day?
        raise Stuck(Problem.NO_SUCH_TIME)
    return Spoken(int(hour), minute, (len(hour) == 2 and hour[0] == "0") or not 1 <= int(hour) <= 12)


def _sure(found: re.Match[str]) -> Spoken:
    return Spoken(int(found[1]), int(found[2] or 0), True)


def _past(found: re.Match[str]) -> Spoken:
    minutes = {"half": 30, "quarter": 15}.get(found[1]) or int(found[1])
    hour = int(found[3])
    if found[4] is not None:
        hour = _half_day_hour(hour, found[4])
    if found[2] in ("to", "before"):
        hour, minutes = (hour - 1) % 24, 60 - minutes
    return Spoken(hour, minutes, found[4] is not None or int(found[3]) > 12, aloud=True)


def _half(found: re.Match[str]) -> Spoken:
    return Spoken(int(found[1]), 30, not 1 <= int(found[1]) <= 12, aloud=True)


def _noon(found: re.Match[str]) -> Spoken:
    return Spoken(12, 0, True)


def _midnight(found: re.Match[str]) -> Spoken:
    return Spoken(MIDNIGHT, 0, True)


MINUTES_SAID = r"(half|quarter|[1-9]|[1-5]\d)(?: minutes?)?"
Patterns = tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], Spoken]], ...]
EXPLICIT: Patterns = tuple(
    (re.compile(pattern), reading)
    for pattern, reading in (
        (rf"\b{MINUTES_SAID} (past|after|to|before) (\d{{1,2}}) ?(am|pm)?\b(?: ?oclock)?", _past),
        (r"\b(?:at )?(\d{1,2})(?:[:.h ]?([0-5]\d))? ?(am|pm)\b", _half_day),
        (r"\bhalf (\d{1,2})\b", _half),
        (r"\b(?:at )?(\d{1,2}):(\d{2})(?: ?(?:h|hrs|oclock))?\b", _written),
        (r"\b(?:at )?(\d{1,2})\.([0-5]\d)(?: ?h)?\b(?!\.\d)", _written),
        (r"\b(?:at )?(\d{1,2}) ?h(?: ?([0-5]\d))?\b", _sure),
        (r"\b(?:at )?([01]\d|2[0-3])([0-5]\d)(?: ?(?:h|hrs|hours))?\b", _sure),
        (r"\b(?:at )?(?:12 )?(?:noon|midday)\b", _noon),
        (r"\b(?:at )?(?:12 )?midnight\b", _midnight),
        (r"\b(?:at )?(\d{1,2})() ?oclock\b", _written),
        (r"\bat (\d{1,2}) ([0-5]\d)\b", _written),
        (r"\bat (\d{1,2})()\b(?![/.:-]?\d|[a-z])", _written),
    )
)
# A number by itself is a time only where everything else in the phrase is explained.
BARE: Patterns = (
    (re.compile(r"\b([1-9])([0-5]\d)\b(?![/.:-]?\d|[a-z])"), _written),
    (re.compile(r"\b(\d{1,2}) ([0-5]\d)\b"), _written),
    (re.compile(r"\b(\d{1,2})()\b(?![/.:-]?\d|[a-z])"), _written),
)


def take_times(text: str, setting: Setting, patterns: Patterns = EXPLICIT + BARE) -> tuple[list[Times], str]:
    """Every time in the phrase, each with its readings, in order of the patterns; and the text without."""
    part, rest = take(PART, text)
    named = Part(part[1]) if part else None
    found: list[Times] = []
    for pattern, reading in patterns:
        while (match := pattern.search(rest)) is not None:
            found.append(_readings(reading(match), named, setting.face))
            rest = f"{rest[: match.start()]} {rest[match.end() :]}"
    return (found or _without_hour(named, setting)), rest


def _without_hour(named: Part | None, setting: Setting) -> list[Times]:
    """No hour was said: the usual time of that part of the day, if a part was named."""
    if named is None:
        return []
    low, high = HOURS[named]
    usual = setting.usual
    fits = usual is not None and low <= usual.hour < high
    return [(usual,)] if fits and usual is not None else [(USUAL_TIMES[named],)]


def _readings(said: Spoken, part: Part | None, face: ClockFace) -> Times:
    """The times that were possibly meant, earliest first. Raises `Stuck` for a time that does not exist."""
    if said.hour > MIDNIGHT or said.minute > 59 or _contradicts(said, part):
        raise Stuck(Problem.NO_SUCH_TIME)
    if said.hour == MIDNIGHT:
        return (time(0),)
    both = (time(said.hour % 12, said.minute), time(said.hour % 12 + 12, said.minute))
    if said.sure:
        return (time(said.hour, said.minute),)
    if part is not None:
        return _within(part, both)
    return both if said.aloud or face is ClockFace.H12 else (time(said.hour, said.minute),)


def _contradicts(said: Spoken, part: Part | None) -> bool:
    """Whether a sure time lies outside the part named with it: "7pm in the morning"."""
    if part is None or part is Part.NIGHT or not said.sure or said.hour == MIDNIGHT:
        return False
    low, high = HOURS[part]
    return not low <= said.hour < high


def _within(part: Part, both: Times) -> Times:
    low, high = HOURS[part]
    fitting = tuple(at for at in both if low <= at.hour < high)
    if not fitting:
        raise Stuck(Problem.NO_SUCH_TIME)
    return fitting
