"""The count of a set: read, stored the moment it is known, commented on, and changed."""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from conversations.answers import Count, Unclear, several_numbers, side_numbers
from conversations.correcting import only_reps, without_preface
from conversations.protocol import Corrected, Effect, Record, Said, Say, Turn
from conversations.session import coming_off, sets
from conversations.session.side_names import MOST_REPS, in_plan_order, side_named
from conversations.session.state import (
    Counted,
    Phase,
    State,
    is_full,
    turn,
    with_counted,
)
from conversations.words import session as words
from conversations.words.answers import unclear
from core.facts import SetDone
from core.plans import Scheme, Side

DONE_TAIL = re.compile(r"(?<=\d)[\s,]+(?:done?|dne|doen|dnoe|finished|fin)[\s.!]*$", re.IGNORECASE)
SIDED = re.compile(r"\b(?:left|right|l|r)\b", re.IGNORECASE)


def read(state: State, text: str) -> tuple[Count, ...]:
    """One or more counts; sides come in the plan's order. Raises `Unclear`."""
    text = DONE_TAIL.sub("", only_reps(without_preface(text)))
    one_limb_at_a_time = Side.BOTH not in state.doing.sides
    if one_limb_at_a_time and (len(state.doing.sides) == 2 or SIDED.search(text)):
        try:
            sided = side_numbers(text, 0, MOST_REPS)
        except Unclear:
            return several_numbers(text, 0, MOST_REPS)
        return in_plan_order(state, sided)
    return several_numbers(text, 0, MOST_REPS)


def stated(
    one: Counted, places: tuple[int, ...], counts: tuple[Count, ...], message: int | None, at: datetime
) -> Counted:
    """The set with these counts in these places, each with the message that said it first: a copy states nothing new."""
    known, said_by = dict(enumerate(one.reps)), dict(enumerate(one.said_by or (one.message,) * len(one.reps)))
    told = dict(zip(places, (count.value for count in counts), strict=True))
    changed = [place for place, value in told.items() if known.get(place) != value or said_by[place] is None]
    said_by |= dict.fromkeys(changed, message)
    reps = known | told
    in_order = sorted(reps)
    return replace(
        one,
        reps=tuple(reps[place] for place in in_order),
        said_by=tuple(said_by[place] for place in in_order),
        message=message if changed else one.message,
        noted_at=at,
    )


def done_with(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """The set under way is done, and this is its count: nothing more to ask about it."""
    ended = sets.set_done(state, event.at)
    assert ended.state is not None
    if side_named(state, event.text):
        return ended  # the second side, before the first: that one is asked for
    filled = fill(ended.state, event, ended.state.counted[-1], counts)
    asked = {reply.asks for reply in filled.replies}
    more = tuple(reply for reply in ended.replies if not _asks_reps(reply) and reply.asks not in asked)
    return replace(filled, replies=(*filled.replies, *more), effects=(*ended.effects, *filled.effects))


def _asks_reps(reply: Say) -> bool:
    return (reply.asks or "").startswith("reps.")


def fill(state: State, event: Said, one: Counted, counts: tuple[Count, ...]) -> Turn[State]:
    """Put counts into a set that lacks them; both sides said at once are both sides."""
    sides = len(state.doing.sides)
    first = 0 if len(counts) == sides else len(one.reps)
    places = tuple(range(first, min(first + len(counts), sides)))
    rough = one.rough or state.guess or any(count.rough for count in counts)
    one = replace(stated(one, places, counts[: len(places)], event.message, event.at), rough=rough)
    state = replace(with_counted(state, one), tens=None, guess=False)
    effects = facts(state, event.at, one, places)
    if not is_full(state, one):
        return turn(state, sets.ask_reps(state, words.REPS_LAST), effects=effects)
    return then(state, event, (Say(comment(state, one)),), effects)


def then(state: State, event: Said, replies: tuple[Say, ...], effects: tuple[Effect, ...]) -> Turn[State]:
    """After a count: nothing more, bands off last when they are still on, the end when only the count was missing."""
    if state.phase is Phase.OFF and state.on_at is not None:
        return turn(state, *replies, coming_off.off(state, words.BANDS_OFF), effects=effects)
    from conversations.session import ending  # the end waits for the last count

    if state.phase is not Phase.COUNT:
        asked = (ending.ask_left(state),) if state.phase is Phase.BREAK and ending.left_open(state) else ()
        return turn(state, *replies, *asked, effects=effects)
    onward = ending.onward(state, event.at)
    return replace(onward, replies=(*replies, *onward.replies), effects=(*effects, *onward.effects))


def comment(state: State, one: Counted) -> str:
    """What the coach would say to this count; the expectation only after it."""
    aim, shown = state.doing.aims[one.no - 1], " and ".join(str(reps) for reps in one.reps)
    lowest, highest = min(one.reps), max(one.reps)
    if state.brief.gentle:
        return words.NOTED.format(reps=shown)
    if state.doing.scheme is Scheme.FIXED:
        text = words.NOTED_FIXED if lowest >= aim.low else words.NOTED_SHORT
        return text.format(reps=shown, aim=aim)
    if lowest < aim.low:
        return words.NOTED_BELOW.format(reps=shown)
    return (words.NOTED_ABOVE if highest > aim.high else words.NOTED_IN_RANGE).format(reps=shown)


def many(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """Several sets in one message: taken as what they are, from set 1 on."""
    sides = len(state.doing.sides)
    groups = [counts[i : i + sides] for i in range(0, len(counts), sides)]
    if len(groups) > state.sets or len(groups[-1]) < sides:
        return turn(state, Say(words.TOO_MANY.format(numbers=len(counts), sets=state.sets)))
    return placed(state, event, 1, groups)


def placed(state: State, event: Said, first: int, groups: Sequence[tuple[Count, ...]]) -> Turn[State]:
    """Put the counts of several sets in their places, from set `first` on."""
    effects: tuple[Effect, ...] = ()
    for no, group in enumerate(groups, start=first):
        known = next((one for one in state.counted if one.no == no), Counted(no, event.at))
        one = replace(
            known,
            reps=tuple(count.value for count in group),
            said_by=(event.message,) * len(group),
            rough=any(count.rough for count in group),
            message=event.message,
            noted_at=event.at,
        )
        state = with_counted(state, one)
        effects += facts(state, event.at, one)
    shown = ", ".join(str(count.value) for group in groups for count in group)
    noted = Say(words.MANY_NOTED.format(sets=shown))
    if state.phase in (Phase.SET, Phase.REST):
        return _after_many(state, event, noted, effects)
    return then(state, event, (noted,), effects)


def _after_many(state: State, event: Said, noted: Say, effects: tuple[Effect, ...]) -> Turn[State]:
    done = len(state.counted)
    if done >= state.sets:
        state = replace(state, phase=Phase.OFF, why="done", rest_until=None)
        return turn(state, noted, coming_off.off(state, words.BANDS_OFF), effects=effects)
    if done < state.set_no or (state.phase is Phase.REST and done == state.set_no):
        return turn(state, noted, effects=effects)
    state = replace(
        state, phase=Phase.REST, set_no=done, rest_until=event.at + timedelta(seconds=state.doing.rest_s)
    )
    return turn(state, noted, effects=effects)


def amend(state: State, event: Said | Corrected, no: int, counts: tuple[Count, ...]) -> Turn[State]:
    """Change a set that has its count."""
    one = next((each for each in state.counted if each.no == no), None)
    places = () if one is None else _amended(state, one, counts, side_named(state, event.text))
    if one is None or not places:
        return turn(state, Say(words.NOT_A_NUMBER))
    message = event.of if isinstance(event, Corrected) else event.message
    one = replace(stated(one, places, counts, message, event.at), rough=False, blank=False)
    state = replace(with_counted(state, one), between=None, waiting=())
    shown = " and ".join(str(value) for value in one.reps)
    said, changed = Said(event.at, event.text, None, message), Say(words.CHANGED.format(n=no, reps=shown))
    noted = facts(state, event.at, one)
    if not is_full(state, one):
        return turn(state, changed, sets.ask_reps(state, words.REPS_LAST), effects=noted)
    return then(state, said, (changed,), noted)


def _amended(state: State, one: Counted, counts: tuple[Count, ...], named: int | None) -> tuple[int, ...]:
    """The places that these counts change: the side that is named, all, or the side that was said last by itself."""
    sides = len(state.doing.sides)
    if named is not None and named < len(one.reps) and len(counts) == 1:
        return (named,)
    if len(counts) == sides:
        return tuple(range(sides))
    if len(counts) == 1 and one.reps and not is_full(state, one):
        return (len(one.reps) - 1,)
    together = len(set(one.said_by)) == 1 and one.said_by[0] is not None
    return (len(one.reps) - 1,) if len(counts) == 1 and is_full(state, one) and not together else ()


def said_in(state: State, message: int) -> list[Counted]:
    """The sets whose counts stand in this message."""
    return [one for one in state.counted if message in (one.message, *one.said_by)]


def corrected(state: State, event: Corrected) -> Turn[State]:
    """An edited message: the sets that it had stated change with it."""
    mine = said_in(state, event.of)
    if not mine and not state.counted:
        return turn(state, *((Say(words.EDIT_UNCOUNTED),) if state.on_at is not None else ()))
    if not mine:
        return turn(state, Say(words.EDIT_OF_WHAT))
    try:
        counts = read(state, event.text)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)))
    places = tuple(no for no, message in enumerate(mine[0].said_by) if message == event.of)
    if len(mine) == 1 and len(places) == len(counts) < len(state.doing.sides):
        one = stated(mine[0], places, counts, event.of, event.at)
        shown = words.CHANGED.format(n=one.no, reps=" and ".join(map(str, one.reps)))
        return turn(with_counted(state, one), Say(shown), effects=facts(state, event.at, one, places))
    if len(mine) == 1 and len(counts) <= len(state.doing.sides):
        return amend(state, event, mine[0].no, counts)
    return many(state, Said(event.at, event.text, None, event.of), counts)


def facts(
    state: State, at: datetime, one: Counted, places: tuple[int, ...] | None = None
) -> tuple[Effect, ...]:
    """One fact a side; `places`: only of these sides, in the plan's order."""
    doing = state.doing
    # A gentle set ends with reps left, so neither the range nor the forecast is its aim.
    full = not state.brief.gentle
    aim = doing.aims[one.no - 1] if full and one.no <= len(doing.aims) else None
    expected = state.brief.expected.get(doing.movement, ())[one.no - 1 : one.no] if full else ()
    return tuple(
        Record(
            SetDone(
                at=at,
                session=state.brief.session,
                exercise_no=state.exercise + 1,
                movement=doing.movement,
                set_no=one.no,
                side=side,
                doing=doing.doing,
                reps=reps,
                rough=one.rough,
                done_at=one.done_at,
                rest_s=one.rest_s,
                tightness=state.tightness,
                loose=state.loose,
                reps_left=one.reps_left,
                aim_low=aim.low if aim else None,
                aim_high=aim.high if aim else None,
                expected=expected[0] if expected else None,
            )
        )
        for place, (side, reps) in enumerate(zip(doing.sides, one.reps, strict=False))
        if places is None or place in places
    )
