"""Bands are to come off: the one question for it, and what silence with bands on leads to."""

from dataclasses import replace
from datetime import datetime

from conversations.protocol import Alert, Choice, Record, Say, Turn
from conversations.session.state import After, Phase, State, banded_limbs, lacking, say, turn
from conversations.words import session as words
from conversations.words.one_band import of_bands
from core.facts import LAPSED, SessionEnded
from core.safety.causes import Cause

QUIET = "quiet"  # why a spell of bands ended, stored
NEVER_ON = "never_on"  # the value of a button, stored
OFF_EARLY = "off_early"  # stored: they came off before they were to


def off(state: State, text: str) -> Say:
    """Ask for the bands to come off, or whether they ever were on."""
    never = (Choice(words.NEVER_ON_LABEL, NEVER_ON),) if state.maybe_on else ()
    return say(text, f"off.{state.spell_id}", Choice(words.BANDS_OFF_LABEL, "off"), *never)


def went_quiet(state: State, now: datetime, asked: tuple[Say, ...]) -> Turn[State]:
    """Bands on and what was `asked` left open: ask again, then bands off and the coach."""
    if state.asked_quiet_at is None:
        first = () if state.maybe_on else (Say(words.QUIET_CHECK),)
        return turn(replace(state, asked_quiet_at=now), *first, *asked)
    return no_answer(state, _quiet_in(state))


def said_unasked(state: State) -> Turn[State]:
    """ "They're off" in the middle of something: asked at once, as only both are off, and what was open is over."""
    after = After.NEXT if state.counted or state.phase in (Phase.SET, Phase.WALK) else After.REFIT
    state = replace(state, phase=Phase.OFF, after=after, why=OFF_EARLY, rest_until=None, asked_both=True)
    return turn(state, off(state, of_bands(words.OFF_ALREADY, len(banded_limbs(state)))))


def _quiet_in(state: State) -> str:
    """Which silence it was, for the coach."""
    if state.maybe_on:
        return words.QUIET_SAID_MAYBE
    return words.QUIET_SAID_BURN if state.phase is Phase.BURN else words.QUIET_SAID_CHECK


def no_answer(state: State, said: str) -> Turn[State]:
    """Asked with bands on, and no answer: bands off, the session ends, the coach hears when it was."""
    state = replace(state, phase=Phase.OFF, why=QUIET, after=After.END)
    cause, told = Cause.QUIET_SET, words.QUIET_ALARM
    if state.maybe_on:
        cause, told = Cause.MAYBE_ON, words.MAYBE_ALARM
    return turn(state, off(state, told), effects=(Alert(cause, said, told),))


def lapsed(state: State, now: datetime) -> Turn[State]:
    """No word for hours. Bands that may still be on are asked about by the calls, session or not."""
    over = (Record(SessionEnded(now, state.brief.session, LAPSED)),)
    if state.on_at is not None:
        return Turn(None, (Say(words.LAPSED_BANDED),), over)
    one = lacking(state)
    count = (Say(words.LAPSED_UNCOUNTED.format(n=one.no)),) if one is not None else ()
    return Turn(None, (Say(words.LAPSED), *count), over)
