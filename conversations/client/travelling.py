"""Away from the equipment for some days: from when to when; the plan is swapped and comes back by itself."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations import day_spans
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import coach as words
from conversations.words import travelling as travelling_words
from core.facts import CoachDid, Travelling

LENGTHS = tuple(Choice(label, value) for label, value in travelling_words.TRAVEL_LENGTHS)


@dataclass(frozen=True, slots=True)
class Brief:
    """Who travels, and who says so; days are the client's. `swaps`: (movement, what stands for it or "")."""

    client: int
    client_name: str
    coach: int
    by_coach: bool = False
    swaps: tuple[tuple[str, str], ...] = ()
    zone: str = "UTC"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `readings`: what the typed days may mean; `unclear`: they meant none."""

    days: str | None = None
    readings: tuple[str, ...] = ()
    unclear: bool = False


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if draft.readings:
        return Say(words.WHICH, day_spans.options(draft.readings))
    if draft.unclear:
        return Say(words.DAYS_UNCLEAR, LENGTHS)
    text = travelling_words.TRAVEL_DAYS_COACH if brief.by_coach else travelling_words.TRAVEL_DAYS
    return Say(text.format(name=brief.client_name, swaps=travelling_words.swaps_text(brief.swaps)), LENGTHS)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """The days."""
    if answer.text in draft.readings:
        return replace(draft, days=answer.text, readings=())
    spans = day_spans.read_texts(answer.text, answer.at, brief.zone)
    if len(spans) == 1:
        return replace(draft, days=spans[0], readings=(), unclear=False)
    return replace(draft, readings=spans, unclear=not spans)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The plan is swapped from the first day on and comes back after the last."""
    assert draft.days is not None, "the days are asked first"
    span = day_spans.from_text(draft.days)
    since, until = max(at, day_spans.begins(span, brief.zone)), day_spans.ends(span, brief.zone)
    days = day_spans.shown(span)
    fact = Record(Travelling(at, since, until, brief.coach if brief.by_coach else brief.client), brief.client)
    did = (Record(CoachDid(at, brief.coach, "travel", days), brief.client),) if brief.by_coach else ()
    said = travelling_words.TRAVEL_SET_COACH if brief.by_coach else travelling_words.TRAVEL_SET
    told = Do("travelling", {"client": brief.client, "by_coach": brief.by_coach, "days": days})
    card = (words.to_card(brief.client_name, brief.client),) if brief.by_coach else ()
    return Outcome((Say(said.format(name=brief.client_name, days=days), card),), (fact, *did, told))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "days" if draft.days is None else None,
    ask=ask,
    fill=fill,
    finish=finish,
)
DIALOGUE = dialogue("travelling", Brief, Draft, FORM)
