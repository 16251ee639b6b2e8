"""What a phrase about dates and times can mean. Local dates and times; the zone is named where it matters."""

from dataclasses import dataclass
from datetime import date, time
from enum import StrEnum

from core.calendar.recurrence import Once, Recurrence, Span


class DayOrder(StrEnum):
    """How the client writes 3/4. Stored."""

    DAY_FIRST = "dd/mm"
    MONTH_FIRST = "mm/dd"


class ClockFace(StrEnum):
    """How the client writes times. Stored."""

    H12 = "12"
    H24 = "24"


def order_from(stored: str) -> DayOrder | None:
    """The way round that was stored; None: never said ("")."""
    return DayOrder(stored) if stored else None


def face_from(stored: str) -> ClockFace:
    """The clock that was stored; 24 hours when never said ("")."""
    return ClockFace(stored) if stored else ClockFace.H24


class HowWritten:
    """What a brief knows of how whoever talks writes dates and times, from two stored settings."""

    __slots__ = ()
    date_order: str
    clock_face: str

    @property
    def order(self) -> DayOrder | None:
        """How they write 3/4; None: never said."""
        return order_from(self.date_order)

    @property
    def face(self) -> ClockFace:
        """How they write times."""
        return face_from(self.clock_face)


@dataclass(frozen=True, slots=True)
class OneTime:
    """One date and time: "tomorrow 6:30"."""

    once: Once


@dataclass(frozen=True, slots=True)
class Repeat:
    """Weekly times: "mon and thu 7pm", "every other saturday morning"."""

    recurrence: Recurrence


@dataclass(frozen=True, slots=True)
class Dates:
    """A stretch of dates without a time: "from 3 jan for six weeks"."""

    span: Span


@dataclass(frozen=True, slots=True)
class Skip:
    """Nothing on these dates: "skip this week". `span` None: the next session, whenever it is."""

    span: Span | None


@dataclass(frozen=True, slots=True)
class Move:
    """The session of `day` goes elsewhere.

    `day` None: the next session; `to` None: the same day; `at` None: the same time.
    """

    day: date | None
    to: date | None
    at: time | None


@dataclass(frozen=True, slots=True)
class Delay:
    """Later by so many minutes: "in 20 minutes"."""

    minutes: int


@dataclass(frozen=True, slots=True)
class NotToday:
    """Nothing today, and nothing said about another day."""


Understood = OneTime | Repeat | Dates | Skip | Move | Delay | NotToday


@dataclass(frozen=True, slots=True)
class Ambiguous:
    """Two to four readings, to be asked back with their dates."""

    readings: tuple[Understood, ...]


class Problem(StrEnum):
    """Why nothing was understood. Stored in the log of re-asks: add freely, never rename."""

    NO_IDEA = "no_idea"
    NO_TIME = "no_time"  # a day, but at what time?
    NO_DAY = "no_day"  # a rhythm without its days: "twice a week"
    NO_SUCH_DATE = "no_such_date"  # 31 february
    NO_SUCH_TIME = "no_such_time"  # 25:00
    WRONG_WEEKDAY = "wrong_weekday"  # "monday 3 jan", and that is a Sunday
    IN_THE_PAST = "in_the_past"
    TOO_FAR = "too_far"  # further off than anybody plans


@dataclass(frozen=True, slots=True)
class NotUnderstood:
    """No reading, and what was missing or wrong."""

    problem: Problem


Reading = Understood | Ambiguous | NotUnderstood


class Stuck(Exception):
    """Raised inside the reader to give up with a problem; `read` turns it into `NotUnderstood`."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.value)
        self.problem = problem


@dataclass(frozen=True, slots=True)
class Setting:
    """Who is reading: the client's date, clock time, zone and habits. `usual` is the time of "same time"."""

    today: date
    clock: time
    zone: str
    order: DayOrder | None
    face: ClockFace
    usual: time | None = None
