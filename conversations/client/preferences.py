"""A person's own settings: how long before a session to be reminded, quiet hours, how dates and times
are written; a coach's day and hour of the digest.
"""

import re
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta

from conversations.answers import Unclear, choice, whole_number
from conversations.answers.unclear import Why
from conversations.dates import Ambiguous, Repeat, read
from conversations.dates.meaning import HowWritten
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import dates as date_words
from conversations.words import preferences as words
from core.calendar.digest_time import next_digest, slot_from_text, slot_to_text
from core.calendar.recurrence import Slot
from core.facts import Detail

MOST_MIN = 180  # a reminder earlier than that is of no use; own judgement, no source
SPAN = re.compile(
    r"^(?:from )?(\d{1,2})(?:[:.](\d{2}))? ?(am|pm)? ?(?:-|to|until|till) ?(\d{1,2})(?:[:.](\d{2}))? ?(am|pm)?$"
)
SETTINGS = tuple(Choice(label, value) for label, value in words.SETTINGS)
VALUES = {name: tuple(Choice(label, value) for label, value in pairs) for name, pairs in words.VALUES.items()}
REMIND_BEFORE = "remind_before"  # minutes; a client's only, as a coach is reminded of no session
DIGEST_AT = "digest_at"  # weekday and time; a coach's only, as a client gets no digest


@dataclass(frozen=True, slots=True)
class Brief(HowWritten):
    """The settings as they are, as stored; "" for never set."""

    by_coach: bool = False
    remind_before: str = ""
    quiet_hours: str = ""
    date_order: str = ""
    clock_face: str = ""
    digest_at: str = ""
    last_digest: date | None = None
    zone: str = "UTC"


@dataclass(frozen=True, slots=True)
class Draft:
    """`what` is the name of a stored detail, `value` its new value; None: not asked yet.

    `readings`: what the last words about the digest may mean, as stored values, when it is more than one thing.
    """

    what: str | None = None
    value: str | None = None
    readings: tuple[str, ...] = ()


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.what is None:
        return "what"
    return "value" if draft.value is None and draft.what != words.NOTHING else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "what":
        return Say(words.now([one.value for one in _settings(brief)], stored(brief)), _settings(brief))
    if draft.readings:
        return Say(date_words.WHICH_ONE, _readings(brief, draft))
    return Say(words.ASK[draft.what or ""], VALUES[draft.what or ""])


def _readings(brief: Brief, draft: Draft) -> tuple[Choice, ...]:
    return tuple(Choice(words.weekly(slot_from_text(value), brief.face), value) for value in draft.readings)


def stored(brief: Brief) -> dict[str, str]:
    """By name."""
    return {name: getattr(brief, name) for name in words.VALUES}


def _settings(brief: Brief) -> tuple[Choice, ...]:
    others = REMIND_BEFORE if brief.by_coach else DIGEST_AT
    return tuple(one for one in SETTINGS if one.value != others)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "what":
        return replace(draft, what=choice(answer.text, _settings(brief)))
    if draft.what == DIGEST_AT:
        return _digest(brief, draft, answer)
    return replace(draft, value=_value(draft.what or "", answer.text))


def _digest(brief: Brief, draft: Draft, answer: Said) -> Draft:
    """A button, or a weekday and a time in plain words. Raises `Unclear`."""
    try:
        return replace(draft, value=choice(answer.text, _readings(brief, draft) or VALUES[DIGEST_AT]))
    except Unclear:
        slots = weekly_slots(answer.text, answer.at, brief)
    values = tuple(slot_to_text(slot) for slot in slots)
    return (
        replace(draft, value=values[0], readings=()) if len(values) == 1 else replace(draft, readings=values)
    )


def weekly_slots(text: str, at: datetime, brief: Brief) -> tuple[Slot, ...]:
    """The weekly times that the words may mean; a day alone keeps the hour. Raises `Unclear` for none."""
    usual = slot_from_text(brief.digest_at).at
    found = read(
        f"every {text.lower().removeprefix('every').strip()}", at, brief.zone, None, brief.face, usual
    )
    readings = found.readings if isinstance(found, Ambiguous) else (found,)
    rhythms = [one.recurrence for one in readings if isinstance(one, Repeat)]
    slots = [one.slots[0] for one in rhythms if len(one.slots) == 1 and one.every == 1 and one.until is None]
    if not slots:
        raise Unclear(Why.NOT_AN_OPTION, options=[one.label for one in VALUES[DIGEST_AT]])
    return tuple(dict.fromkeys(slots))


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
    told = words.said(draft.what, draft.value)
    if draft.what == DIGEST_AT:
        told = f"{told} {next_told(brief, draft.value, at)}"
    return Outcome((Say(told),), (Record(Detail(at, draft.what, draft.value)), Do("settings_changed")))


def next_told(brief: Brief, value: str, at: datetime) -> str:
    """When the next digest comes: weekday, date, time and zone."""
    coming = next_digest(slot_from_text(value), brief.zone, at, brief.last_digest)
    return words.NEXT_DIGEST.format(when=date_words.moment(coming.at, brief.zone, brief.face, brief.order))


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
