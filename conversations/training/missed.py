"""The day after a missed session: now, another time, or dropped, without guilt."""

from datetime import datetime, timedelta

from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Begin, Choice, Record, Said, Say
from conversations.training import choosing_time
from conversations.training.choosing_time import Brief, Draft, missing
from conversations.training.reminding import moved
from conversations.words import reminding as words
from core.facts import Noticed

CHOICES = tuple(Choice(label, value) for label, value in words.MISSED_CHOICES)
TYPED = (
    *(Choice(label, "start") for label in ("yes", "start", "today", "go")),
    *(Choice(label, "other") for label in ("move", "other time", "later")),
    *(Choice(label, "drop") for label in ("no", "skip", "skip it", "drop", "not today")),
)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "act":
        text = words.AWAY_MORE if brief.away > 1 else words.AWAY_ONE if brief.away else words.MISSED
        plan = choosing_time.session_named(brief, words.SESSION_SHORT)
        return Say(text.format(plan=plan, count=brief.away, when=_when(brief)), CHOICES)
    return choosing_time.ask(brief, draft, step)


def _when(brief: Brief) -> str:
    return "" if brief.at is None else choosing_time.shown(brief, brief.at)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "act":
        return choosing_time.fill_act(brief, draft, answer.text, answer.at, CHOICES, TYPED, "drop")
    return choosing_time.fill(brief, draft, step, answer.text, answer.at)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Now, at another time, or dropped."""
    if draft.act == "start":
        return Outcome((), (Begin("before"),))
    if draft.act == "other" and draft.when:
        return moved(brief, draft.when[0])
    return Outcome((Say(words.DROPPED),), (Record(Noticed(at, "dropped", brief.session_day)),))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No answer drops it, quietly."""
    return Outcome((), (Record(Noticed(at, "dropped", brief.session_day)),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    patience=timedelta(hours=4),
    lapse=timedelta(hours=10),
    lapsed=lapsed,
)
DIALOGUE = dialogue("missed", Brief, Draft, FORM)
