"""The client writes to the coach: the next line goes there word for word, and is said back as sent."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Relay, Said, Say
from conversations.words import telling as words

LONGEST = 2000


@dataclass(frozen=True, slots=True)
class Brief:
    """To whom."""

    coach_name: str = words.YOUR_COACH


@dataclass(frozen=True, slots=True)
class Draft:
    """The words; None: not typed yet."""

    text: str | None = None


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """The words as they came; nothing at all is asked for again."""
    return Draft(answer.text.strip()[:LONGEST] or None)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """They go out; that they did is said by whoever sends them."""
    return Outcome((), (Relay(draft.text or ""),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "text" if draft.text is None else None,
    ask=lambda brief, draft, step: Say(words.TELL.format(coach=brief.coach_name)),
    fill=fill,
    finish=finish,
    patience=timedelta(minutes=30),
    lapse=timedelta(hours=2),
)
DIALOGUE = dialogue("telling", Brief, Draft, FORM)
