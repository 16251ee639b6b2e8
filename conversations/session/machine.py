"""One event of a session, sent to the phase that is open."""

import re
from dataclasses import replace
from datetime import datetime

from conversations.answers.taken_off import Off, off_unasked, plainly_off, taken_off
from conversations.protocol import (
    BandsCameOff,
    Barred,
    Cancelled,
    Corrected,
    Event,
    Halted,
    Hurts,
    Opened,
    Record,
    Resumed,
    Said,
    Say,
    Sent,
    TimeIsUp,
    ToldOff,
    TooTight,
    Turn,
    WentBack,
    Woke,
)
from conversations.session import (
    all_right,
    coming_off,
    counting,
    deciding,
    ending,
    fitting,
    going_on,
    hurting,
    kept,
    looking,
    sets,
    tally,
    timing,
    too_soon,
    which_set,
)
from conversations.session.state import After, Phase, State, lacking, turn, wake_at
from conversations.words import common
from conversations.words import session as words
from core.cuffs import on_again_at
from core.facts import SessionEnded, SessionStarted

MOVES = (Phase.SET, Phase.REST)  # where a band may slide while nobody looks at it
MINUTES = re.compile(r"(\d{1,2}(?:[.,]\d)?)\s*(?:min(?:ute)?s?)?", re.IGNORECASE)


def advance(state: State | None, event: Event, now: datetime) -> Turn[State]:
    """One event. Raises TypeError when the first event is not `Opened` (a bug of the engine)."""
    made = _told_off(state, _open(event) if state is None else _advance(state, event, now))
    if isinstance(event, Said) and event.to is None and made.state == state and not made.effects:
        made = replace(kept.for_later(made, event, open_question), unread=True)
    if made.state is None or isinstance(event, (Woke, Barred)):
        return made
    return replace(made, state=(heard := replace(made.state, heard_at=event.at)), wake_at=wake_at(heard))


def _told_off(before: State | None, made: Turn[State]) -> Turn[State]:
    """Whatever led to "bands off now": from here on somebody waits for the word that they are."""
    after = made.state
    if after is None or after.on_at is None or after.phase is not Phase.OFF:
        return made
    if before is not None and before.phase is Phase.OFF:
        return made
    return replace(made, effects=(*made.effects, ToldOff(after.brief.session, after.spell_id)))


def _advance(state: State, event: Event, now: datetime) -> Turn[State]:
    match event:
        case Said():
            return _said(state, event)
        case Woke():
            return _woke(state, now)
        case Halted():
            return _halted(state, event)
        case Barred():
            return _barred(state, event)
        case BandsCameOff():
            return ending.came_off(state, event)
        case TimeIsUp():
            return ending.time_is_up(state, event)
        case _:
            return _aside(state, event)


def _aside(state: State, event: Event) -> Turn[State]:
    """Events that change nothing about what is open, or change what was said before."""
    match event:
        case Corrected() if state.phase in fitting.CHECKS and not tally.said_in(state, event.of):
            return fitting.anew(state)
        case Corrected():
            return tally.corrected(state, event)
        case Hurts():
            return hurting.hurts(state, event)
        case TooTight():
            return deciding.too_tight(state, event)
        case Sent():
            return turn(state, Say(common.NOT_WORDS[event.kind]), *open_question(state))
        case WentBack() if state.phase is Phase.WALK:  # "back": from the walk
            return sets.walk_done(state, event.at)
        case WentBack() if state.phase in fitting.CHECKS:
            return fitting.back(state)
        case WentBack() | Cancelled() | Resumed():
            return turn(state, *open_question(state))
        case _:
            return turn(state)


def _open(event: Event) -> Turn[State]:
    if not isinstance(event, Opened):
        raise TypeError(f"a session begins with Opened, not {type(event).__name__}")
    brief = event.brief
    if brief.gentle and brief.number == 1:
        brief = replace(brief, exercises=brief.exercises[:1])
    state = State(brief, fit_at=event.at)
    began = Record(SessionStarted(event.at, brief.session, brief.number, brief.plan_name))
    off_at = brief.bands_off_at
    if off_at is not None and event.at < on_again_at(off_at):  # of a session that has only just ended
        state = replace(state, phase=Phase.BREAK, after=After.REFIT, off_at=off_at)
        return turn(
            state,
            *state.lesson,
            Say(words.OFF_JUST_NOW.format(minutes=timing.minutes_off(state))),
            effects=(began,),
        )
    return turn(state, *state.lesson, fitting.ask(state), effects=(began,))


def _halted(state: State, event: Halted) -> Turn[State]:
    return Turn(None, (), (Record(SessionEnded(event.at, state.brief.session, event.why)),))


def _barred(state: State, event: Barred) -> Turn[State]:
    """No more training: over at once, but with bands on only once they are off."""
    if state.on_at is None:
        return Turn(None, (), (Record(SessionEnded(event.at, state.brief.session, event.why)),))
    if state.phase is Phase.OFF:  # they are to come off already, and that was said
        return turn(replace(state, after=After.END, why=state.why if state.after is After.END else event.why))
    state = replace(state, phase=Phase.OFF, after=After.END, why=event.why, rest_until=None)
    return turn(state, coming_off.off(state, words.HURTS_OFF))


def _said(state: State, event: Said) -> Turn[State]:
    kind = (event.to or "").split(".")[0]
    if kind == "reps":
        return counting.tapped(state, event)
    if kind == "which" and event.message is not None:  # typed as a reply to it, so anything may stand there
        return counting.typed(state, replace(event, to=None))
    if kind == "which":
        return which_set.which(state, event)
    if hurting.says_went_on(state, event):
        state = hurting.went_on(state)
    if kind == "done" and any(one.no == int((event.to or "").split(".")[-1]) for one in state.counted):
        return counting.replied(state, event)
    if kind and not _is_open(state, event.to):
        return turn(state, Say(words.STALE), *open_question(state))
    return _about_bands(state, event) or all_right.said(state, event) or _by_phase(state, event)


def _about_bands(state: State, event: Said) -> Turn[State] | None:
    """Words about the bands that nobody asked for: off in the middle of something, or on in the break."""
    if state.on_at is not None and state.phase is Phase.WALK and _off_on_a_walk(state, event.text):
        return ending.back_and_off(state, event.at)
    off = off_unasked(event.text) or (plainly_off(event.text) and not state.maybe_on)
    if state.on_at is not None and state.phase is not Phase.OFF and off:
        return coming_off.said_unasked(state)
    if state.phase in MOVES and state.on_at is not None and looking.says_moved(event.text):
        return deciding.moved(state, event)
    if state.phase in (Phase.BREAK, Phase.COUNT) and going_on.says_on(event.text):
        return ending.on_too_early(state, event.at)
    return None


def _off_on_a_walk(state: State, text: str) -> bool:
    """Whether the walk is over and the bands are off; once its minutes are over, a plain "off" says so, too."""
    told = state.asked_quiet_at is not None
    return off_unasked(text) or (told and taken_off(text, asked=False) is Off.BOTH)


def _by_phase(state: State, event: Said) -> Turn[State]:
    match state.phase:
        case Phase.FIT | Phase.TIGHT | Phase.REFILL | Phase.NAIL | Phase.WARMTH | Phase.FEEL:
            return (
                too_soon.in_check(state, event) or counting.late(state, event) or fitting.said(state, event)
            )
        case Phase.SET | Phase.WALK if too_soon.before_go(state, event):
            return too_soon.left_out(state, event)
        case Phase.SET if sets.says_done(event.text):
            return sets.set_done(state, event.at)
        case Phase.WALK if sets.says_back(event.text):
            return sets.walk_done(state, event.at)
        case Phase.WALK if (said := MINUTES.fullmatch(event.text.strip())) is not None:
            return sets.walk_done(state, event.at, float(said[1].replace(",", ".")))
        case Phase.WALK:
            return turn(state, *open_question(state))
        case Phase.SET | Phase.REST:
            return counting.typed(state, event)
        case Phase.PAUSE | Phase.BURN:
            return hurting.said(state, event)
        case Phase.OFF | Phase.BREAK | Phase.COUNT:
            return ending.said(state, event)


def _is_open(state: State, question: str | None) -> bool:
    """Whether a button belongs to something that is asked just now."""
    return question in {reply.asks for reply in open_question(state)}


def open_question(state: State) -> tuple[Say, ...]:
    """What is asked just now, to be put again."""
    match state.phase:
        case Phase.FIT | Phase.TIGHT | Phase.REFILL | Phase.NAIL | Phase.WARMTH | Phase.FEEL:
            return (fitting.ask(state),)
        case Phase.SET | Phase.WALK:
            return (sets.ask(state),)
        case Phase.PAUSE | Phase.BURN:
            return (hurting.ask(state),)
        case Phase.OFF:
            return (coming_off.off(state, words.BANDS_OFF), *_missing_count(state))
        case Phase.REST | Phase.COUNT | Phase.BREAK:
            return _missing_count(state) or _left(state)


def _missing_count(state: State) -> tuple[Say, ...]:
    return (sets.ask_reps(state, words.REPS_LAST),) if lacking(state) is not None else ()


def _left(state: State) -> tuple[Say, ...]:
    return (ending.ask_left(state),) if state.phase is not Phase.REST and ending.left_open(state) else ()


def _woke(state: State, now: datetime) -> Turn[State]:
    """The time has come; an early or needless wake-up says nothing."""
    quiet = turn(state)
    if quiet.wake_at is None or now < quiet.wake_at:
        return quiet
    match state.phase:
        case Phase.REST:
            return sets.go(state, now)
        case Phase.SET | Phase.WALK:
            return sets.went_quiet(state, now)
        case Phase.PAUSE:
            return hurting.silent(state, now)
        case Phase.BREAK:
            return ending.break_over(state, now)
        case Phase.FIT if state.on_at is None:
            return going_on.no_word(state, now)
        case phase if phase in timing.ASKING and state.on_at is not None:
            return coming_off.went_quiet(state, now, open_question(state))
        case Phase.COUNT if lacking(state) is None:
            return ending.worked(state, now)
        case _:
            return coming_off.lapsed(state, now)
