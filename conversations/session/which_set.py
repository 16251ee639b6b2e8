"""To which set a number belongs, when it may be either: asked, never guessed."""

from dataclasses import replace
from datetime import timedelta

from conversations.answers import Count
from conversations.protocol import Choice, Said, Say, Turn
from conversations.session import tally
from conversations.session.state import (
    Counted,
    Phase,
    State,
    is_full,
    lacking,
    last_counted,
    say,
    turn,
)
from conversations.words import session as words

LATE_COUNT = timedelta(seconds=10)  # after Go a number may still be the last set's; own caution, no source
SAME_WITHIN = timedelta(seconds=5)
OTHER_SIDE_AFTER = timedelta(seconds=1)  # the clock of messages has whole seconds; own caution, no source
COPY_WITHIN = timedelta(seconds=15)  # a message sent twice over a bad line; own caution, no source
BETWEEN_SETS = (Phase.REST, Phase.SET, Phase.TIGHT, Phase.REFILL, Phase.NAIL, Phase.WARMTH, Phase.FEEL)


def next_under_way(state: State, event: Said, one: Counted, counts: tuple[Count, ...]) -> bool:
    """A number well into the next set, with the one before still missing: it may be either's."""
    under_way = state.phase is Phase.SET and one.no == state.set_no - 1 and state.set_at is not None
    plain = len(counts) == 1 and len(state.doing.sides) == 1
    return under_way and plain and event.at - (state.set_at or event.at) > LATE_COUNT


def said_again(state: State, event: Said, counts: tuple[Count, ...]) -> Counted | None:
    """The set for which these numbers were noted a moment ago: a second copy of a message is no new count."""
    values = tuple(count.value for count in counts)
    missing = lacking(state)
    recent = [one for one in state.counted if one.noted_at and _still_a_copy(state, event, one, missing)]
    return next((one for one in recent if one.reps[-len(values) :] == values), None)


def _still_a_copy(state: State, event: Said, one: Counted, missing: Counted | None) -> bool:
    """Whether an equal number may still be a copy: where the other side is asked for, only one of the same moment."""
    since = event.at - (one.noted_at or event.at)
    if missing is not None and one.no != missing.no:
        return since <= COPY_WITHIN
    if is_full(state, one):
        return since <= SAME_WITHIN
    # What was tapped has no second copy that is typed.
    return one.message is not None and since < OTHER_SIDE_AFTER


def again(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """A number when none was missing: the same one twice, or a correction, or the next set early."""
    last = last_counted(state)
    if last is None:
        return turn(state, Say(words.STALE))
    if (said := said_again(state, event, counts)) is not None:
        return turn(state, already(said))
    if state.phase is Phase.REST and len(counts) == 1:
        return ask_which(state, words.WHICH_SET, counts[0].value, last)
    if len(counts) == 1 == len(state.doing.sides):
        return _ask_change(state, counts[0].value, last)
    return tally.amend(state, event, last.no, counts)


def ask_which(state: State, text: str, reps: int, last: Counted) -> Turn[State]:
    """For which of two sets is this number?"""
    state = replace(state, between=reps)
    buttons = [Choice(words.SET_N.format(n=n), str(n)) for n in (last.no, last.no + 1)]
    asked = text.format(reps=reps, last=last.no, next=last.no + 1)
    return turn(state, say(asked, which_id(state, last), *buttons))


def _ask_change(state: State, reps: int, last: Counted) -> Turn[State]:
    """A number that nobody asked for: is it a correction of the last set?"""
    state = replace(state, between=reps)
    was = " and ".join(map(str, last.reps)) or words.NO_COUNT
    change = Choice(words.CHANGE.format(n=last.no, reps=reps), str(last.no))
    asked = words.CHANGE_ASK.format(reps=reps, n=last.no, was=was)
    return turn(state, say(asked, which_id(state, last), change, Choice(words.KEEP, "keep")))


def which_id(state: State, last: Counted | None) -> str:
    """The question about one number after one set: an earlier number's buttons are not this one's."""
    return f"which.{state.exercise + 1}.{last.no if last else 0}.{state.between}"


def which(state: State, event: Said) -> Turn[State]:
    """ "Set 1 again, or set 2?" answered; the rest may be over by then."""
    value, last = state.between, last_counted(state)
    if value is None or last is None or event.to != which_id(state, last):
        return turn(state, Say(words.STALE))
    state = replace(state, between=None)
    if event.text == "keep":
        return turn(state, Say(words.KEPT), *_still_open(state))
    if event.text == "change":
        event = replace(event, text=str(last.no))
    no, counts = int(event.text), (Count(value, False),)
    if any(one.no == no for one in state.counted):
        return tally.amend(state, event, no, counts)
    if state.phase not in BETWEEN_SETS:  # the bands are to come off: no set is begun by a late tap
        return turn(state, Say(words.STALE))
    return tally.done_with(replace(state, set_no=no, rest_until=None), event, counts)


def _still_open(state: State) -> tuple[Say, ...]:
    from conversations.session import machine  # only to repeat the open question

    return machine.open_question(state)


def already(one: Counted) -> Say:
    shown = " and ".join(str(reps) for reps in one.reps) or "no count"
    return Say(words.ALREADY.format(reps=shown))
