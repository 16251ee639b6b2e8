"""Ten minutes after the bands came off: is it still numb? Silence counts as yes."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear
from conversations.form import YES_NO_NOT_SURE, Form, Outcome, dialogue
from conversations.heard import DOUBT, yes_no_not_sure
from conversations.protocol import Alert, Effect, Record, Said, Say
from conversations.stopwords import read as read_words
from conversations.stopwords.kinds import Kind
from conversations.training.getting_better import SAYS_WORSE, says_better
from conversations.words import after as words
from conversations.words import common, safety
from core.facts import Answered
from core.safety.causes import Cause

# Own caution, no source.
PATIENCE = timedelta(minutes=2)
LAPSE = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class Brief:
    """After which session; `off`: somebody said that the bands are off."""

    session: str
    emergency_number: str = safety.ANY_NUMBER
    off: bool = True


@dataclass(frozen=True, slots=True)
class Draft:
    """The answer, also word for word; None: not given yet."""

    numb: str | None = None
    said: str = ""


def missing(brief: Brief, draft: Draft) -> str | None:
    """The one question."""
    return "numb" if draft.numb is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    return Say(_asked(brief), YES_NO_NOT_SURE)


def _asked(brief: Brief) -> str:
    return words.STILL_NUMB if brief.off else words.STILL_NUMB_SINCE


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """The answer; "my hand is still numb", "the same" are a yes. Raises `Unclear`."""
    said = replace(draft, said=answer.text)
    try:
        return replace(said, numb=yes_no_not_sure(answer.text))
    except Unclear as problem:
        if read_words(answer.text).kind is not Kind.NONE or SAYS_WORSE.search(answer.text):
            return replace(said, numb="yes")
        if says_better(answer.text):
            return replace(said, numb="no")
        raise problem from None


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Kept, and still numb goes to the coach now, word for word."""
    kept = Record(Answered(answer.at, brief.session, "after", "still_numb", str(draft.numb)))
    return (kept, _alert(brief, draft.said)) if draft.numb in DOUBT else (kept,)


def _alert(brief: Brief, said: str) -> Alert:
    told = safety.told(Cause.NUMB_STILL, brief.emergency_number)
    return Alert(Cause.NUMB_STILL, f"{_asked(brief)} {said.replace('_', ' ')}", told)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What to do, or good."""
    if draft.numb in DOUBT:
        return Outcome((Say(safety.told(Cause.NUMB_STILL, brief.emergency_number)),))
    return Outcome((Say(words.NOT_NUMB),))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No answer: the coach hears that, too."""
    told = safety.told(Cause.NUMB_STILL, brief.emergency_number)
    return Outcome((Say(told),), (_alert(brief, words.NO_ANSWER),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    reminder=common.NO_WORD_YET,
    patience=PATIENCE,
    lapse=LAPSE,
    lapsed=lapsed,
)
DIALOGUE = dialogue("still_numb", Brief, Draft, FORM)
