"""The morning after: all fine, or what it is and whom to ask. No answer is news for the coach, too."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import choice, whole_number
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Alert, Choice, Effect, Record, Said, Say
from conversations.words import morning as words
from core.facts import Answered, Rated
from core.plans import PAIN_CEILING


@dataclass(frozen=True, slots=True)
class Brief:
    """After which session; `day` is "morning" or "48h"."""

    session: str
    day: str = "morning"
    pain_ceiling: int = PAIN_CEILING
    emergency_number: str = "your local emergency number"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet."""

    how: str | None = None
    what: str | None = None
    pain: int | None = None


HOWS = tuple(Choice(label, value) for label, value in words.HOWS)
WHATS = tuple(Choice(label, value) for label, value in words.WHATS)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.how is None:
        return "how"
    if draft.how == "else":
        return "what" if draft.what is None else None
    return "pain" if draft.pain is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "how":
            return Say(words.HOW, HOWS)
        case "what":
            return Say(words.WHAT, WHATS)
        case _:
            return Say(words.PAIN, tuple(Choice(str(n), str(n)) for n in range(6)))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "how":
            typed = (Choice("fine", "fine"), Choice("good", "fine"), Choice("sore", "sore"))
            return replace(draft, how=choice(answer.text, (*HOWS, *typed)))
        case "what":
            return replace(draft, what=choice(answer.text, WHATS))
        case _:
            return replace(draft, pain=whole_number(answer.text, 0, 10, zero=("none", "no", "no pain")))


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Facts at once; red flags to the coach in the same commit."""
    if step == "pain":
        score = draft.pain or 0
        fact: Effect = Record(Rated(answer.at, brief.session, "pain", brief.day, score))
        unsettled = Alert("pain_not_settled", f"Pain {score} of 10 the {brief.day} after", words.NOT_SETTLED)
        return (fact, unsettled) if score > brief.pain_ceiling else (fact,)
    value = draft.how if step == "how" else draft.what
    facts: tuple[Effect, ...] = (Record(Answered(answer.at, brief.session, brief.day, step, value or "")),)
    if step == "what" and draft.what is not None:
        label = next(choice.label for choice in WHATS if choice.value == draft.what)
        facts += (Alert(draft.what, label, told(brief, draft.what)),)
    return facts


def told(brief: Brief, what: str) -> str:
    """What to do about it."""
    return words.TOLD[what].format(number=brief.emergency_number)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What to do, or thanks."""
    if draft.what is not None:
        return Outcome((Say(told(brief, draft.what)),))
    unsettled = draft.pain is not None and draft.pain > brief.pain_ceiling
    return Outcome((Say(words.NOT_SETTLED if unsettled else words.THANKS),))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No reply: the coach's list of today."""
    return Outcome((), (Alert("no_morning_reply", "No answer the morning after"),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    patience=timedelta(hours=3),
    lapse=timedelta(hours=20),
    lapsed=lapsed,
)
DIALOGUE = dialogue("morning", Brief, Draft, FORM)
