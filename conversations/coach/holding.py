"""After a coach's "Hold": until when. The hold holds already; on that day the coach is asked, it never ends by itself."""

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from conversations import day_spans
from conversations.answers import Unclear, Why
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import clearing as words
from core.calendar.zones import local
from core.facts import CoachDid

HOLDS = tuple(Choice(label, value) for label, value in words.HOLDS)
OPEN = "open"  # until the coach says
OPEN_HOLD = frozenset({OPEN, *words.OPEN_HOLD})
LAPSE = timedelta(hours=12)  # without an answer it stays without a day; own choice


@dataclass(frozen=True, slots=True)
class Brief:
    """Who is on hold; days are the client's."""

    client: int
    client_name: str
    coach: int
    zone: str = "UTC"


@dataclass(frozen=True, slots=True)
class Draft:
    """`hold`: the ISO date on which the coach is asked, or "open"; None: not asked yet. `readings`: possible days."""

    hold: str | None = None
    readings: tuple[str, ...] = ()


def day_or_readings(text: str, readings: tuple[str, ...], at: datetime, zone: str) -> Draft:
    """Until a day after today, or until the coach says; what may mean several days is asked. Raises `Unclear`."""
    plain = " ".join(text.split())
    if plain.casefold() in OPEN_HOLD:
        return Draft(OPEN)
    spans = (plain,) if plain in readings else day_spans.read_texts(plain, at, zone)
    spans = tuple(one for one in spans if day_spans.from_text(one).last > local(at, zone).date())
    if not spans:
        raise Unclear(Why.NOT_A_DAY)
    if len(spans) > 1:
        return Draft(None, spans)
    return Draft(day_spans.from_text(spans[0]).last.isoformat())


def question(name: str, readings: tuple[str, ...]) -> Say:
    """Until when, or which of the days that were meant."""
    if readings:
        return Say(words.HOLD_WHICH, day_spans.options(readings))
    return Say(words.HOLD_UNTIL.format(name=name), HOLDS)


def shown(hold: str) -> str:
    """The day as it stands on record."""
    return words.ASKED_ON.format(day=f"{date.fromisoformat(hold):%-d %B %Y}")


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """The answer. Raises `Unclear`."""
    found = day_or_readings(answer.text, draft.readings, answer.at, brief.zone)
    return replace(draft, hold=found.hold, readings=found.readings)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The day is on record and planned; without one the hold just stays."""
    if draft.hold in (None, OPEN):
        return Outcome((Say(words.HELD_OPEN.format(name=brief.client_name)),))
    did = Record(CoachDid(at, brief.coach, "held_until", shown(str(draft.hold))), brief.client)
    said = Say(words.HELD_TO.format(name=brief.client_name, held=shown(str(draft.hold))))
    return Outcome((said,), (did, Do("hold_until", {"client": brief.client, "hold": draft.hold})))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "hold" if draft.hold is None else None,
    ask=lambda brief, draft, step: question(brief.client_name, draft.readings),
    fill=fill,
    finish=finish,
    lapse=LAPSE,
    cancelled=lambda brief, draft, at: Outcome((Say(words.HELD_OPEN.format(name=brief.client_name)),)),
)
DIALOGUE = dialogue("holding", Brief, Draft, FORM)
