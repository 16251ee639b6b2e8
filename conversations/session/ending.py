"""Bands off, the break of 3 minutes, the next movement, the end."""

from dataclasses import replace
from datetime import datetime

from conversations.answers import Unclear, choice, whole_number
from conversations.answers.taken_off import Off, says_never_on, taken_off
from conversations.correcting import is_correction, named_set
from conversations.protocol import BandsCameOff, Begin, Effect, Record, Said, Say, TimeIsUp, Turn
from conversations.session import coming_off, counting, fitting, going_on, sets, tally, which_set
from conversations.session.state import (
    After,
    Counted,
    Phase,
    State,
    choices,
    lacking,
    say,
    turn,
    with_counted,
)
from conversations.session.timing import minutes_off
from conversations.words import session as words
from conversations.words import trouble
from conversations.words.answers import unclear
from core.facts import NOT_ON, WORKED, BandsOff, SessionEnded
from core.plans import Scheme

DONE, TIME = WORKED
LEFT = choices(words.REPS_LEFT_LABELS)


def said(state: State, event: Said) -> Turn[State]:
    """Words while the bands are to come off, or during the break."""
    if state.phase is Phase.OFF:
        return _off_said(state, event)
    typed_left = event.to is None and lacking(state) is None and left_open(state)
    if (event.to or "").startswith("left.") or typed_left:
        return _left(state, event)
    return counting.typed(state, event)


def _off_said(state: State, event: Said) -> Turn[State]:
    """Only a tap, or words that say so, are off; "ok" is asked about, everything else is about counts."""
    if state.between is not None and event.text.strip().lower().rstrip(".!") in which_set.YES_OR_NO:
        return counting.typed(state, event)
    never = state.maybe_on and (event.text == coming_off.NEVER_ON or says_never_on(event.text))
    said = Off.BOTH if never else taken_off(event.text, asked=state.asked_both)
    if said is Off.BOTH:
        return _never_on(state, event.at) if never else bands_off(state, event.at)
    if said is Off.NOT_ABOUT_IT:
        return counting.typed(state, event)
    state = replace(state, asked_both=said is Off.PERHAPS)
    return turn(state, coming_off.off(state, trouble.NOT_BOTH[said]))


def _never_on(state: State, at: datetime) -> Turn[State]:
    """After the alarm: they never were. Where others of this session were, it ends as any other does."""
    return bands_off(state, at, NOT_ON) if state.worn else going_on.never_on(state, at)


def bands_off(state: State, at: datetime, why: str = "") -> Turn[State]:
    """They are off: store it, and go on."""
    fact = BandsOff(at, state.brief.session, state.spell_id, why or state.why)
    state = replace(state, off_at=at, on_at=None, asked_both=False, maybe_on=False, cut=_cut(state))
    onward_turn = onward(state, at)
    return replace(onward_turn, effects=(Record(fact), *onward_turn.effects))


def came_off(state: State, event: BandsCameOff) -> Turn[State]:
    """They came off by another way (a watch's own button)."""
    if event.spell != state.spell_id or state.on_at is None:
        return turn(state)
    if event.never and not state.worn:
        return Turn(None, (), (Record(SessionEnded(event.at, state.brief.session, NOT_ON)),))
    why = state.why if state.phase is Phase.OFF else TIME
    state = replace(state, off_at=event.at, on_at=None, maybe_on=False, why=why, rest_until=None)
    state = replace(state, cut=_cut(state))
    if state.phase is Phase.SET:
        state = replace(state, set_at=None)
    return onward(state, event.at)


def time_is_up(state: State, event: TimeIsUp) -> Turn[State]:
    """The limit passed; the client was told so already."""
    if event.spell != state.spell_id or state.on_at is None or state.phase is Phase.OFF:
        return turn(state)
    return turn(replace(state, phase=Phase.OFF, why=TIME, after=After.NEXT, rest_until=None))


def back_and_off(state: State, at: datetime) -> Turn[State]:
    """ "Bands are off" on a walk: it is over, and they are."""
    walked = sets.walk_done(state, at)
    assert walked.state is not None
    off = bands_off(walked.state, at)
    return replace(off, effects=(*walked.effects, *off.effects))


def on_too_early(state: State, at: datetime) -> Turn[State]:
    """Bands put on in the break: off again, and their 3 minutes begin anew."""
    state, effects = going_on.too_early(state, at)
    return turn(
        state, coming_off.off(state, words.ON_TOO_EARLY.format(minutes=minutes_off(state))), effects=effects
    )


def onward(state: State, at: datetime) -> Turn[State]:
    """Bands are off: the break, the count that is still missing, or the end."""
    if state.after is After.END:
        return over(state, at, state.why)
    more = state.after is After.REFIT or state.exercise + 1 < len(state.brief.exercises)
    if more:
        state = replace(state, phase=Phase.BREAK)
        return turn(state, *_break_words(state))
    if lacking(state) is not None:
        state = replace(state, phase=Phase.COUNT)
        return turn(state, sets.ask_reps(state, words.REPS_BANDS_OFF))
    if left_open(state):
        return turn(replace(state, phase=Phase.COUNT), ask_left(state))
    return worked(state, at)


def _cut(state: State) -> bool:
    return state.cut or state.why == TIME


def worked(state: State, at: datetime) -> Turn[State]:
    """Nothing is left to do or to say: the session ran as planned, or to the limit of the bands, or never began."""
    no_set = state.exercise == 0 and not state.counted
    if no_set and (state.why == coming_off.OFF_EARLY or (_cut(state) and not state.doing.walk_min)):
        return over(state, at, coming_off.OFF_EARLY)
    return over(state, at, TIME if state.cut else DONE)


def _break_words(state: State) -> tuple[Say, ...]:
    if state.after is After.REFIT:
        return (Say(words.NEW_FIT.format(minutes=minutes_off(state))),)
    upcoming = state.brief.exercises[state.exercise + 1]
    name = state.brief.names.get(upcoming.movement, upcoming.movement)
    rest = (Say(words.BREAK.format(name=name.lower(), minutes=minutes_off(state))),)
    return (*rest, ask_left(state)) if left_open(state) else rest


def _judged(state: State) -> Counted | None:
    """The set of which the load model wants to know how many clean reps were left.

    Set 1 in gentle sessions; the last of fixed sets where it came to its number, as only then a raise is near.
    """
    counted = state.doing.scheme is Scheme.FIXED and not state.doing.open_last
    last = state.set_no if counted and state.set_no == len(state.doing.aims) else None
    wanted = 1 if state.brief.gentle else last
    one = next((each for each in state.counted if each.no == wanted and each.reps), None)
    short = one is not None and not state.brief.gentle and min(one.reps) < state.doing.aims[one.no - 1].low
    return None if short else one


def left_open(state: State) -> bool:
    """Whether the reps that were left are still to be told."""
    one = _judged(state)
    return one is not None and one.reps_left is None


def ask_left(state: State) -> Say:
    """How many clean reps were left."""
    one = _judged(state)
    assert one is not None, "asked only where there is such a set"
    return say(words.REPS_LEFT.format(set=one.no), f"left.{state.exercise + 1}", *LEFT)


def _not_left(state: State, event: Said) -> bool:
    """A correction, or a count that came before the reps that were left were asked for, or came twice."""
    if is_correction(event.text) or named_set(event.text) is not None:
        return True
    if event.to is not None:
        return False
    return event.too_soon_for(ask_left(state).asks or "") or which_set.is_copy(state, event)


def _left(state: State, event: Said) -> Turn[State]:
    if _not_left(state, event):
        return counting.typed(state, event)
    try:
        left = int(choice(event.text, LEFT))
    except Unclear:
        try:
            left = whole_number(event.text, 0, 30)
        except Unclear as problem:
            return turn(state, Say(unclear(problem)), ask_left(state))
    one = _judged(state)
    if one is None:
        return turn(state, Say(words.STALE))
    one = replace(one, reps_left=left)
    state = with_counted(state, one)
    effects = tally.facts(state, event.at, one)
    thanks = Say(words.THANKS)
    if state.phase is Phase.BREAK:
        return turn(state, thanks, effects=effects)
    end = onward(state, event.at)
    return replace(end, replies=(thanks, *end.replies), effects=(*effects, *end.effects))


def break_over(state: State, now: datetime) -> Turn[State]:
    """3 minutes are over: a new fit, for this movement or the next."""
    if state.after is After.REFIT:
        state = replace(state, spell=state.spell + 1, check_no=state.check_no + 1)
    else:
        state = replace(
            state,
            exercise=state.exercise + 1,
            spell=1,
            check_no=1,
            set_no=1,
            counted=(),
            rechecked=False,
            refitted_loose=False,
            loose=False,
        )
    state = replace(
        state,
        phase=Phase.FIT,
        fit_at=now,
        after=After.NEXT,
        why="done",
        off_at=None,
        set_at=None,
        limb=0,
        refills=(),
        tightness=None,
    )
    lesson = state.lesson if state.spell == 1 else ()
    return turn(state, *lesson, fitting.ask(state))


def over(state: State, at: datetime, why: str) -> Turn[State]:
    """The end of the work; the questions afterwards are another dialogue's."""
    effects: tuple[Effect, ...] = (
        Record(SessionEnded(at, state.brief.session, why)),
        Begin("after", {"session": state.brief.session, "why": why}),
    )
    return turn(None, Say(words.OVER.get(why, words.OVER_EARLY)), effects=effects)
