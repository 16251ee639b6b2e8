"""The coach enters a client's girth."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations.answers import centimetres, pick
from conversations.client.girth import LARGEST_CM, SMALLEST_CM
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Said, Say
from conversations.words import girth as words
from conversations.words.session import LIMBS

LIMB_CHOICES = tuple(Choice(label, limb.value) for limb, label in LIMBS.items())


@dataclass(frozen=True, slots=True)
class Brief:
    """Whose girth."""

    client: int
    client_name: str


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `girth` in cm."""

    limb: str | None = None
    girth: float | None = None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "limb":
        return Say(words.WHICH_LIMB.format(name=brief.client_name), LIMB_CHOICES)
    return Say(words.HOW_MANY_CM)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "limb":
        return replace(draft, limb=pick(answer.text, LIMB_CHOICES))
    return replace(draft, girth=float(centimetres(answer.text, SMALLEST_CM, LARGEST_CM)))


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Kept, unless the limb is swollen from training."""
    about = {"client": brief.client, "limb": draft.limb, "girth": draft.girth}
    return Outcome((), (Do("girth", about),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: next(
        (step for step in ("limb", "girth") if getattr(draft, step) is None), None
    ),
    ask=ask,
    fill=fill,
    finish=finish,
)
DIALOGUE = dialogue("measuring", Brief, Draft, FORM)
