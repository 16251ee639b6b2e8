"""Words that cannot be the answer to what is asked now: sent before it, sent twice, or taking the last one back."""

from dataclasses import replace

from conversations.answers import Unclear
from conversations.answers.lexing import LONGEST_DIGITS
from conversations.correcting import number_instead
from conversations.protocol import Said, Say, Turn
from conversations.session import counting, fitting, sets, tally, which_set
from conversations.session.state import Phase, State, turn
from conversations.words import common
from conversations.words import session as words


def in_check(state: State, event: Said) -> Turn[State] | None:
    """During the look at the bands; None: it may be the answer."""
    if event.to is not None or state.phase not in fitting.CHECKS:
        return None
    if (number := number_instead(event.text)) is not None:
        return _taken_back(state, event, number)
    if _is_copy(state, event):
        return turn(state, Say(words.ALREADY.format(reps=event.text.strip())), fitting.ask(state))
    if event.too_soon_for(fitting.ask(state).asks or ""):
        return about_counts(state, event) or left_out(state, event)
    return None


def _taken_back(state: State, event: Said, number: str) -> Turn[State] | None:
    """ "no, 7": the answer before; where the check has none yet, or no rating is so high, the count before."""
    first = state.phase is Phase.TIGHT
    if first or int(number) > counting.HIGHEST_RATING:
        return about_counts(state, event)
    before = fitting.back(state).state
    assert before is not None, "a check goes back within itself"
    return fitting.said(before, replace(event, text=number))


def about_counts(state: State, event: Said) -> Turn[State] | None:
    """The same words as a count; what the check asks stays open."""
    try:
        counts = tally.read(state, event.text)
    except Unclear:
        return None
    if not state.counted:
        return None
    made = counting.numbers(state, event, counts)
    return replace(made, replies=(*made.replies, fitting.ask(made.state or state)))


def left_out(state: State, event: Said) -> Turn[State]:
    """Said so, and what is open is asked once more."""
    from conversations.session import machine  # only to repeat the open question

    shown = Say(common.BEFORE_ASKED.format(said=event.text.strip()))
    return turn(state, shown, *machine.open_question(state))


def _is_copy(state: State, event: Said) -> bool:
    """The number that answered the question before, once more: before this one was seen, or within seconds."""
    said = event.text.strip()
    if state.phase is not Phase.REFILL or not said.isdecimal() or len(said) > LONGEST_DIGITS:
        return False
    unseen = event.too_soon_for(fitting.ask(state).asks or "")
    if state.limb > 0:
        return unseen and state.refills[-1:] == (f"s{float(said)}",)
    # To press for five seconds and to count takes longer.
    at_once = state.heard_at is not None and event.at - state.heard_at <= which_set.SAME_WITHIN
    return state.tightness == int(said) and (unseen or at_once)


def before_go(state: State, event: Said) -> bool:
    """ "Done", or the minutes of a walk, before anybody could know that it has begun."""
    says_done = state.phase is Phase.WALK or sets.says_done(event.text)
    return says_done and event.too_soon_for(sets.ask(state).asks or "")
