"""Limbs with their side: what screening closes, what a clearance opens, where a movement's bands would sit."""

from collections.abc import Collection, Mapping
from dataclasses import replace
from enum import StrEnum
from types import MappingProxyType

from core.plans import Exercise, Plan, Region, Side


class Limb(StrEnum):
    """Stored."""

    LEFT_ARM = "left_arm"
    RIGHT_ARM = "right_arm"
    LEFT_LEG = "left_leg"
    RIGHT_LEG = "right_leg"

    @property
    def region(self) -> Region:
        """Arms or legs."""
        return Region.ARMS if self in ARMS else Region.LEGS

    @property
    def side(self) -> Side:
        """Left or right."""
        return Side.LEFT if self in (Limb.LEFT_ARM, Limb.LEFT_LEG) else Side.RIGHT


ARMS = frozenset({Limb.LEFT_ARM, Limb.RIGHT_ARM})
LEGS = frozenset({Limb.LEFT_LEG, Limb.RIGHT_LEG})
ALL = ARMS | LEGS
PAIRS: Mapping[Region, frozenset[Limb]] = MappingProxyType({Region.ARMS: ARMS, Region.LEGS: LEGS})


def limbs_of(region: Region, side: Side) -> tuple[Limb, ...]:
    """The limbs that carry a band, left first."""
    of_region = [limb for limb in Limb if limb.region is region]
    return tuple(limb for limb in of_region if side in (Side.BOTH, limb.side))


# --- what is open, as stored -----------------------------------------------------------------------------
def opened(places: Collection[str]) -> frozenset[Limb]:
    """The limbs of stored names: a pair ("arms") or a single limb ("right_arm"). Raises ValueError."""
    found: set[Limb] = set()
    for place in places:
        found |= PAIRS[Region(place)] if place in set(Region) else {Limb(place)}
    return frozenset(found)


def places_of(limbs: Collection[Limb]) -> tuple[str, ...]:
    """The shortest stored names of these limbs: a whole pair by its region, arms before legs."""
    names: list[str] = []
    for region, pair in PAIRS.items():
        there = [limb.value for limb in Limb if limb in pair and limb in limbs]
        names += [region.value] if len(there) == len(pair) else there
    return tuple(names)


# --- what may be done on them ----------------------------------------------------------------------------
def banded(exercise: Exercise) -> frozenset[Limb]:
    """Every limb that would wear a band for this movement."""
    return frozenset(limb for side in exercise.sides for limb in limbs_of(exercise.region, side))


def on_open_limbs(exercise: Exercise, limbs: Collection[Limb]) -> Exercise | None:
    """The movement with bands on these limbs only: one-sided work keeps its open sides; None: it must rest."""
    if banded(exercise) <= set(limbs):
        return exercise
    one_sided = [side for side in exercise.sides if side is not Side.BOTH]
    sides = tuple(side for side in one_sided if set(limbs_of(exercise.region, side)) <= set(limbs))
    return replace(exercise, sides=sides) if sides else None


def plan_on(plan: Plan, limbs: Collection[Limb]) -> Plan | None:
    """The plan with bands on these limbs only; None: nothing of it is left."""
    kept = tuple(one for each in plan.exercises if (one := on_open_limbs(each, limbs)) is not None)
    return replace(plan, exercises=kept) if kept else None


def resting(plan: Plan, limbs: Collection[Limb]) -> tuple[Exercise, ...]:
    """The movements of a plan that cannot be done on these limbs at all."""
    return tuple(each for each in plan.exercises if on_open_limbs(each, limbs) is None)
