"""Where somebody is: "I am in Lisbon next week", "flying to Tokyo from 3 to 10 jan", "back in Helsinki"."""

import re
from dataclasses import dataclass
from datetime import datetime

from conversations.answers.lexing import normal
from conversations.dates.meaning import ClockFace, DayOrder, Setting, Stuck
from conversations.dates.plain import LONGEST, plain
from conversations.dates.spans import read_span
from conversations.dates.zones import ZoneFound, ZonesPossible, read_zone
from core.calendar.recurrence import Span
from core.calendar.zones import local

GOING = re.compile(
    r"^(?:hi,? |hello,? )?(?:(?:i am|i'm|im|we are|we're|i will be|i'll be|ill be|now|i) )?"
    r"(?:(?:now|back|home|staying|living|travell?ing|travel|going|flying|fly|off|away|moving|moved|here) )*"
    r"(?:in|to) (?P<rest>.+)$"
)
# A place by its capital letters: nobody is "in Bed" or "in Pain".
PLACED = re.compile(
    r"^\W*(?:(?:[Hh]i|[Hh]ello),? )?(?:[Ii] am|[Ii][’']?m|[Ww]e are|[Ww]e[’']re) (?:(?:now|back|staying|here) )*in "
    r"(?P<place>[A-Z][\w'’-]+(?: [A-Z][\w'’-]+){0,3})(?:,? (?:now|today|tomorrow|this|next|until|till|for|from)\b.*)?\W*$"
)
FROM_NOW_ON = ("", "now", "today", "for now", "from today", "from now on")
MOST_WORDS = 12  # a longer sentence is a letter


@dataclass(frozen=True, slots=True)
class Travel:
    """The clock to go by. `span` None: from now on, until something else is said."""

    zone: str
    span: Span | None


def read_travel(text: str, now: datetime, zone: str, order: DayOrder | None = None) -> tuple[Travel, ...]:
    """The readings of a text that says where somebody is; empty when it says nothing of the kind.

    More than one where a name is shared by several places or a date has two readings.
    """
    found = GOING.match(normal(text).rstrip(".!"))
    if found is None or len(text) > LONGEST:
        return ()
    here = local(now, zone)
    setting = Setting(here.date(), here.time(), zone, order, ClockFace.H24)
    words = found["rest"].split()[:MOST_WORDS]
    for length in range(len(words), 0, -1):
        zones = _zones(" ".join(words[:length]).rstrip(","))
        spans = _spans(" ".join(words[length:]), setting) if zones else ()
        if spans:
            return tuple(Travel(each, span) for each in zones for span in spans)
    return ()


def place_unknown(text: str) -> str:
    """Where somebody says they are, if nobody can tell the time there; "": they say nothing of the kind."""
    found = PLACED.match(text.strip())
    return "" if found is None or _zones(found["place"]) else found["place"]


def _zones(place: str) -> tuple[str, ...]:
    match read_zone(place):
        case ZoneFound(zone):
            return (zone,)
        case ZonesPossible(zones):
            return zones
        case _:
            return ()


def _spans(text: str, setting: Setting) -> tuple[Span | None, ...]:
    if text in FROM_NOW_ON:
        return (None,)
    try:
        return read_span(plain(text), setting)
    except Stuck:
        return ()
