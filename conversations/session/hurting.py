""" "It hurts": often a burn, which may go on. Anything else, or 20 s of silence: bands off."""

import re
from dataclasses import replace
from datetime import datetime

from conversations.answers import Unclear, pick
from conversations.protocol import Alert, Choice, Hurts, Record, Said, Say, Turn
from conversations.session import fitting, sets
from conversations.session.state import After, Phase, State, choices, say, turn
from conversations.words import session as words
from conversations.words.answers import unclear
from core.facts import Noticed
from core.safety.causes import Cause

WHERE = choices(words.HURTS_LABELS)
SILENCE = "silence"  # stored like a place
TYPED = choices(words.HURTS_TYPED)
JOINT = "joint"  # stored
JOINTS = re.compile(r"\b(?:joint|knee|elbow|shoulder|hip|wrist|ankle)s?\b", re.IGNORECASE)


def hurts(state: State, event: Hurts) -> Turn[State]:
    """Pause and ask where, whatever was open."""
    resume = state.resume if state.phase in (Phase.PAUSE, Phase.BURN) else state.phase
    state = replace(state, phase=Phase.PAUSE, paused_at=event.at, resume=resume)
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
            pick(event.text, (Choice(words.GO_ON, "go"),), (Choice("yes", "go"), Choice("ok", "go")))
            return go_on(state, event.at)
        where = JOINT if JOINTS.search(event.text) else pick(event.text, WHERE, TYPED)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)), ask(state))
    if where == "muscle":
        state = replace(state, phase=Phase.BURN)
        return turn(state, ask(state))
    return stop(state, event.at, where, words.HURTS_OFF)


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


def stop(state: State, at: datetime, where: str, text: str) -> Turn[State]:
    """It is no burn, or nobody answers: bands off, the session ends, the coach hears of it."""
    fact = Noticed(at, "hurts", where)
    cause = Cause.NO_WORD if where == SILENCE else Cause.BANDS_HURT
    alert = Alert(cause, f"It hurts: {where}", words.HURTS_TOLD)
    state = replace(state, phase=Phase.OFF, after=After.END, why="hurts", rest_until=None)
    return turn(state, fitting.off(state, text), effects=(Record(fact), alert))


def silent(state: State, now: datetime) -> Turn[State]:
    """20 s without an answer."""
    return stop(state, now, SILENCE, words.HURTS_SILENCE)
