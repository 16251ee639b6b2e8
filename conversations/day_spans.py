"""Stretches of days as a coach types them: "two weeks", "until 3 January", "from 3 jan to 10 jan", "friday"."""

import re
from datetime import date, datetime, time, timedelta

from conversations.answers.lexing import normal
from conversations.dates import Ambiguous, Dates, NotUnderstood, OneTime, Problem, read
from conversations.dates.meaning import Reading, Understood
from conversations.protocol import Choice
from conversations.words import dates as date_words
from core.calendar.recurrence import Span
from core.calendar.zones import instant, local

LONGEST = timedelta(days=366)  # own caution, no source: a longer stretch is a slip
# A bare day needs a time to be read as one day; noon of a Friday that is past means the next one, but today is today.
NOON, LATE = " at 12:00", " at 23:59"
SAID = re.compile(r"[^\W_][^+=<>|{}$\\]*")  # days begin with a letter or a figure, and are no sums


def read_spans(text: str, at: datetime, zone: str) -> tuple[Span, ...]:
    """What the words may mean, from today on; a single day is a span of itself. () when they mean no days."""
    reading = read(text, at, zone)
    if reading == NotUnderstood(Problem.NO_TIME):
        reading = read(text.strip() + (LATE if "today" in text.lower() else NOON), at, zone)
    found = _spans(reading)
    today = local(at, zone).date()
    return tuple(span for span in found if span.last >= today and span.last - today <= LONGEST)


def read_texts(text: str, at: datetime, zone: str) -> tuple[str, ...]:
    """`read_spans` as a draft keeps them."""
    if not SAID.fullmatch(normal(text)):
        return ()
    return tuple(to_text(span) for span in read_spans(" ".join(text.split()), at, zone))


def options(texts: tuple[str, ...]) -> tuple[Choice, ...]:
    """Buttons to choose among kept spans."""
    return tuple(Choice(shown(from_text(text)), text) for text in texts)


def _spans(reading: Reading) -> tuple[Span, ...]:
    readings = reading.readings if isinstance(reading, Ambiguous) else (reading,)
    return tuple(dict.fromkeys(span for one in readings if (span := _span(one)) is not None))


def _span(one: Understood | Reading) -> Span | None:
    match one:
        case Dates(span):
            return span
        case OneTime(once):
            return Span(once.at.date(), once.at.date())
        case _:
            return None


def begins(span: Span, zone: str) -> datetime:
    """The first instant of the span."""
    return instant(span.first, time(0), zone)


def ends(span: Span, zone: str) -> datetime:
    """The first instant after the span."""
    return instant(span.last + timedelta(days=1), time(0), zone)


def shown(span: Span) -> str:
    """As it is said back."""
    return date_words.say_back(Dates(span), "UTC")


def to_text(span: Span) -> str:
    """As a draft keeps it: "2026-03-02/2026-03-15"."""
    return f"{span.first.isoformat()}/{span.last.isoformat()}"


def from_text(text: str) -> Span:
    """What `to_text` wrote."""
    first, _, last = text.partition("/")
    return Span(date.fromisoformat(first), date.fromisoformat(last))
