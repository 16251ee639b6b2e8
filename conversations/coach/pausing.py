"""The coach gives a client a pause: until when, and one line why, which the client reads."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations import day_spans
from conversations.answers import Unclear, pick
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import coach as words
from core.calendar.recurrence import Span
from core.calendar.zones import local
from core.facts import CoachDid, Paused

LENGTHS = tuple(Choice(label, value) for label, value in words.PAUSE_LENGTHS)
REASONS = tuple(Choice(label, value) for label, value in words.PAUSE_REASONS)
LONGEST_WHY = 200


@dataclass(frozen=True, slots=True)
class Brief:
    """Who pauses; days are the client's."""

    client: int
    client_name: str
    coach: int
    zone: str = "UTC"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `readings`: what the typed days may mean; `unclear`: they meant none."""

    days: str | None = None
    why: str | None = None
    readings: tuple[str, ...] = ()
    unclear: bool = False


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.days is None:
        return "days"
    return "why" if draft.why is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "why":
        return Say(words.PAUSE_WHY.format(name=brief.client_name), REASONS)
    if draft.readings:
        return Say(words.WHICH, day_spans.options(draft.readings))
    text = words.DAYS_UNCLEAR if draft.unclear else words.PAUSE_UNTIL
    return Say(text.format(name=brief.client_name), LENGTHS)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    plain = " ".join(answer.text.split())[:LONGEST_WHY]
    if step == "why":
        return replace(draft, why=_reason(plain) or None)
    if draft.readings and plain in draft.readings:
        return replace(draft, days=plain, readings=())
    spans = _with_until(day_spans.read_texts(plain, answer.at, brief.zone), answer.at, brief.zone)
    if len(spans) == 1:
        return replace(draft, days=spans[0], readings=(), unclear=False)
    return replace(draft, readings=spans, unclear=not spans)


def _with_until(texts: tuple[str, ...], at: datetime, zone: str) -> tuple[str, ...]:
    """One day named where "until when?" was asked may be the last day of the pause, or all of it."""
    today, found = local(at, zone).date(), []
    for text in texts:
        span = day_spans.from_text(text)
        if today < span.first == span.last:
            found.append(day_spans.to_text(Span(today, span.last)))
        found.append(text)
    return tuple(found)


def _reason(plain: str) -> str:
    """A button's reason by its label too; anything else is the coach's own line."""
    try:
        return pick(plain, REASONS)
    except Unclear:
        return plain


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The pause begins with its first day, now if that is today, and ends after the last."""
    assert draft.days is not None, "the days are asked first"
    span, why = day_spans.from_text(draft.days), "" if draft.why in (None, "-") else str(draft.why)
    since, until = max(at, day_spans.begins(span, brief.zone)), day_spans.ends(span, brief.zone)
    effects = (
        Record(Paused(at, since, until, brief.coach, why), brief.client),
        Record(
            CoachDid(at, brief.coach, "paused", f"through {span.last.isoformat()} {why}".strip()),
            brief.client,
        ),
        Do("paused", {"client": brief.client}),
    )
    said = words.PAUSE_SET.format(name=brief.client_name, days=day_spans.shown(span))
    return Outcome((Say(said, (words.to_card(brief.client_name, brief.client),)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish
)
DIALOGUE = dialogue("pausing", Brief, Draft, FORM)
