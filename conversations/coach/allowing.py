"""The coach sets for a client how often they may train: more than usual with a reason, until it is taken back."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations.answers import Unclear, Why, pick, whole_number
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import allowing as words
from conversations.words.coach import to_card
from core.calendar.limits import (
    FEWEST_HOURS_APART,
    HOURS_APART,
    MOST_SESSIONS_A_WEEK,
    SESSIONS_A_WEEK,
    USUAL,
    Limits,
    limits_to_text,
)
from core.facts import CoachDid, Detail

DETAIL = "weekly_limits"  # as stored about a client
LONGEST_NOTE = 200
AS_USUAL = Choice(words.AS_USUAL, "usual")
SESSIONS = tuple(Choice(words.SESSIONS.format(number=one), str(one)) for one in (4, 5, MOST_SESSIONS_A_WEEK))
USUAL_SESSIONS = Choice(words.SESSIONS.format(number=SESSIONS_A_WEEK), str(SESSIONS_A_WEEK))
HOURS = tuple(Choice(words.HOURS.format(number=one), str(one)) for one in (HOURS_APART, FEWEST_HOURS_APART))


@dataclass(frozen=True, slots=True)
class Brief:
    """Whom it is about, and how often they may train so far."""

    client: int
    client_name: str
    coach: int
    allowed: Limits = USUAL


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `sessions` 0: as usual again."""

    sessions: int | None = None
    hours: int | None = None
    note: str | None = None

    @property
    def limits(self) -> Limits:
        """What they come to so far."""
        if not self.sessions:
            return USUAL
        return Limits(self.sessions, self.hours or HOURS_APART)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question; the usual limits need no reason."""
    if draft.sessions is None:
        return "sessions"
    if draft.sessions and draft.hours is None:
        return "hours"
    return "note" if draft.limits != USUAL and draft.note is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "sessions":
            return Say(words.ask_sessions(brief.client_name, brief.allowed), _sessions(brief))
        case "hours":
            return Say(words.ASK_HOURS, HOURS)
        case _:
            return Say(words.ASK_NOTE)


def _sessions(brief: Brief) -> tuple[Choice, ...]:
    return (USUAL_SESSIONS, *SESSIONS, *([AS_USUAL] if brief.allowed != USUAL else []))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "sessions":
            return replace(draft, sessions=_number_or_usual(answer.text))
        case "hours":
            return replace(draft, hours=_number(answer.text, HOURS, FEWEST_HOURS_APART, HOURS_APART))
        case _:
            return replace(draft, note=_reason(answer.text))


def _number_or_usual(text: str) -> int:
    try:
        pick(text, (AS_USUAL,))
    except Unclear:
        return _number(text, (USUAL_SESSIONS, *SESSIONS), SESSIONS_A_WEEK, MOST_SESSIONS_A_WEEK)
    return 0


def _number(text: str, choices: tuple[Choice, ...], low: int, high: int) -> int:
    try:
        return int(pick(text, choices))
    except Unclear:
        return whole_number(text, low, high)


def _reason(text: str) -> str:
    plain = " ".join(text.split())[:LONGEST_NOTE]
    if not any(sign.isalpha() for sign in plain) or plain.lower() in words.NO_REASON:
        raise Unclear(Why.NO_REASON)
    return plain


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Stored until it is changed; the client hears it."""
    limits, card = draft.limits, to_card(brief.client_name, brief.client)
    if limits == brief.allowed:
        return Outcome((Say(words.UNCHANGED, (card,)),))
    stored = "" if limits == USUAL else limits_to_text(limits)
    did = draft.note or words.AS_USUAL.lower()
    about = {"client": brief.client, "sessions": limits.sessions_a_week, "hours": limits.hours_apart}
    effects = (
        Record(Detail(at, DETAIL, stored), brief.client),
        Record(CoachDid(at, brief.coach, "limits", did), brief.client),
        Do("limits_set", about),
    )
    return Outcome((Say(words.told_coach(brief.client_name, limits), (card,)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish
)
DIALOGUE = dialogue("allowing", Brief, Draft, FORM)
