"""Words to "All right? Bands off if not.": a yes breaks the silence, a no ends the session, bands off first."""

from dataclasses import replace

from conversations.answers import Reply, Unclear, yes_no
from conversations.protocol import Alert, Said, Say, ToldOff, Turn
from conversations.session import coming_off, sets
from conversations.session.state import After, Phase, State, turn
from conversations.training.getting_better import says_fine
from conversations.words import safety
from conversations.words import session as words
from core.safety.causes import Cause

STOPPED = "stopped"  # why the bands come off, stored


def said(state: State, event: Said) -> Turn[State] | None:
    """None: nothing was asked, or these words are about something else, such as a count."""
    typed = event.message is not None and event.to in (None, sets.done_id(state))
    asked = state.phase is Phase.SET and state.asked_quiet_at is not None and state.between is None
    if not typed or not asked or any(sign.isdigit() for sign in event.text):
        return None
    match _reply(event.text):
        case Reply.YES:
            return turn(replace(state, asked_quiet_at=event.at), Say(words.ALL_RIGHT))
        case Reply.NO:
            return _not_right(state, event.text)
        case _:
            return None


def _reply(text: str) -> Reply | None:
    if says_fine(text):
        return Reply.YES
    try:
        return yes_no(text)
    except Unclear:
        return None


def _not_right(state: State, text: str) -> Turn[State]:
    told = safety.told(Cause.SOMETHING_WRONG, safety.ANY_NUMBER)
    state = replace(state, phase=Phase.OFF, why=STOPPED, after=After.END)
    alert = Alert(Cause.SOMETHING_WRONG, words.NOT_RIGHT_SAID.format(said=text), told)
    return turn(
        state,
        coming_off.off(state, told),
        effects=(alert, ToldOff(state.brief.session, state.spell_id)),
    )
