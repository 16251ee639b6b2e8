"""It is time: start, later, another time, not today. One gentle repeat; a missed one is asked about next day."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear, Why, choice
from conversations.dates import Delay, OneTime, read
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Begin, Choice, Effect, Record, Said, Say
from conversations.words import reminding as words
from core.calendar.zones import local
from core.facts import Noticed

HALF_AN_HOUR = timedelta(minutes=30)
NEXT_DAY = timedelta(hours=16)


@dataclass(frozen=True, slots=True)
class Brief:
    """Which session day, in which zone."""

    plan_name: str
    session_day: str = ""
    zone: str = "UTC"
    again: bool = False


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `when`: ISO time."""

    act: str | None = None
    when: str | None = None


CHOICES = tuple(Choice(label, value) for label, value in words.CHOICES)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.act is None:
        return "act"
    return "when" if draft.act == "other" and draft.when is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "act":
        return Say(words.TIME.format(plan=brief.plan_name), CHOICES)
    return Say(words.OTHER)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "act":
        typed = (Choice("yes", "start"), Choice("later", "later"), Choice("no", "skip"))
        return replace(draft, act=choice(answer.text, (*CHOICES, *typed)))
    match read(answer.text, answer.at, brief.zone):
        case OneTime(once):
            at = local(answer.at, brief.zone).replace(tzinfo=None)
            when = once.at if once.at.tzinfo is None else local(once.at, brief.zone).replace(tzinfo=None)
            delay = when - at
        case Delay(minutes):
            delay = timedelta(minutes=minutes)
        case _:
            raise Unclear(Why.NOT_AN_OPTION, options=("18:30", "tomorrow 7"))
    if delay <= timedelta(0):
        raise Unclear(Why.NOT_AN_OPTION, options=("a time to come",))
    return replace(draft, when=(answer.at + delay).isoformat())


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What was chosen."""
    match draft.act:
        case "start":
            return Outcome((), (Begin("before"),))
        case "skip":
            return Outcome((Say(words.SKIPPED),), (Record(Noticed(at, "skipped", brief.session_day)),))
        case _:
            when = datetime.fromisoformat(draft.when) if draft.when else at + HALF_AN_HOUR
            shown = local(when, brief.zone).strftime("%A %H:%M")
            return Outcome((Say(words.AGREED.format(when=shown)),), (_again(brief, when),))


def _again(brief: Brief, when: datetime) -> Effect:
    about = {
        "session_day": brief.session_day,
        "plan_name": brief.plan_name,
        "zone": brief.zone,
        "again": True,
    }
    return Begin("reminding", about, at=when)


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Nobody answered: ask the next day."""
    missed = Begin("missed", {"plan_name": brief.plan_name}, at=at + NEXT_DAY)
    return Outcome((), (Record(Noticed(at, "missed", brief.session_day)), missed))


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
