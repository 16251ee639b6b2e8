"""The coach invites a client."""

from dataclasses import dataclass

from conversations.answers import Unclear, Why
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Do, Say
from conversations.words import inviting as words

LONGEST = 40


@dataclass(frozen=True, slots=True)
class Brief:
    """Who invites."""

    coach: int


@dataclass(frozen=True, slots=True)
class Draft:
    """The client's first name; None: not asked yet."""

    name: str | None = None


def _name(text: str) -> str:
    plain = " ".join(text.split())
    if not plain or len(plain) > LONGEST or not any(char.isalpha() for char in plain):
        raise Unclear(Why.EMPTY)
    return plain


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "name" if draft.name is None else None,
    ask=lambda brief, draft, step: Say(words.NAME),
    fill=lambda brief, draft, step, answer: Draft(_name(answer.text)),
    finish=lambda brief, draft, at: Outcome((), (Do("invite", {"name": draft.name}),)),
)
DIALOGUE = dialogue("inviting", Brief, Draft, FORM)
