"""The coach writes to a client; it goes out as the coach's words."""

from dataclasses import dataclass
from datetime import datetime

from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Relay, Said, Say
from conversations.words import coach as words

LONGEST = 2000


@dataclass(frozen=True, slots=True)
class Brief:
    """To whom."""

    client: int
    client_name: str


@dataclass(frozen=True, slots=True)
class Draft:
    """The words; None: not asked yet."""

    text: str | None = None


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """The words as they came; nothing at all is asked for again."""
    return Draft(answer.text.strip()[:LONGEST] or None)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """They go out; what became of them is said by whoever sends them."""
    return Outcome((), (Relay(draft.text or "", brief.client),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "text" if draft.text is None else None,
    ask=lambda brief, draft, step: Say(words.WRITE.format(name=brief.client_name)),
    fill=fill,
    finish=finish,
)
DIALOGUE = dialogue("writing", Brief, Draft, FORM)
