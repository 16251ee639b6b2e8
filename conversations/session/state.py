"""What a session remembers. Stored as JSON: fields may be added with a default, never renamed."""

from dataclasses import dataclass, field, replace
from datetime import datetime
from enum import StrEnum
from typing import Any

from conversations.protocol import Choice, Countdown, Effect, Say, Turn
from conversations.words import common
from core.cuffs import Limb, limbs_of
from core.plans import GENTLE_SETS, Exercise, Side


class Phase(StrEnum):
    """What is open just now. Stored."""

    FIT = "fit"  # bands are to go on
    TIGHT = "tight"
    REFILL = "refill"
    NAIL = "nail"  # the spot cannot be seen: fingernail (arms) or warmth (legs)
    WARMTH = "warmth"  # nor can the nail: warmth and feeling (arms)
    FEEL = "feel"
    SET = "set"
    REST = "rest"
    OFF = "off"  # bands are to come off
    BREAK = "break"  # 3 min without bands
    PAUSE = "pause"  # "it hurts": where?
    BURN = "burn"  # it was a burn: go on or stop
    COUNT = "count"  # all is done but a count is missing
    WALK = "walk"


class After(StrEnum):
    """What follows once the bands are off. Stored."""

    NEXT = "next"  # the break, then the next movement or the end
    REFIT = "refit"  # the break, then the same movement again
    END = "end"  # the session is over


@dataclass(frozen=True, slots=True)
class Brief:
    """What a session needs to know, frozen when it begins.

    `names`: movement id -> what the client calls it. `number` counts the client's sessions from 1. `expected`
    per movement: reps of each set, from the load model ([]: unknown). `sets`: at most so many (gentle).
    `bands`: region -> letters of the bands they own for it; `last_band`: region -> the one of the last session;
    `marks`: letter -> where it is closed; `clips`: movement -> the coach's own film of it. `pulse_below`: beats a
    minute to walk below, None: no limit. `bands_off_at`: when the last bands came off, in whichever session.
    `unseen_limbs`: those that the coach lets train without a visible refill.
    """

    session: str
    number: int
    exercises: tuple[Exercise, ...]
    names: dict[str, str] = field(default_factory=dict)
    expected: dict[str, tuple[int, ...]] = field(default_factory=dict)
    cues: dict[str, str] = field(default_factory=dict)
    teaching: dict[str, str] = field(default_factory=dict)
    gentle: bool = False
    last_check_slow: bool = False
    unseen_limbs: tuple[str, ...] = ()
    pain_ceiling: int = 3
    plan_name: str = ""
    bands: dict[str, tuple[str, ...]] = field(default_factory=dict)
    last_band: dict[str, str] = field(default_factory=dict)
    marks: dict[str, str] = field(default_factory=dict)
    clips: dict[str, str] = field(default_factory=dict)
    bands_off_at: datetime | None = None
    pulse_below: int | None = None


@dataclass(frozen=True, slots=True)
class Counted:
    """One set: when it ended, its reps per side so far, the last message about it and that of each side."""

    no: int
    done_at: datetime
    rest_s: float | None = None
    reps: tuple[int, ...] = ()
    rough: bool = False
    blank: bool = False
    message: int | None = None
    noted_at: datetime | None = None
    reps_left: int | None = None
    said_by: tuple[int | None, ...] = ()


@dataclass(frozen=True, slots=True)
class State:
    """One session under way."""

    brief: Brief
    phase: Phase = Phase.FIT
    exercise: int = 0
    spell: int = 1
    on_at: datetime | None = None
    check_no: int = 1
    band: str = ""  # the letter of the one that is on
    failed_checks: int = 0
    refitted_loose: bool = False
    limb: int = 0
    tightness: int | None = None
    refills: tuple[str, ...] = ()
    loose: bool = False
    rechecked: bool = False
    set_no: int = 1
    set_at: datetime | None = None
    walk_for: int | None = None  # minutes of the walk under way, where the limit leaves fewer than planned
    asked_quiet_at: datetime | None = None
    rest_until: datetime | None = None
    counted: tuple[Counted, ...] = ()
    tens: int | None = None
    guess: bool = False
    between: int | None = None  # a number that fits two sets
    waiting: tuple[
        int, ...
    ] = ()  # all such numbers that came before anybody could see the question, oldest first
    paused_at: datetime | None = None
    resume: Phase | None = None
    after: After = After.NEXT
    why: str = "done"
    off_at: datetime | None = None
    asked_both: bool = False  # the bands are to come off, and "both off?" was asked
    heard_at: datetime | None = None
    fit_at: datetime | None = None  # when the bands of this spell were asked for
    maybe_on: bool = False  # nobody said that they are on; they are counted as if they were
    worn: bool = False  # bands were on in this session, by the client's own word
    hurt_said: str = ""  # word for word
    cut: bool = False  # bands came off at their limit, so that a movement was not done whole

    @property
    def walk_minutes(self) -> int:
        """Of the walk under way: as planned, or what the limit left of it."""
        return self.doing.walk_min if self.walk_for is None else self.walk_for

    @property
    def doing(self) -> Exercise:
        """The movement under way."""
        return self.brief.exercises[self.exercise]

    @property
    def name(self) -> str:
        """What the client calls it."""
        return self.brief.names.get(self.doing.movement, self.doing.movement)

    @property
    def lesson(self) -> tuple[Say, ...]:
        """How the movement is done, told before its bands go on; nothing when there is nothing to tell."""
        text = self.brief.teaching.get(self.doing.movement, "")
        clip = self.brief.clips.get(self.doing.movement)
        return (Say(text, clip=clip),) if text or clip else ()

    @property
    def spell_id(self) -> str:
        """Names this time with the bands on, unique in the session."""
        return f"{self.exercise + 1}.{self.spell}"

    @property
    def sets(self) -> int:
        """How many sets this movement has today: fewer in a gentle session."""
        return min(GENTLE_SETS, len(self.doing.aims)) if self.brief.gentle else len(self.doing.aims)

    @property
    def check_id(self) -> str:
        """Distinguishes the questions of one check from those of another."""
        return f"{self.spell_id}.{self.check_no}.{self.limb}"

    @property
    def set_id(self) -> str:
        """Distinguishes one set from another."""
        return f"{self.exercise + 1}.{self.set_no}"

    def expected(self, set_no: int) -> int:
        """Reps to expect of a set: by the model, else the top of its range."""
        known = self.brief.expected.get(self.doing.movement, ())
        return known[set_no - 1] if len(known) >= set_no else self.doing.aims[set_no - 1].high


STOP = Choice(common.STOP, "stop")


def say(text: str, asks: str, *choices: Choice, stop: bool = True, **more: Any) -> Say:
    """A question of the session; Stop is always there."""
    return Say(text, (*choices, STOP) if stop else choices, asks, **more)


def choices(pairs: tuple[tuple[str, str], ...]) -> tuple[Choice, ...]:
    """Buttons from (label, value) pairs."""
    return tuple(Choice(label, value) for label, value in pairs)


def turn(state: State | None, *replies: Say, effects: tuple[Effect, ...] = ()) -> Turn[State]:
    """The state, what is said, what is to be done; the wake-up time follows from the state."""
    return Turn(state, replies, effects, None if state is None else wake_at(state))


def wake_at(state: State) -> datetime | None:
    """The next time at which something must be said without being asked."""
    from conversations.session import timing  # timing reads the state; the state only asks it for a time

    return timing.wake_at(state)


def countdown(state: State) -> tuple[Effect, ...]:
    """Show the rest running down."""
    return () if state.rest_until is None else (Countdown(state.rest_until),)


def last_counted(state: State) -> Counted | None:
    """The last set that ended."""
    return state.counted[-1] if state.counted else None


def with_counted(state: State, one: Counted) -> State:
    """The state with this set's count replaced or added."""
    others = tuple(other for other in state.counted if other.no != one.no)
    return replace(state, counted=tuple(sorted((*others, one), key=lambda each: each.no)))


def is_full(state: State, one: Counted) -> bool:
    """Whether this set's reps are known for every side."""
    return one.blank or len(one.reps) == len(state.doing.sides)


def lacking(state: State) -> Counted | None:
    """The last ended set whose reps are not known yet."""
    return next((one for one in reversed(state.counted) if not is_full(state, one)), None)


def banded_limbs(state: State) -> tuple[Limb, ...]:
    """The limbs that wear a band for this movement: one for one-sided work on one side, else both."""
    sides = state.doing.sides
    return limbs_of(state.doing.region, sides[0] if len(sides) == 1 else Side.BOTH)
