""" "It hurts": often a burn, which may go on. Anything else, or 20 s of silence: bands off."""

import re
from dataclasses import replace
from datetime import datetime

from conversations.answers import Unclear, pick
from conversations.protocol import Alert, Choice, Hurts, Record, Said, Say, Turn
from conversations.session import coming_off, deciding, ending, fitting, sets, tally
from conversations.session.state import After, Phase, State, choices, say, turn
from conversations.words import session as words
from conversations.words import session_typed
from conversations.words.answers import unclear
from core.facts import Noticed
from core.safety.causes import Cause
from core.safety.pain import Where, may_go_on

WHERE = choices(words.HURTS_LABELS)
SILENCE = "silence"  # stored like a place
TYPED = choices(session_typed.HURTS_TYPED)
GOES_ON = tuple(Choice(label, "go") for label in session_typed.GO_ON_TYPED)
JOINT = Where.JOINT.value
JOINTS = re.compile(r"\b(?:joint|knee|elbow|shoulder|hip|wrist|ankle)s?\b", re.IGNORECASE)
BAND = re.compile(r"\b(?:band|cuff|strap)s?\b", re.IGNORECASE)
PINCHES = re.compile(
    r"\bpinch(?:es|ed|ing)?\b|\bcaught (?:my|the|some|a bit of) (?:skin|hairs?)\b", re.IGNORECASE
)
BURNS = re.compile(r"\bburn(?:s|ing)?\b|\bmuscles?\b", re.IGNORECASE)
NO_MERE_BURN = re.compile(
    r"\b(?:sharp|stab\w*|shoot\w*|tear\w*|tore|torn|pull\w*|pop\w*|cramp\w*|not?|isn'?t)\b", re.IGNORECASE
)


def hurts(state: State, event: Hurts) -> Turn[State]:
    """Pause and ask where, whatever was open; "it pinches" while the bands are checked is an answer of the check."""
    if state.phase in fitting.CHECKS and PINCHES.search(event.text) and place(event.text) != JOINT:
        pinching = deciding.early(state, event.at, "pinching")
        if pinching is not None:
            return pinching
    where = place(event.text) if state.phase is Phase.PAUSE else None
    if where is not None:  # "burning" to "where does it hurt?" is the answer
        return _answered(state, event.at, where, event.text)
    paused = state.phase in (Phase.PAUSE, Phase.BURN)
    resume = state.resume if paused else state.phase
    said = f"{state.hurt_said} / {event.text}" if paused else event.text
    state = replace(state, hurt_said=said)
    state = replace(state, phase=Phase.PAUSE, paused_at=event.at, resume=resume, asked_quiet_at=None)
    return turn(state, ask(state))


def ask(state: State) -> Say:
    """Where does it hurt? or: go on?"""
    if state.phase is Phase.BURN:
        return say(words.BURN, f"burn.{state.set_id}", Choice(words.GO_ON, "go"))
    return say(words.HURTS, f"where.{state.set_id}", *WHERE)


def said(state: State, event: Said) -> Turn[State]:
    """An answer while paused."""
    try:
        if state.phase is Phase.BURN:
            pick(event.text, (Choice(words.GO_ON, "go"),), GOES_ON)
            return go_on(state, event.at)
        where = place(event.text) or pick(event.text, WHERE, TYPED)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)), ask(state))
    return _answered(state, event.at, where, event.text)


def place(text: str) -> str | None:
    """Where, in words of one's own; a joint or a band goes before a burn. None: not said."""
    if JOINTS.search(text):
        return JOINT
    if BAND.search(text):
        return Where.BAND.value
    return Where.MUSCLE.value if BURNS.search(text) and not NO_MERE_BURN.search(text) else None


def _answered(state: State, at: datetime, where: str, text: str) -> Turn[State]:
    if may_go_on(Where(where)):
        state = replace(state, phase=Phase.BURN)
        return turn(state, ask(state))
    labels = {value: label for label, value in words.HURTS_LABELS}
    return stop(state, at, where, labels.get(text, text), words.HURTS_OFF)


def go_on(state: State, at: datetime) -> Turn[State]:
    """Back to where we were; a rest that ran out meanwhile leads straight to the next set."""
    phase = state.resume or Phase.SET
    state = replace(state, phase=phase, resume=None, paused_at=None)
    if phase is Phase.SET:
        return sets.begin(state, at)
    if phase is Phase.REST and state.rest_until is not None and at >= state.rest_until:
        return sets.go(state, at)
    from conversations.session import machine  # only to repeat the open question

    return turn(state, *machine.open_question(state))


def went_on(state: State) -> State:
    """The client went on after a burn without saying so: back to what was open."""
    return replace(state, phase=state.resume or Phase.SET, resume=None, paused_at=None, asked_quiet_at=None)


def says_went_on(state: State, event: Said) -> bool:
    """A count, or "set done", where "go on" was asked for: it says more than "go on" does."""
    if state.phase is not Phase.BURN or state.resume not in (Phase.SET, Phase.REST):
        return False
    if (event.to or "").startswith("done.") or sets.says_done(event.text):
        return True
    try:
        return bool(tally.read(state, event.text))
    except Unclear:
        return False


def stop(state: State, at: datetime, where: str, answer: str, text: str) -> Turn[State]:
    """It is no burn, or nobody answers: bands off, the session ends, the coach hears of it word for word."""
    cause = Cause.NO_WORD if where == SILENCE else Cause.BANDS_HURT
    alert = Alert(cause, words.HURTS_SAID.format(said=state.hurt_said or "-", answer=answer), text)
    effects = (Record(Noticed(at, "hurts", where)), alert)
    state = replace(state, phase=Phase.OFF, after=After.END, why="hurts", rest_until=None)
    if state.on_at is not None:
        return turn(state, coming_off.off(state, text), effects=effects)
    end = ending.over(state, at, state.why)  # said before the bands went on: nothing has to come off
    return replace(end, effects=(*effects, *end.effects))


def silent(state: State, now: datetime) -> Turn[State]:
    """20 s without an answer."""
    return stop(state, now, SILENCE, words.NO_ANSWER, words.HURTS_SILENCE)
