"""A coach goes away: who stands in, and from when to when."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations import day_spans
from conversations.answers import choice
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import coach as words
from conversations.words import covering as covering_words
from core.facts import StandIn

LENGTHS = tuple(Choice(label, value) for label, value in words.PAUSE_LENGTHS)


@dataclass(frozen=True, slots=True)
class Brief:
    """The other coaches as (person's id, name); days are the coach's."""

    coaches: tuple[tuple[str, str], ...] = ()
    zone: str = "UTC"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `readings`: what the typed days may mean; `unclear`: they meant none."""

    who: str | None = None
    days: str | None = None
    readings: tuple[str, ...] = ()
    unclear: bool = False


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if not brief.coaches:
        return None
    if draft.who is None:
        return "who"
    return "days" if draft.days is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "who":
        return Say(covering_words.COVER_WHO, _coaches(brief))
    if draft.readings:
        return Say(words.WHICH, day_spans.options(draft.readings))
    return Say(words.DAYS_UNCLEAR if draft.unclear else covering_words.COVER_DAYS, LENGTHS)


def _coaches(brief: Brief) -> tuple[Choice, ...]:
    return tuple(Choice(name, number) for number, name in brief.coaches)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "who":
        return replace(draft, who=choice(answer.text, _coaches(brief)))
    if answer.text in draft.readings:
        return replace(draft, days=answer.text, readings=())
    spans = day_spans.read_texts(answer.text, answer.at, brief.zone)
    if len(spans) == 1:
        return replace(draft, days=spans[0], readings=(), unclear=False)
    return replace(draft, readings=spans, unclear=not spans)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """From its first day on, the stand-in sees the clients and gets the alerts."""
    if draft.who is None or draft.days is None:
        return Outcome((Say(covering_words.NO_OTHER_COACH),))
    span = day_spans.from_text(draft.days)
    since, until = max(at, day_spans.begins(span, brief.zone)), day_spans.ends(span, brief.zone)
    name = dict(brief.coaches)[draft.who]
    said = Say(covering_words.COVER_SET.format(coach=name, days=day_spans.shown(span)))
    return Outcome((said,), (Record(StandIn(at, int(draft.who), since, until)), Do("covering")))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish
)
DIALOGUE = dialogue("covering", Brief, Draft, FORM)
