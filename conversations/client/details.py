"""The client's own details anew: whom help rings, where it finds them, who types. As asked at the very beginning."""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from conversations.answers import choice
from conversations.client import consent
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Record, Said, Say
from conversations.words import details as words
from core.facts import Detail

WHATS = tuple(Choice(label, value) for label, value in words.WHATS)
NOBODY = consent.Brief("", "")  # the questions used here name nobody


@dataclass(frozen=True, slots=True)
class Brief:
    """What is known, as stored, by name; "" for nothing."""

    known: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Draft:
    """`what` is the name of a stored detail, `sure` its new value; None: not asked yet.

    `helped`, `to_ring`: as in the consent.
    """

    what: str | None = None
    sure: str | None = None
    helped: bool = False
    to_ring: str = ""

    @property
    def begun(self) -> consent.Draft:
        """What of the answer is known already."""
        return consent.Draft(helped=self.helped, to_ring=self.to_ring)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.what is None:
        return "what"
    return "sure" if draft.sure is None and draft.what != words.NOTHING else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """What shall change, then the question of the beginning."""
    if step == "what":
        return Say(words.now(brief.known), WHATS)
    return consent.ask(NOBODY, draft.begun, draft.what or "")


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "what":
        return replace(draft, what=choice(answer.text, WHATS))
    read = consent.fill(NOBODY, draft.begun, draft.what or "", answer)
    return replace(draft, sure=getattr(read, draft.what or ""), helped=read.helped, to_ring=read.to_ring)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Stored and said back; alerts and the card show it from now on."""
    if draft.what is None or draft.sure is None:
        return Outcome((Say(words.UNCHANGED),))
    return Outcome((Say(words.said(draft.what, draft.sure)),), (Record(Detail(at, draft.what, draft.sure)),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    patience=timedelta(hours=12),
    lapse=timedelta(hours=12),
)
DIALOGUE = dialogue("details", Brief, Draft, FORM)
