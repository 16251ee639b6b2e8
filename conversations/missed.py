"""The day after a missed session: today, or dropped, without guilt."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from conversations.answers import choice
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Begin, Choice, Say
from conversations.words import reminding as words


@dataclass(frozen=True, slots=True)
class Brief:
    """Which plan."""

    plan_name: str


@dataclass(frozen=True, slots=True)
class Draft:
    """None: not asked yet."""

    act: str | None = None


CHOICES = tuple(Choice(label, value) for label, value in words.MISSED_CHOICES)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Today, or dropped."""
    if draft.act == "start":
        return Outcome((), (Begin("before"),))
    return Outcome((Say(words.DROPPED),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "act" if draft.act is None else None,
    ask=lambda brief, draft, step: Say(words.MISSED.format(plan=brief.plan_name), CHOICES),
    fill=lambda brief, draft, step, answer: Draft(choice(answer.text, CHOICES)),
    finish=finish,
    patience=timedelta(hours=4),
    lapse=timedelta(hours=10),
)
DIALOGUE = dialogue("missed", Brief, Draft, FORM)
