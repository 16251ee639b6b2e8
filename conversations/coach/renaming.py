"""The coach gives a client another name, so that two of one name are told apart."""

from dataclasses import dataclass
from datetime import datetime

from conversations.coach.inviting import read_name
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Do, Said, Say
from conversations.words import coach as words


@dataclass(frozen=True, slots=True)
class Brief:
    """Who gets another name."""

    client: int
    client_name: str


@dataclass(frozen=True, slots=True)
class Draft:
    """The name; None: not asked yet. `again`: the last answer was none."""

    name: str | None = None
    again: bool = False


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """A name that fits on a button."""
    name = read_name(answer.text)
    return Draft(name, again=name is None)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Called so from now on, on both sides."""
    assert draft.name is not None, "the name is asked first"
    said = Say(words.RENAMED.format(name=draft.name), (words.to_card(draft.name, brief.client),))
    return Outcome((said,), (Do("rename", {"client": brief.client, "name": draft.name}),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "name" if draft.name is None else None,
    ask=lambda brief, draft, step: Say(
        (words.RENAME_AGAIN if draft.again else words.RENAME_TO).format(name=brief.client_name)
    ),
    fill=fill,
    finish=finish,
)
DIALOGUE = dialogue("renaming", Brief, Draft, FORM)
