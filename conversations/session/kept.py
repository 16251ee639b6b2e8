"""Words in a session that answer nothing: nobody has to say them twice, and the open question comes again."""

import re
from collections.abc import Callable
from dataclasses import replace

from conversations.prose import is_prose
from conversations.protocol import Do, Said, Say, Turn
from conversations.session.state import Phase, State
from conversations.words import session as words
from conversations.words.common import counted

# There every word is about what hurts.
HOW_MANY = re.compile(
    r"\bhow (?:many|much)\b.*\b(?:sets?|left|more|to go)\b|\bsets? (?:left|to go)\b", re.IGNORECASE
)
HURTING = (Phase.PAUSE, Phase.BURN)


def for_later(made: Turn[State], event: Said, asked: Callable[[State], tuple[Say, ...]]) -> Turn[State]:
    """A turn that could read nothing, with prose kept for after the session; counts and single words are asked again.

    The engine still asks first whether something is wrong where the words may tell of that.
    """
    state = made.state
    if state is None or state.phase in HURTING or not is_told(event.text):
        return made
    if HOW_MANY.search(event.text) and state.phase in (Phase.SET, Phase.REST):
        return replace(made, replies=(Say(_sets(state)), *asked(state)))
    later = Do("offer_later", {"text": event.text})
    if _bands_first(state):
        return replace(made, effects=(later,))
    return replace(made, replies=(Say(words.SAID_KEPT), *asked(state)), effects=(later,))


def _sets(state: State) -> str:
    """How many sets are done and to come, of the movement under way and of all."""
    more = len(state.brief.exercises) - state.exercise - 1
    after = words.THEN_MORE.format(movements=counted(more, "movement")) if more else ""
    done = len(state.counted)
    return words.SETS_TO_GO.format(done=done, sets=state.sets, left=state.sets - done) + after


def _bands_first(state: State) -> bool:
    """Whether the bands are to come off: not one more line beside that."""
    over = state.phase is Phase.WALK and state.asked_quiet_at is not None
    return over or (state.phase is Phase.OFF and state.on_at is not None)


def is_told(text: str) -> bool:
    """Whether somebody tells something; a line with a figure in it was meant for a count."""
    return is_prose(text) and not any(sign.isdigit() for sign in text)
