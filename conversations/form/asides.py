"""Words that are no answer to the open question: sent before it, sent twice, or taking the last answer back."""

import re
from datetime import timedelta
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from conversations.answers import Unclear
from conversations.correcting import number_instead
from conversations.form.state import Asking
from conversations.protocol import Said
from conversations.stopwords import read
from conversations.stopwords.kinds import Kind

if TYPE_CHECKING:
    from conversations.form.machine import Form

DOUBLED_WITHIN = timedelta(seconds=2)  # own caution, no source
SLIPPED = re.compile(
    r"\b(?:tapped|pressed|hit|clicked|touched|chose|picked|answered)\b.{0,20}\bwrong\b|\bwrong (?:one|button|answer|tap)\b"
    r"|\b(?:by|a|my) (?:mistake|accident)\b|\bmeant (?:to \w+ )?(?:yes|no)\b|\bchange (?:my|an?|the) (?:\w+ )?answer\b",
    re.IGNORECASE,
)
NUMBERS = (int, float, Decimal)


def tells_of_a_slip(text: str) -> bool:
    """ "Sorry, I tapped wrong": an answer before this question is meant, and nothing is said that this one could take."""
    return SLIPPED.search(text.replace("\u2019", "'")) is not None and read(text).kind is Kind.NONE


def taken_back(form: "Form[Any, Any]", state: Asking[Any, Any], event: Said) -> tuple[Any, Said] | None:
    """The draft with the last answer changed, and that answer: "no, 7" after a number; None: it is no such thing."""
    number, last = number_instead(event.text), state.given[-1] if state.given else None
    if number is None or last is None or not isinstance(getattr(state.draft, last.step, None), NUMBERS):
        return None
    said = Said(event.at, number, None, event.message)
    try:
        return form.fill(state.brief, form.forget(state.draft, last.step), last.step, said), said
    except Unclear:
        return None


def came_before(state: Asking[Any, Any], event: Said) -> bool:
    """Whether these words were sent before the open question was put in any of its copies."""
    asked = {f"{state.step}.{number}" for number in range(state.first_asked, state.asked + 1)}
    return state.first_asked > 0 and asked <= event.unseen


def doubled(form: "Form[Any, Any]", state: Asking[Any, Any], event: Said) -> bool:
    """The same number within seconds, as a thumb does on a slow line: no question is read so fast."""
    typed = event.message is not None and bool(state.given) and state.given[-1].message is not None
    if not typed or not event.text.strip().isdigit() or state.waiting_since is None:
        return False
    return event.at - state.waiting_since <= DOUBLED_WITHIN and is_copy(form, state, event)


def is_copy(form: "Form[Any, Any]", state: Asking[Any, Any], event: Said) -> bool:
    """Whether these words give the answer before once more."""
    if not state.given:
        return False
    step = state.given[-1].step
    try:
        filled = form.fill(state.brief, form.forget(state.draft, step), step, event)
    except Unclear:
        return False
    return bool(filled == state.draft)


def is_tapped_twice(form: "Form[Any, Any]", state: Asking[Any, Any], event: Said) -> bool:
    """Whether this tap gives the newest answer, to the question that it stands under, once more."""
    step = (event.to or "").rpartition(".")[0]
    return bool(state.given) and state.given[-1].step == step and is_copy(form, state, event)
