"""Sets and rests. "Set done" starts the rest at once; counts are asked inside it; Go never waits for them."""

import re
from dataclasses import replace
from datetime import datetime, timedelta

from conversations.protocol import Choice, Effect, Record, Say, Turn
from conversations.session import coming_off, fitting
from conversations.session.state import (
    After,
    Counted,
    Phase,
    State,
    countdown,
    lacking,
    say,
    turn,
    with_counted,
)
from conversations.words import session as words
from conversations.words.plan import doing_text, tempo
from conversations.words.pulse import BELOW
from core.cuffs import can_finish, check_again, whole_minutes_left
from core.facts import WalkDone
from core.plans import TEMPO_S, Scheme, Side
from core.resistance import TEMPO_MARK

TENS = tuple(
    Choice(label, f"t{tens}")
    for tens, label in ((0, "0-9"), (10, "10-19"), (20, "20-29"), (30, "30-39"), (40, "40-49"), (50, "50-59"))
)
LOST = Choice(words.LOST_COUNT, "lost")
DONE = Choice(words.SET_DONE, "done")
OFF = "bands off"  # a walk's answer, read like the same words typed
BEFORE = (
    r"\W*(?:(?:phew|puh|oh|ok|okay|yes|right|there|now|all|that'?s|set|one|two|just|and|i'?m|i am)[\s,.!]+)*"
)
AFTER = r"(?:[\s,.!]+(?:now|again|thanks|thank you|coach|it|that|set|one|phew|home|this|the))*\W*"
SAYS_DONE = re.compile(rf"{BEFORE}(?:done|finished|completed?|did it){AFTER}", re.IGNORECASE)
SAYS_BACK = re.compile(rf"{BEFORE}(?:back|home|done|finished){AFTER}", re.IGNORECASE)


def says_done(text: str) -> bool:
    """ "phew, finished": as the button, and nothing else."""
    return SAYS_DONE.fullmatch(text) is not None


def says_back(text: str) -> bool:
    """The same of a walk."""
    return SAYS_BACK.fullmatch(text) is not None


def begin(state: State, at: datetime) -> Turn[State]:
    """The next set, or the walk, after a passed check; bands off when it cannot end in time."""
    if state.doing.scheme is Scheme.WALK:
        return _walk(state, at)
    if cannot_finish(state, at):
        return out_of_time(state)
    state = replace(state, phase=Phase.SET, set_at=at, asked_quiet_at=None)
    return turn(state, ask(state))


def _walk(state: State, at: datetime) -> Turn[State]:
    """The walk, as long as the bands may stay on; bands off when not a minute is left."""
    minutes = state.doing.walk_min
    if state.on_at is not None:
        minutes = min(minutes, whole_minutes_left(state.on_at, at, state.doing.limit_min * 60))
    if minutes < 1:
        return out_of_time(state)
    state = replace(state, phase=Phase.WALK, set_at=at, asked_quiet_at=None, walk_for=minutes)
    return turn(state, ask(state))


def cannot_finish(state: State, at: datetime) -> bool:
    """Whether the set would still run when the bands must come off."""
    if state.on_at is None:
        return False
    reps = state.expected(state.set_no) * len(state.doing.sides)
    return not can_finish(state.on_at, at, reps, state.doing.tempo_s, state.doing.limit_min * 60)


def out_of_time(state: State) -> Turn[State]:
    """No more sets of this movement: the time is nearly up."""
    state = replace(state, phase=Phase.OFF, why="time", after=After.NEXT)
    return turn(state, coming_off.off(state, words.BANDS_OFF_TIME))


def ask(state: State) -> Say:
    """What is to be done now: a set or a walk."""
    if state.phase is Phase.WALK and state.asked_quiet_at is not None:
        return walk_is_over(state)
    if state.phase is Phase.WALK:
        text = words.WALK.format(minutes=state.walk_minutes, kmh=f"{state.doing.walk_kmh:g}")
        text += f" {words.WALK_SHORTER}" if state.walk_minutes < state.doing.walk_min else ""
        below = state.brief.pulse_below
        text += f" {BELOW.format(ceiling=below)}" if below else ""
        return say(text, f"walk.{state.set_id}", Choice(words.WALK_LABEL, "done"))
    aim = state.doing.aims[state.set_no - 1]
    if state.set_no > 1:
        text = words.GO_ON_GENTLY if state.brief.gentle else words.GO
        return say(text.format(set=state.set_no, aim=aim, most=aim.high), done_id(state), DONE)
    first = words.GO_GENTLY if state.brief.gentle else words.GO_FIRST
    text = first.format(
        total=state.sets,
        name=state.name,
        doing=(f" · {doing_text(state.doing.doing)}" if state.doing.doing else "") + _sides(state),
        aim=aim,
        most=aim.high,
        stop=_stop(state),
        breathe=words.BREATHE,
        loose=state.brief.cues.get(state.doing.movement, ""),
    ).strip()
    return say(text, done_id(state), DONE)


def _sides(state: State) -> str:
    """Which side works, in order; nothing when both work at once."""
    names = [words.SIDES[side].lower() for side in state.doing.sides if side is not Side.BOTH]
    match names:
        case []:
            return ""
        case [only]:
            return words.ONE_SIDE.format(first=only)
        case _:
            return words.BOTH_SIDES.format(first=names[0], second=names[1])


def _stop(state: State) -> str:
    stop = words.STOP_AT_NUMBER if state.doing.scheme is Scheme.FIXED else words.STOP_WHEN_FORM_GOES
    if state.doing.tempo_s != TEMPO_S:  # the coach chose another one
        return f"{stop} {tempo(state.doing.tempo_s)}."
    slow = state.doing.doing.endswith(TEMPO_MARK)
    return f"{stop} {words.SLOW}" if slow else stop


def set_done(state: State, at: datetime) -> Turn[State]:
    """ "Set done": the rest starts at that moment, and the count is asked inside it."""
    previous = state.counted[-1] if state.counted else None
    rest_s = None
    if previous is not None and state.set_at is not None:
        rest_s = max(0.0, (state.set_at - previous.done_at).total_seconds())
    state = with_counted(state, Counted(state.set_no, at, rest_s))
    state = replace(state, tens=None, guess=False, asked_quiet_at=None)
    if state.set_no >= state.sets:
        return bands_off(state)
    state = replace(state, phase=Phase.REST, rest_until=at + timedelta(seconds=state.doing.rest_s))
    return turn(state, ask_reps(state, words.REPS), effects=countdown(state))


def bands_off(state: State) -> Turn[State]:
    """The last set is done: bands off first, counts beside it."""
    state = replace(state, phase=Phase.OFF, why="done", after=After.NEXT, rest_until=None)
    return turn(state, coming_off.off(state, words.BANDS_OFF), ask_reps(state, words.REPS_LAST))


def ask_reps(state: State, text: str) -> Say:
    """The count that is missing, of the last ended set first; typed, or tapped as tens and then ones."""
    newest = state.counted[-1]
    last = lacking(state) or newest
    if last.no != newest.no:
        text = words.REPS_OF.format(n=last.no)
    sides = state.doing.sides
    if len(sides) > 1:
        side = words.SIDES[sides[min(len(last.reps), len(sides) - 1)]]
        this_side = words.REPS_SIDE.format(side=side)
        if last.no != newest.no:
            text = f"{text} {this_side}"
        elif state.phase is Phase.REST and not last.reps:
            text = words.REPS_FIRST_SIDE.format(side=side)
        else:
            text = this_side
    return say(text, reps_id(state, last), *TENS, LOST)


def reps_id(state: State, one: Counted) -> str:
    """The question for one set's count (of the side that is still missing)."""
    return f"reps.{state.exercise + 1}.{one.no}.{len(one.reps)}"


def done_id(state: State) -> str:
    """The question of the set under way: it is put with its Go."""
    return f"done.{state.set_id}"


def go(state: State, at: datetime) -> Turn[State]:
    """The rest is over: the next set, or a look at the bands first in the early sessions."""
    state = replace(state, set_no=state.set_no + 1, rest_until=None)
    if needs_recheck(state):
        state = replace(
            state,
            phase=Phase.TIGHT,
            rechecked=True,
            check_no=state.check_no + 1,
            limb=0,
            refills=(),
        )
        return turn(state, Say(words.RECHECK), fitting.ask(state))
    return begin(state, at)


def needs_recheck(state: State) -> bool:
    """After set 1: in the first four sessions, and when the last check was slow."""
    if state.rechecked:
        return False
    slow = state.brief.last_check_slow or state.failed_checks > 0
    return check_again(state.brief.number, state.set_no - 1, was_slow=slow, refitted=False) is not None


def went_quiet(state: State, now: datetime) -> Turn[State]:
    """Nothing heard for too long: ask, then bands off and the coach."""
    if state.asked_quiet_at is None:
        state = replace(state, asked_quiet_at=now)
        if state.phase is Phase.SET:
            return turn(state, say(words.QUIET, done_id(state), DONE))
        return turn(state, walk_is_over(state))
    if state.phase is Phase.WALK:
        return coming_off.no_answer(state, words.QUIET_SAID_WALK)
    return coming_off.no_answer(state, words.QUIET_SAID.format(set=state.set_no, name=state.name))


def walk_is_over(state: State) -> Say:
    """The minutes are over, and no word yet: its tap says that the bands are off, unlike the one of "I'm back"."""
    text = words.WALK_TIME.format(minutes=state.walk_minutes)
    return say(text, f"walk.{state.set_id}", Choice(words.BANDS_OFF_LABEL, OFF))


def walk_done(state: State, at: datetime, said_min: float | None = None) -> Turn[State]:
    """Back from the walk: bands off. `said_min`: the minutes as the client says, never more than by the clock."""
    began = state.set_at or at
    minutes = round(max(0.0, (at - began).total_seconds()) / 60, 1)
    minutes = minutes if said_min is None else min(minutes, said_min)
    fact = WalkDone(at, state.brief.session, state.exercise + 1, minutes, state.doing.walk_kmh)
    effects: tuple[Effect, ...] = (Record(fact),)
    state = replace(state, phase=Phase.OFF, why="done", after=After.NEXT)
    return turn(state, coming_off.off(state, words.BANDS_OFF), effects=effects)
