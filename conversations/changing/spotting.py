"""Is this about days and times? Only what can be nothing else breaks into an open question."""

import re
from datetime import datetime, time

from conversations.dates import Ambiguous, Move, NotUnderstood, OneTime, Problem, Repeat, Skip, read
from conversations.dates.meaning import Reading
from conversations.dates.travel import read_travel

ASKS = re.compile(
    r"^\W*(?:please,? |pls |can (?:we|i|you) |could (?:we|i|you) |i (?:want|need|would like|have) to |lets |let's )*"
    r"(?:move|shift|reschedule|postpone|skip|cancel|swap)\b",
    re.IGNORECASE,
)
ABOUT_DAYS = re.compile(
    r"\b(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:days?)?\b|\b(?:today|tom+or+ow|tmrw?|tmw|tonight|weeks?|skip|move)\b"
    r"|\b(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b",
    re.IGNORECASE,
)
TIMED = re.compile(
    r"\d[:h]\d|\d ?(?:[ap]\.? ?m|h)\b|\bat\b|noon|midday|midnight|morning|afternoon|evening|o'?clock|\b(?:half|quarter)\b"
    r"|\b(?:in|next|day|instead)\b",
    re.IGNORECASE,
)
GREETING = re.compile(
    r"^\W*(?:hi|hello|hey|good|thanks?|thank you|ok|okay|\W)*\W*(?:morning|afternoon|evening|night)\W*$",
    re.IGNORECASE,
)
NOON = time(12)  # stands for the usual hour, which does not matter here


def is_change(text: str, at: datetime, zone: str, *, asked: bool, reminded: bool = False) -> bool:
    """Whether a text changes days or times.

    `asked`: a question is open, so only "move thursday to friday", "skip this week" or "I am in Lisbon" count.
    `reminded`: the open question is the reminder, which reads times by itself, but only for its own session.
    """
    if read_travel(text, at, zone):
        return True
    if asked and not reminded and ASKS.search(text) is None:
        return False
    reading = read(text, at, zone, usual=NOON)
    if reminded:
        return _is_beyond_today(reading)
    if asked:
        return not isinstance(reading, NotUnderstood)
    if GREETING.match(text):
        return False
    if isinstance(reading, NotUnderstood):  # worth a word only where days were the subject: "skip 31 feb"
        return reading.problem is not Problem.NO_IDEA and ABOUT_DAYS.search(text) is not None
    return not _is_bare(reading) or (TIMED.search(text) or ABOUT_DAYS.search(text)) is not None


def _is_bare(reading: Reading) -> bool:
    """Only times of day: a count or a correction, "no, 21", would read so as well."""
    readings = reading.readings if isinstance(reading, Ambiguous) else (reading,)
    return all(isinstance(one, OneTime) for one in readings)


def _is_beyond_today(reading: Reading) -> bool:
    readings = reading.readings if isinstance(reading, Ambiguous) else (reading,)
    return any(
        isinstance(one, Skip | Repeat) or (isinstance(one, Move) and one.day is not None) for one in readings
    )
