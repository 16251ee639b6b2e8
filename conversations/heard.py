"""What the questions around a session share: ratings, options with typed words, and red flags typed in between.

The engine stops everything at stop words. Around a session such words may be an answer, so the dialogue that
asked reads them: what its question cannot take is read once more for a red flag before it is asked again.
"""

from collections.abc import Callable
from datetime import datetime
from typing import TypeVar

from conversations.answers import Reply, Unclear, yes_no
from conversations.form import with_answer
from conversations.protocol import Alert, Begin, Choice, Effect, Record
from conversations.stopwords import read
from conversations.stopwords.causes import cause_of
from conversations.stopwords.kinds import Kind, Sense
from conversations.training.trouble_ends import first_words
from conversations.training.troubled import Brief
from core.facts import Noticed
from core.safety.causes import Cause

D = TypeVar("D")  # a draft with `flagged` and `said`
RED_FLAGS = frozenset(
    {Kind.INJURY, Kind.URINE, Kind.SWELLING, Kind.CIRCULATION, Kind.NERVE, Kind.FAINT, Kind.EMERGENCY}
)
TEN = tuple(Choice(str(score), str(score)) for score in range(11))
DOUBT = ("yes", "not_sure")  # "not sure" counts as yes: the coach looks


def red_flag(text: str) -> Kind | None:
    """The red flag that these words say is so now, with bands on or shortly after."""
    kind = read(text).while_training
    return kind if kind in RED_FLAGS else None


def hurt_lately(text: str) -> bool:
    """Whether somebody tells of a fall or another injury of the last days."""
    return any(one.sense is Sense.LATELY for one in read(text).heard)


def flag_or_ask_again(text: str, problem: Unclear) -> Kind:
    """The red flag in words that no question could take. Raises `problem` when there is none."""
    kind = red_flag(text)
    if kind is None:
        raise problem
    return kind


def or_flagged(draft: D, text: str, read: Callable[[], D]) -> D:
    """What `read` makes of the answer; a red flag instead of one as `flagged` and `said`. Raises `Unclear`."""
    try:
        return read()
    except Unclear as problem:
        return with_answer(with_answer(draft, "flagged", flag_or_ask_again(text, problem)), "said", text)


def yes_no_not_sure(text: str) -> str:
    """ "yes", "no" or "not_sure", as stored. Raises `Unclear`."""
    return {Reply.YES: "yes", Reply.NO: "no", Reply.NOT_SURE: "not_sure"}[yes_no(text)]


def raised(kind: Kind, said: str, at: datetime, number: str) -> tuple[Effect, ...]:
    """What a red flag sets off at once: it is stored, and the coach is told."""
    told = first_words(Brief(kind, said, (), number))
    cause = cause_of(kind) or Cause.SOMETHING_WRONG
    return (Record(Noticed(at, f"said_{kind}", said)), Alert(cause, said, told))


def help_with(kind: Kind, said: str, number: str) -> Begin:
    """The dialogue that says what to do about it."""
    return Begin("trouble", {"kind": kind.value, "said": said, "spells": [], "number": number})
