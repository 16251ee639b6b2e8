"""Plain-language dates, times, repeats and zones: `read` and `read_zone`."""

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
    Reading,
    Repeat,
    Skip,
    Understood,
)
from conversations.dates.reader import read
from conversations.dates.zones import (
    ZoneFound,
    ZoneNotFound,
    ZoneProblem,
    ZoneReading,
    ZonesPossible,
    read_zone,
)

__all__ = [
    "Ambiguous",
    "ClockFace",
    "Dates",
    "DayOrder",
    "Delay",
    "Move",
    "NotToday",
    "NotUnderstood",
    "OneTime",
    "Problem",
    "Reading",
    "Repeat",
    "Skip",
    "Understood",
    "ZoneFound",
    "ZoneNotFound",
    "ZoneProblem",
    "ZoneReading",
    "ZonesPossible",
    "read",
    "read_zone",
]
