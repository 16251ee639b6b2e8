"""It is time: start, later, another time, not today. One gentle repeat; a missed one is asked about next day."""

from datetime import datetime, time, timedelta
from typing import Any

from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Begin, Choice, Do, Effect, Record, Said, Say
from conversations.training import choosing_time
from conversations.training.choosing_time import Brief, Draft, missing, shown
from conversations.words import reminding as words
from conversations.words.dates import clock_time
from core.calendar.zones import instant, local
from core.facts import Noticed

HALF_AN_HOUR = timedelta(minutes=30)
ASKED_NEXT_DAY = time(10)  # local; own caution, no source

CHOICES = tuple(Choice(label, value) for label, value in words.CHOICES)
TYPED = (
    *(
        Choice(label, "start")
        for label in ("yes", "now", "go", "ok", "ready", "i'm ready", "im ready", "let's start", "let's go")
    ),
    *(Choice(label, "later") for label in ("later", "in half an hour", "30 min", "30")),
    *(Choice(label, "skip") for label in ("no", "skip", "skip it")),
)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "act":
        return Say(_time(brief), CHOICES)
    return choosing_time.ask(brief, draft, step)


def _time(brief: Brief) -> str:
    """Now, ahead of time, or late."""
    text = words.TIME_LATE if brief.late else words.TIME_AHEAD if brief.ahead_min > 0 else words.TIME
    clock = "" if brief.at is None else clock_time(local(brief.at, brief.zone).time(), brief.face)
    return text.format(plan=choosing_time.session_named(brief, words.SESSION), clock=clock)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "act":
        return choosing_time.fill_act(brief, draft, answer.text, answer.at, CHOICES, TYPED, "skip")
    return choosing_time.fill(brief, draft, step, answer.text, answer.at)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What was chosen."""
    match draft.act:
        case "start":
            return Outcome((), (Begin("before"),))
        case "skip":
            return Outcome((Say(words.SKIPPED),), (Record(Noticed(at, "skipped", brief.session_day)),))
        case "other" if draft.when:
            return moved(brief, draft.when[0])
        case _:
            return later(brief, at + HALF_AN_HOUR)


def later(brief: Brief, when: datetime) -> Outcome:
    """The reminder comes again at `when`; the session stays in the plan where it was."""
    return Outcome((Say(words.AGREED.format(when=shown(brief, when))),), (again(brief, when),))


def moved(brief: Brief, when: datetime) -> Outcome:
    """The session itself moves; the engine looks at the usual limits, stores it and says so."""
    return Outcome((), (Do("session_moved", {**_about(brief), "to": when.isoformat()}),))


def again(brief: Brief, when: datetime) -> Effect:
    """The same reminder at another time."""
    return Begin("reminding", {**_about(brief), "at": when.isoformat(), "again": True}, at=when)


def _about(brief: Brief) -> dict[str, Any]:
    return {"session_day": brief.session_day, "plan_name": brief.plan_name, "zone": brief.zone}


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Nobody answered."""
    return Outcome((), (Record(Noticed(at, "missed", brief.session_day)), asked_next_day(brief, at)))


def asked_next_day(brief: Brief, at: datetime) -> Effect:
    """Unless it is done or moved by then: asked about at ten on the client's clock."""
    due = brief.at or at
    about = {**_about(brief), "at": due.isoformat()}
    return Begin("missed", about, at=next_day(due, brief.zone))


def next_day(due: datetime, zone: str) -> datetime:
    """When a session that was due then is asked about."""
    return instant(local(due, zone).date() + timedelta(days=1), ASKED_NEXT_DAY, zone)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    patience=timedelta(minutes=45),
    lapse=timedelta(hours=3),
    lapsed=lapsed,
)
DIALOGUE = dialogue("reminding", Brief, Draft, FORM)
