"""The coach keeps a plan as a template of their own, by a name."""

import re
from dataclasses import dataclass
from datetime import datetime

from conversations.coach.inviting import read_name
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Record, Said, Say
from conversations.words import coach as words
from core.facts import TemplateSaved


@dataclass(frozen=True, slots=True)
class Brief:
    """Whose plan is kept, as JSON ("": there is none), and the coach whose template it becomes."""

    client: int
    client_name: str
    coach: int
    at_loads: str = ""


@dataclass(frozen=True, slots=True)
class Draft:
    """The template's name; None: not asked yet. `again`: the last answer was none, `names`: it named the client."""

    name: str | None = None
    again: bool = False
    names: bool = False


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """A name that fits on a button."""
    name = read_name(answer.text)
    if name is not None and names_client(name, brief.client_name):
        return Draft(names=True)
    return Draft(name, again=name is None)


def names_client(name: str, client: str) -> bool:
    """Whether the client's name stands in a template's, which stays when the client is erased."""
    return re.search(rf"(?<!\w){re.escape(client)}(?!\w)", name, re.IGNORECASE) is not None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if draft.names:
        return Say(words.TEMPLATE_OF_NOBODY.format(name=brief.client_name))
    return Say(words.TEMPLATE_NAME_AGAIN if draft.again else words.TEMPLATE_NAME)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Kept; a template of the same name is replaced."""
    if draft.name is None:
        return Outcome((Say(words.TEMPLATE_NO_PLAN.format(name=brief.client_name)),))
    fact = Record(TemplateSaved(at, draft.name, brief.at_loads), brief.coach)
    card = words.to_card(brief.client_name, brief.client)
    return Outcome((Say(words.TEMPLATE_SAVED.format(template=draft.name), (card,)),), (fact,))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "name" if brief.at_loads and draft.name is None else None,
    ask=ask,
    fill=fill,
    finish=finish,
)
DIALOGUE = dialogue("saving_template", Brief, Draft, FORM)
