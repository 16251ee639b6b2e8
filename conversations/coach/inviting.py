"""The coach invites a client."""

from dataclasses import dataclass

from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Do, Said, Say
from conversations.words import inviting as words

LONGEST = 40  # characters; a name has to fit on a button
JOINERS = "\u200c\u200d"  # some scripts spell names with them


@dataclass(frozen=True, slots=True)
class Brief:
    """Who invites."""

    coach: int


@dataclass(frozen=True, slots=True)
class Draft:
    """The client's first name, None: not asked yet. `again`: the last answer was no name."""

    name: str | None = None
    again: bool = False


def read_name(text: str) -> str | None:
    """A first name as it may be shown anywhere: one line, no invisible signs. None: that is no name."""
    visible = "".join(sign for sign in text if sign.isprintable() or sign.isspace() or sign in JOINERS)
    shown = " ".join(visible.split())
    return shown if len(shown) <= LONGEST and any(sign.isalpha() for sign in shown) else None


def _fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    name = read_name(answer.text)
    return Draft(name, again=name is None)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "name" if draft.name is None else None,
    ask=lambda brief, draft, step: Say(words.AGAIN if draft.again else words.NAME),
    fill=_fill,
    finish=lambda brief, draft, at: Outcome((), (Do("invite", {"name": draft.name}),)),
)
DIALOGUE = dialogue("inviting", Brief, Draft, FORM)
