"""The check of the bands: tightness, refill on each limb, feeling. No set without a passed check."""

import re
from dataclasses import replace

from conversations.answers import Unclear, Why, choice, pick, seconds, whole_number
from conversations.protocol import Choice, Said, Say, Turn
from conversations.session import deciding, going_on
from conversations.session.state import Phase, State, banded_limbs, choices, say, turn
from conversations.words import session as words
from conversations.words.answers import unclear
from core.cuffs import Refill
from core.plans import Region

ABOUT = re.compile(r"\b(?:abt|about|approx\w*|around|roughly|maybe)\b\.?|~", re.IGNORECASE)
UNDER_2 = re.compile(r"(?:und\w{1,3}|less than|below|<)\s*(?:2s?|two)\b(?![.,]\d)", re.IGNORECASE)
UNSEEN = re.compile(
    r"\b(?:can'?t|cannot|can not|couldn'?t|don'?t) (?:see|tell)\b|\bno (?:pale )?spot\b", re.IGNORECASE
)
BETWEEN = re.compile(r"\b\d{1,2}\s*(?:-|–|to|or)\s*(\d{1,2})\b")
TIGHTNESS = choices(words.TIGHTNESS_CHOICES)
FEELINGS = tuple(Choice(label, value) for value, label in words.FEELING_LABELS.items())
FEELING_TYPED = choices(words.FEELING_TYPED)
REFILLS = tuple(Choice(label, value.value) for value, label in words.REFILL_LABELS.items())


def ask(state: State) -> Say:
    """The open question of the check."""
    region = state.doing.region
    match state.phase:
        case Phase.FIT:
            return going_on.ask(state)
        case Phase.TIGHT:
            return say(words.TIGHTNESS, f"tight.{state.check_id}", *TIGHTNESS)
        case Phase.REFILL:
            text = words.REFILL.format(limb=_limb(state), spot=words.SPOT[region])
            return say(text, f"refill.{state.check_id}", *REFILLS)
        case Phase.NAIL if region is Region.ARMS:
            return say(words.CANT_SEE_ARMS.format(limb=_limb(state)), f"nail.{state.check_id}", *REFILLS[:3])
        case Phase.NAIL:
            text = words.CANT_SEE_LEGS.format(limb=_limb(state))
            return say(text, f"nail.{state.check_id}", *choices(words.WARM_LABELS))
        case _:
            return say(words.FEELING, f"feel.{state.check_id}", *FEELINGS)


def _limb(state: State) -> str:
    return words.LIMBS[banded_limbs(state)[state.limb]]


def said(state: State, event: Said) -> Turn[State]:
    """An answer to the check's open question."""
    state = replace(state, asked_quiet_at=None)
    try:
        match state.phase:
            case Phase.FIT:
                return going_on.said(state, event) or _on(state, event)
            case Phase.TIGHT:
                return _tight(state, event)
            case Phase.REFILL:
                return _refill(state, event)
            case Phase.NAIL:
                return _nail(state, event)
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
        between = BETWEEN.search(text)
        return whole_number(text if between is None else between[1], 0, 10)


def _refill(state: State, event: Said) -> Turn[State]:
    answer = _refill_answer(event.text)
    if answer == Refill.CANT_SEE:
        state = replace(state, phase=Phase.NAIL)
        return turn(state, ask(state))
    return _next_limb(state, event, answer)


def _refill_answer(text: str) -> str:
    """A button's value, a label typed, or seconds typed ("2.5")."""
    if UNDER_2.match(text.strip()):
        return Refill.UNDER_2.value
    if UNSEEN.search(text):
        return Refill.CANT_SEE.value
    try:
        return choice(text, REFILLS)
    except Unclear:
        return f"s{seconds(ABOUT.sub('', text), 60)}"


def _nail(state: State, event: Said) -> Turn[State]:
    if state.doing.region is Region.LEGS:
        return _next_limb(state, event, choice(event.text, choices(words.WARM_LABELS)))
    answer = _refill_answer(event.text)
    if answer == Refill.CANT_SEE:
        raise Unclear(Why.NOT_AN_OPTION, options=tuple(words.REFILL_LABELS.values())[:3])
    return _next_limb(state, event, f"nail:{answer}")


def _next_limb(state: State, event: Said, answer: str) -> Turn[State]:
    state = replace(state, refills=(*state.refills, answer))
    if (decided := deciding.early(state, event.at)) is not None:
        return decided
    if len(state.refills) < len(banded_limbs(state)):
        state = replace(state, limb=state.limb + 1, phase=Phase.REFILL)
    else:
        state = replace(state, phase=Phase.FEEL)
    return turn(state, ask(state))


def back(state: State) -> Turn[State]:
    """One question of the check back; the first one, and a check that is over, are only asked again."""
    match state.phase:
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
