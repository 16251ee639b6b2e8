"""To which set a number belongs, when it may be either: asked, never guessed."""

import re
from dataclasses import replace
from datetime import timedelta

from conversations.answers import Count, Unclear
from conversations.protocol import Choice, Said, Say, Turn
from conversations.session import tally
from conversations.session.sets import reps_id
from conversations.session.side_names import side_named
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
    """A number well into a later set, with an earlier one still missing: it may be either's."""
    under_way = state.phase is Phase.SET and one.no < state.set_no and state.set_at is not None
    plain = len(counts) == 1 and len(state.doing.sides) == 1
    return under_way and plain and event.at - (state.set_at or event.at) > LATE_COUNT


def said_again(state: State, event: Said, counts: tuple[Count, ...]) -> Counted | None:
    """The set for which these numbers were noted a moment ago: a second copy of a message is no new count."""
    values = tuple(count.value for count in counts)
    missing = lacking(state)
    recent = [one for one in state.counted if one.noted_at and _still_a_copy(state, event, one, missing)]
    return next((one for one in recent if one.reps[-len(values) :] == values), None)


def is_copy(state: State, event: Said) -> bool:
    """Whether a line typed freely says once more what was noted a moment ago."""
    try:
        return said_again(state, event, tally.read(state, event.text)) is not None
    except Unclear:
        return False


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
    if side_named(state, event.text) is not None:
        return tally.amend(state, event, last.no, counts)
    values = tuple(count.value for count in counts)
    if state.phase in (Phase.REST, Phase.SET):
        return _next_or(state, event, last, values)
    if (read := asked_about(state, event, counts)) is not None:
        return turn(state, Say(read))
    if len(counts) == 1 == len(state.doing.sides):
        return _ask_change(state, counts[0].value, last)
    return tally.amend(state, event, last.no, counts)


def asked_about(state: State, event: Said, counts: tuple[Count, ...]) -> str | None:
    """What to say to a second copy of a number that a question is open about; None: it is none."""
    values = tuple(count.value for count in counts)
    if values != (state.between,) or not _just_now(state, event):
        return None
    return words.ALREADY_READ.format(reps=_shown(values))


def _next_or(state: State, event: Said, last: Counted, values: tuple[int, ...]) -> Turn[State]:
    """The last set again, or the next one, or several: those typed while nobody answered."""
    sides = len(state.doing.sides)
    if state.between is not None and event.too_soon_for(which_id(state, last)):
        before = state.waiting or (state.between,)
        if before[-len(values) :] == values and _just_now(state, event):
            return turn(state, Say(words.ALREADY_READ.format(reps=_shown(values))))
        sets = (len(before) + len(values)) // sides
        if len(values) == sides and last.no + sets <= state.sets:
            return _ask_several(state, last, before + values)
    resting = state.phase is Phase.REST and (state.rest_until is None or event.at < state.rest_until)
    if resting and len(values) == sides == 2:
        return tally.amend(state, event, last.no, tuple(Count(value, False) for value in values))
    return ask_which(state, words.WHICH_SET, last.no, *values)


def _just_now(state: State, event: Said) -> bool:
    return state.heard_at is not None and event.at - state.heard_at <= COPY_WITHIN


def _shown(values: tuple[int, ...]) -> str:
    return " and ".join(map(str, values))


def last_told(state: State) -> Counted | None:
    """The set whose count was said last, which after a correction is not always the newest one."""
    told = [one for one in state.counted if one.reps]
    return max(told, key=lambda one: (one.noted_at or one.done_at, one.no), default=None)


def taken_back(state: State, event: Said, last: Counted, counts: tuple[Count, ...]) -> Turn[State]:
    """ "no, 17": what was said last becomes this, be it a count that is noted or one that is asked about."""
    if side_named(state, event.text) is not None:
        return tally.amend(state, event, last.no, counts)
    values, sides = tuple(count.value for count in counts), len(state.doing.sides)
    if state.between is not None and len(values) == sides and state.waiting[-sides:] != last.reps:
        waiting = (*state.waiting[:-sides], *values)
        if len(waiting) > sides:
            return _ask_several(state, last, waiting)
        return ask_which(state, words.WHICH_SET, last.no, *values)
    one = lacking(state)
    if one is None or one.no == last.no or len(counts) != sides or event.too_soon_for(reps_id(state, one)):
        return tally.amend(state, event, last.no, counts)
    return ask_which(state, words.WHICH_MISSING, last.no, *values)


def ask_which(state: State, text: str, first: int, *values: int, other: int | None = None) -> Turn[State]:
    """For which of two sets, `first` or the `other` (None: the one after it), is this count?"""
    state, later = replace(state, between=values[-1], waiting=values), other or first + 1
    buttons = [Choice(words.SET_N.format(n=n), str(n)) for n in (first, later)]
    asked = text.format(reps=_shown(values), last=first, next=later)
    return turn(state, say(asked, which_id(state, last_counted(state)), *buttons))


def _ask_several(state: State, last: Counted, values: tuple[int, ...]) -> Turn[State]:
    """Counts that came one after the other while nobody answered: the sets after the last one, or a correction?"""
    sides = len(state.doing.sides)
    state = replace(state, between=values[-1], waiting=values)
    groups = [_shown(values[at : at + sides]) for at in range(0, len(values), sides)]
    names = [str(last.no + 1 + at) for at in range(len(groups))]
    asked = words.WHICH_SETS.format(reps=", ".join(groups), sets=_listed(names))
    several = Choice(words.SETS_N.format(sets=_listed(names)), "all")
    change = Choice(words.CHANGE.format(n=last.no, reps=groups[-1]), str(last.no))
    return turn(state, say(asked, which_id(state, last), several, change, Choice(words.KEEP, "keep")))


def _listed(names: list[str]) -> str:
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _ask_change(state: State, reps: int, last: Counted) -> Turn[State]:
    """A number that nobody asked for: is it a correction of the last set?"""
    state = replace(state, between=reps, waiting=(reps,))
    was = _shown(last.reps) or words.NO_COUNT
    change = Choice(words.CHANGE.format(n=last.no, reps=reps), str(last.no))
    asked = words.CHANGE_ASK.format(reps=reps, n=last.no, was=was)
    return turn(state, say(asked, which_id(state, last), change, Choice(words.KEEP, "keep")))


def ask_side(state: State, one: Counted, reps: int) -> Turn[State]:
    """A second number that came before its side was asked for: that side's, or the first one's again?"""
    state = replace(state, between=reps, waiting=(reps,))
    before, after = (words.SIDES[side] for side in state.doing.sides)
    asked = words.WHICH_SIDE.format(reps=reps, next=after.lower(), last=before.lower(), was=one.reps[-1])
    buttons = [
        Choice(words.SIDE_IS.format(side=side, reps=reps), value)
        for side, value in ((after, "next"), (before, "side"))
    ]
    return turn(state, say(asked, which_id(state, last_counted(state)), *buttons))


def which_id(state: State, last: Counted | None) -> str:
    """The question about one number after one set: an earlier number's buttons are not this one's."""
    return f"which.{state.exercise + 1}.{last.no if last else 0}.{state.between}"


YES_OR_NO = {"yes": "change", "change it": "change", "no": "keep", "leave it": "keep"}
SET_ALONE = re.compile(r"^(?:it'?s |for |the )*(?:set )?(\d)(?: again)?$")


def typed_choice(state: State, text: str) -> str | None:
    """A button of the open question in words: "yes", "no", "set 2"; None: something else, such as another count."""
    flat = text.strip().lower().rstrip(".!")
    last = last_counted(state)
    if flat in words.SIDES_SAID and len(state.doing.sides) == 2:
        return "side" if state.doing.sides[0] == flat else "next"
    found = SET_ALONE.match(flat)
    if found is not None and last is not None and int(found[1]) in (last.no, last.no + 1):
        return found[1]
    return YES_OR_NO.get(flat)


def which(state: State, event: Said) -> Turn[State]:
    """ "Set 1 again, or set 2?" answered; the rest may be over by then."""
    last = last_counted(state)
    values = _asked_about(state, event, last)
    if last is None or not values:
        return turn(state, Say(words.STALE))
    chosen = event.text
    state = replace(state, between=None, waiting=())
    if chosen == "keep":
        return turn(state, Say(words.KEPT), *_still_open(state))
    counts, sides = tuple(Count(value, False) for value in values), len(state.doing.sides)
    if chosen == "change" and len(values) > sides:
        chosen = "all"
    match chosen:
        case "all":
            groups = [counts[at : at + sides] for at in range(0, len(counts), sides)]
            return tally.placed(state, event, last.no + 1, groups)
        case "next":
            return tally.fill(state, event, last, counts)
        case "side" | "change":
            return tally.amend(state, event, last.no, counts)
        case _:
            return _set_chosen(state, event, int(chosen), counts[-sides:])


def _asked_about(state: State, event: Said, last: Counted | None) -> tuple[int, ...]:
    """The numbers that the answered question is about, also an earlier one of the same set; (): it is over."""
    if state.between is None or last is None:
        return ()
    if event.to == which_id(state, last):
        return state.waiting or (state.between,)
    asked, _, value = (event.to or "").rpartition(".")
    same_set = which_id(state, last).rpartition(".")[0] == asked
    # "Set 1" names its set also when another one was done meanwhile.
    named = event.text.isdigit() and asked.startswith(f"which.{state.exercise + 1}.")
    return (int(value),) if (same_set or named) and value.isdigit() and len(state.doing.sides) == 1 else ()


def _set_chosen(state: State, event: Said, no: int, counts: tuple[Count, ...]) -> Turn[State]:
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
