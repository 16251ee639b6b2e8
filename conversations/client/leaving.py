""" "Delete me": said what goes and what must be kept, asked twice, the second time by a typed word."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from conversations.answers import choice
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.protocol import Choice, Do, Said, Say
from conversations.words import leaving as words

YES, NO = "yes", "no"
SURE = tuple(Choice(label, value) for label, value in words.CHOICES)
KEEP = Choice(*words.KEEP)
REFUSALS = (KEEP, Choice(NO, NO))


@dataclass(frozen=True, slots=True)
class Brief:
    """For how many years the practice keeps a record (0: not at all), and until when that is (ISO date)."""

    keep_years: int = 0
    kept_until: str = ""


@dataclass(frozen=True, slots=True)
class Draft:
    """Both answers, "yes" or "no"; None: not asked yet."""

    wants: str | None = None
    sure: str | None = None


def missing(brief: Brief, draft: Draft) -> str | None:
    """The second question only after a first yes."""
    if draft.wants is None:
        return "wants"
    return "sure" if draft.wants == YES and draft.sure is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "sure":
        return Say(words.SURE, (KEEP,))
    must = words.MUST_KEEP.format(years=brief.keep_years, day=brief.kept_until)
    return Say(words.ASK.format(kept=must if brief.keep_years else words.NOTHING_KEPT), SURE)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "wants":
        return with_answer(draft, step, choice(answer.text, SURE))
    typed = answer.text.strip(" .!\"'").casefold()  # this one word only: no slip, no other yes
    return with_answer(draft, step, YES if typed == words.WORD else choice(answer.text, REFUSALS))


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Only two times yes."""
    if draft.wants == draft.sure == YES:
        kept = words.GOODBYE_KEEPS.format(day=brief.kept_until)
        return Outcome((Say(kept if brief.keep_years else words.GOODBYE),), (Do("leave"),))
    return unchanged(brief, draft, at)


def unchanged(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """A no, `cancel`, or silence."""
    return Outcome((Say(words.NOTHING_DELETED),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    cancelled=unchanged,
    lapse=timedelta(hours=12),
    lapsed=unchanged,
)
DIALOGUE = dialogue("leaving", Brief, Draft, FORM)
