"""A person's own settings: how long before a session to be reminded, quiet hours, how dates and times are written."""

import re
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta

from conversations.answers import Unclear, choice, whole_number
from conversations.answers.unclear import Why
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import preferences as words
from core.facts import Detail

MOST_MIN = 180  # a reminder earlier than that is of no use; own judgement, no source
SPAN = re.compile(
    r"^(?:from )?(\d{1,2})(?:[:.](\d{2}))? ?(am|pm)? ?(?:-|to|until|till) ?(\d{1,2})(?:[:.](\d{2}))? ?(am|pm)?$"
)
SETTINGS = tuple(Choice(label, value) for label, value in words.SETTINGS)
VALUES = {name: tuple(Choice(label, value) for label, value in pairs) for name, pairs in words.VALUES.items()}
OF_CLIENTS = "remind_before"  # a coach is reminded of no session


@dataclass(frozen=True, slots=True)
class Brief:
    """The settings as they are, as stored; "" for never set."""

    by_coach: bool = False
    remind_before: str = ""
    quiet_hours: str = ""
    date_order: str = ""
    clock_face: str = ""


@dataclass(frozen=True, slots=True)
class Draft:
    """`what` is the name of a stored detail, `value` its new value; None: not asked yet."""

    what: str | None = None
    value: str | None = None


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.what is None:
        return "what"
    return "value" if draft.value is None and draft.what != words.NOTHING else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "what":
        return Say(words.now(brief.by_coach, stored(brief)), _settings(brief))
    return Say(words.ASK[draft.what or ""], VALUES[draft.what or ""])


def stored(brief: Brief) -> dict[str, str]:
    """By name."""
    return {name: getattr(brief, name) for name in words.VALUES}


def _settings(brief: Brief) -> tuple[Choice, ...]:
    return tuple(one for one in SETTINGS if not (brief.by_coach and one.value == OF_CLIENTS))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "what":
        return replace(draft, what=choice(answer.text, _settings(brief)))
    return replace(draft, value=_value(draft.what or "", answer.text))


def _value(name: str, text: str) -> str:
    try:
        return choice(text, VALUES[name])
    except Unclear:
        match name:
            case "remind_before":
                return str(whole_number(re.sub(r"\bmin(ute)?s?\b", "", text), 0, MOST_MIN))
            case "quiet_hours":
                return quiet_hours(text)
            case _:
                raise


def quiet_hours(text: str) -> str:
    """ "22:00 to 6:30" or "10pm-7am" as stored, "22:00-06:30". Raises `Unclear`."""
    found = SPAN.match(" ".join(text.lower().split()))
    if found is None:
        raise Unclear(Why.NOT_AN_OPTION, options=[one.label for one in VALUES["quiet_hours"]])
    return f"{_clock(found[1], found[2], found[3])}-{_clock(found[4], found[5], found[6])}"


def _clock(hour: str, minute: str | None, half: str | None) -> str:
    number = int(hour) % 12 + (12 if half == "pm" else 0) if half else int(hour)
    try:
        return f"{time(number % 24, int(minute or 0)):%H:%M}"
    except ValueError:
        raise Unclear(Why.NOT_AN_OPTION, options=[one.label for one in VALUES["quiet_hours"]]) from None


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The setting is stored and said back; reminders follow it."""
    if draft.what is None or draft.value is None:
        return Outcome((Say(words.UNCHANGED),))
    told = Say(words.said(draft.what, draft.value))
    return Outcome((told,), (Record(Detail(at, draft.what, draft.value)), Do("settings_changed")))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    patience=timedelta(hours=12),
    lapse=timedelta(hours=12),
)
DIALOGUE = dialogue("preferences", Brief, Draft, FORM)
