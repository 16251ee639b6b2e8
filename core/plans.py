"""What a client is to do: movements with bands, schemes, loads, limits.

A plan is a value: it is written once, frozen into each session that uses it, and replaced, never edited.
Every movement has its own spell of bands (on, sets, off, at least 3 min off), so arms and legs are never
banded together and a plan for both is simply a plan with several movements.
"""

from dataclasses import dataclass, field
from enum import StrEnum

from core.units import Load


class Region(StrEnum):
    """Where the bands sit. Stored."""

    ARMS = "arms"
    LEGS = "legs"


class Scheme(StrEnum):
    """How the sets are counted. Stored; `open` and `fixed` are also the words of `cuffline advise`."""

    OPEN = "open"  # three sets, each until the form goes
    FIXED = "fixed"  # a set number of reps, four sets
    WALK = "walk"  # minutes at a pace


class Side(StrEnum):
    """Which limb works. Stored."""

    BOTH = "both"
    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Aim:
    """Clean reps wanted in one set, both ends included."""

    low: int
    high: int

    def __str__(self) -> str:
        return str(self.low) if self.low == self.high else f"{self.low}-{self.high}"


# Common practice, no source: three sets to technical failure, each about half of the one before.
OPEN_AIMS = (Aim(25, 40), Aim(10, 20), Aim(5, 10))
# The usual scheme in published trials (Patterson et al. 2019, Front Physiol 10:533): 75 reps in four sets.
FIXED_AIMS = (Aim(30, 30), Aim(15, 15), Aim(15, 15), Aim(15, 15))

# The last set open, where the coach chooses it: more than 15 there raises the load (trial protocol PMC7534706).
FIXED_OPEN_AIMS = (*FIXED_AIMS[:3], Aim(15, 30))  # 30 at most: own caution, no source

REST_S = 30  # common practice, no source; within the 30-60 s of Patterson et al. 2019
TEMPO_S = 4  # one rep at 2 s up and 2 s down: common practice, no source
TEMPOS_S = (3, 4, 6)  # that a coach may choose; slow and even, own choice
GENTLE_SETS = 2  # of a movement in a gentle session; own caution, no source
LIMIT_MIN = {Region.ARMS: 10, Region.LEGS: 10}  # minutes with bands on; own caution, no source
WALK_LIMIT_MIN = 15  # a walk with leg bands; own caution, no source
LONGEST_MIN = {Region.ARMS: 13, Region.LEGS: 18}  # own caution: the alarm then falls within 15 and 20 min
PAIN_CEILING = 3  # 0-10; own caution, no source
HIGHEST_PAIN_CEILING = 5  # only by the coach; pain-monitoring model, from memory (Thomee 1997)


@dataclass(frozen=True, slots=True)
class Rung:
    """One step of a body-weight ladder, easiest first. `fraction` of body mass where published, else None."""

    name: str
    fraction: float | None = None


@dataclass(frozen=True, slots=True)
class Exercise:
    """One movement of a plan, with its own spell of bands.

    `load` is None for body weight and walking; `rung` is None unless body weight. `reachable` holds the
    loads the client owns, ascending; `rungs` the body-weight ladder, easiest first. `sides` is (BOTH,), one
    side, or two sides in working order (weaker first).
    """

    movement: str
    region: Region
    scheme: Scheme
    aims: tuple[Aim, ...] = ()
    load: Load | None = None
    reachable: tuple[Load, ...] = ()
    rung: str | None = None
    rungs: tuple[Rung, ...] = ()
    sides: tuple[Side, ...] = (Side.BOTH,)
    rest_s: int = REST_S
    tempo_s: int = TEMPO_S
    limit_min: int = 10
    walk_min: int = 0
    walk_kmh: float = 0.0

    def __post_init__(self) -> None:
        if not 1 <= self.limit_min <= LONGEST_MIN[self.region]:
            raise ValueError(f"limit_min: at most {LONGEST_MIN[self.region]} min on the {self.region}")
        if self.scheme is Scheme.WALK and self.region is not Region.LEGS:
            raise ValueError("region: walking is done with leg bands")
        if self.scheme is not Scheme.WALK and not self.aims:
            raise ValueError("aims: a movement with reps needs its sets")

    @property
    def doing(self) -> str:
        """What is lifted, as stored: "12.5 kg", a rung's name, or ""."""
        return str(self.load) if self.load is not None else self.rung or ""

    @property
    def open_last(self) -> bool:
        """Whether the coach left the last of the fixed sets open."""
        return self.scheme is Scheme.FIXED and self.aims[-1].high > self.aims[-1].low

    @property
    def to_failure(self) -> bool:
        """Whether any of its sets goes on until the form goes."""
        return self.scheme is Scheme.OPEN or self.open_last


class Goal(StrEnum):
    """Why somebody trains. Stored. Rehab rules out sets to failure."""

    STRENGTH = "strength"
    REHAB = "rehab"
    HEALTH = "health"


@dataclass(frozen=True, slots=True)
class Plan:
    """What the coach gave, as one value. `when` is a recurrence as stored text, None: no fixed days."""

    name: str
    exercises: tuple[Exercise, ...]
    goal: Goal = Goal.STRENGTH
    pain_ceiling: int = PAIN_CEILING
    when: str | None = None
    weeks: int = 8  # review at 6-8 weeks; own caution, no source
    version: int = field(default=1)

    def __post_init__(self) -> None:
        if not self.exercises:
            raise ValueError("exercises: a plan needs at least one movement")
        if not 0 <= self.pain_ceiling <= HIGHEST_PAIN_CEILING:
            raise ValueError(f"pain_ceiling: 0 to {HIGHEST_PAIN_CEILING}")
