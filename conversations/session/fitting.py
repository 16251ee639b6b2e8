"""The check of the bands: tightness, refill on each limb, feeling. No set without a passed check."""

import re
from dataclasses import replace

from conversations.answers import Unclear, choice, pick, whole_number
from conversations.protocol import Choice, Said, Say, Turn
from conversations.session import deciding, going_on, looking
from conversations.session.state import Phase, State, banded_limbs, choices, say, turn
from conversations.words import session as words
from conversations.words import session_typed
from conversations.words.answers import unclear
from conversations.words.one_band import of_bands

CHECKS = (Phase.TIGHT, Phase.REFILL, Phase.NAIL, Phase.WARMTH, Phase.FEEL)
BETWEEN = re.compile(r"\D*\b(\d{1,2})\s*(?:-|–|to|or)\s*(\d{1,2})\b\D*")  # and no other number
TIGHTNESS = choices(words.TIGHTNESS_CHOICES)
FEELINGS = tuple(Choice(label, value) for value, label in words.FEELING_LABELS.items())
FEELING_TYPED = choices(session_typed.FEELING_TYPED)


def ask(state: State) -> Say:
    """The open question of the check."""
    match state.phase:
        case Phase.FIT:
            return going_on.ask(state)
        case Phase.TIGHT:
            text = of_bands(words.TIGHTNESS, len(banded_limbs(state)))
            return say(text, f"tight.{state.check_id}", *TIGHTNESS)
        case Phase.REFILL | Phase.NAIL | Phase.WARMTH:
            return looking.ask(state)
        case _:
            text = of_bands(words.FEELING, len(banded_limbs(state)))
            return say(text, f"feel.{state.check_id}", *FEELINGS)


def said(state: State, event: Said) -> Turn[State]:
    """An answer to the check's open question."""
    state = replace(state, asked_quiet_at=None)
    try:
        match state.phase:
            case Phase.FIT:
                return going_on.said(state, event) or _on(state, event)
            case Phase.TIGHT:
                return _tight(state, event)
            case Phase.REFILL | Phase.NAIL | Phase.WARMTH:
                return _looked(state, event)
            case _:
                return deciding.whole(state, event.at, pick(event.text, FEELINGS, FEELING_TYPED))
    except Unclear as problem:
        return turn(state, Say(unclear(problem)), ask(state))


def _on(state: State, event: Said) -> Turn[State]:
    state, effects = going_on.put_on(state, event)
    state = replace(state, phase=Phase.TIGHT, limb=0, refills=())
    return turn(state, ask(state), effects=effects)


def _tight(state: State, event: Said) -> Turn[State]:
    state = replace(state, tightness=_rated(event.text), limb=0, refills=())
    if (decided := deciding.early(state, event.at)) is not None:
        return decided
    state = replace(state, phase=Phase.REFILL)
    return turn(state, ask(state))


def _rated(text: str) -> int:
    """0 to 10; of "8-9" the higher, the safe one. Raises `Unclear`."""
    try:
        return int(choice(text, TIGHTNESS))
    except Unclear:
        between = BETWEEN.fullmatch(text)
        return whole_number(text if between is None else max(between.groups(), key=int), 0, 10)


def _looked(state: State, event: Said) -> Turn[State]:
    if (look := looking.next_look(state, event.text)) is not None:
        state = replace(state, phase=look)
        return turn(state, ask(state))
    return _next_limb(state, event, looking.answer(state, event.text))


def _next_limb(state: State, event: Said, answer: str) -> Turn[State]:
    state = replace(state, refills=(*state.refills, answer))
    if (decided := deciding.early(state, event.at)) is not None:
        return decided
    if len(state.refills) < len(banded_limbs(state)):
        state = replace(state, limb=state.limb + 1, phase=Phase.REFILL)
    else:
        state = replace(state, phase=Phase.FEEL)
    return turn(state, ask(state))


def anew(state: State) -> Turn[State]:
    """An answer of the check was edited: all of it once more, as the answers are judged together."""
    state = replace(state, phase=Phase.TIGHT, limb=0, refills=(), tightness=None)
    return turn(state, Say(words.EDIT_CHECK), ask(state))


def back(state: State) -> Turn[State]:
    """One question of the check back; the first one, and a check that is over, are only asked again."""
    match state.phase:
        case Phase.WARMTH:
            state = replace(state, phase=Phase.NAIL)
        case Phase.NAIL:
            state = replace(state, phase=Phase.REFILL)
        case Phase.REFILL if state.limb > 0:
            state = replace(state, limb=state.limb - 1, refills=state.refills[:-1])
        case Phase.REFILL:
            state = replace(state, phase=Phase.TIGHT, tightness=None)
        case Phase.FEEL:
            limb = len(banded_limbs(state)) - 1
            state = replace(state, phase=Phase.REFILL, limb=limb, refills=state.refills[:-1])
        case _:
            pass
    return turn(state, ask(state))
