"""Ready-made plans, to be filled with the loads a client owns."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from types import MappingProxyType

from core.cuffs.limbs import ALL, PAIRS, Limb, plan_on, resting
from core.movements import MOVEMENTS, Kind, Movement
from core.plans import (
    FIXED_AIMS,
    LIMIT_MIN,
    OPEN_AIMS,
    WALK_LIMIT_MIN,
    Aim,
    Exercise,
    Goal,
    Plan,
    Region,
    Rung,
    Scheme,
    Side,
)
from core.units import KG_PER_LB, Load, Unit
from core.walking import START_KMH

WALK_MIN = 10  # common practice, no source: 10 min a day, older adults
AIMS: Mapping[Scheme, tuple[Aim, ...]] = MappingProxyType(
    {Scheme.OPEN: OPEN_AIMS, Scheme.FIXED: FIXED_AIMS, Scheme.WALK: ()}
)
SHARE_OF_MAX = Decimal("0.3")  # of the one-repetition maximum; common practice, no source
MOST_OF_MAX = Decimal("0.5")  # never above it: Patterson et al. 2019 give 20-40 %


Owned = tuple[Load, ...] | tuple[Rung, ...]  # what one has: loads, or exercise bands, easiest first


@dataclass(frozen=True, slots=True)
class Template:
    """A plan without loads: movements with their schemes."""

    name: str
    parts: tuple[tuple[str, Scheme], ...]
    goal: Goal = Goal.STRENGTH

    @property
    def regions(self) -> frozenset[Region]:
        """Where bands would sit."""
        return frozenset(MOVEMENTS[movement].region for movement, _ in self.parts)

    def fits(self, limbs: Collection[Limb]) -> bool:
        """Whether each movement can be done with bands on these limbs: on both of a pair, or on one side of it."""
        return all(fits(MOVEMENTS[movement], limbs) for movement, _ in self.parts)

    def sides(self, limbs: Collection[Limb]) -> frozenset[Side]:
        """The sides that its one-sided movements may work on."""
        one_sided = {
            MOVEMENTS[movement].region for movement, _ in self.parts if MOVEMENTS[movement].one_sided
        }
        return frozenset(limb.side for limb in limbs if limb.region in one_sided)

    @property
    def loaded(self) -> tuple[str, ...]:
        """Movements that need a load."""
        return tuple(movement for movement, _ in self.parts if MOVEMENTS[movement].kind is Kind.LOAD)

    @property
    def one_sided(self) -> bool:
        """Whether a side has to be asked for."""
        return any(MOVEMENTS[movement].one_sided for movement, _ in self.parts)

    @property
    def to_failure(self) -> bool:
        """Whether any set is to be done until the form goes."""
        return any(scheme is Scheme.OPEN for _, scheme in self.parts)


_ALL = (
    Template("dumbbells", (("goblet_squat", Scheme.OPEN), ("curl", Scheme.OPEN))),
    Template("one_dumbbell", (("goblet_squat", Scheme.OPEN),)),
    Template("arms", (("curl", Scheme.OPEN), ("floor_press", Scheme.OPEN))),
    Template("rehab_fixed", (("goblet_squat", Scheme.FIXED),), Goal.REHAB),
    Template("rehab_arms", (("curl", Scheme.FIXED),), Goal.REHAB),
    Template("travel", (("push_up", Scheme.OPEN), ("chair_squat", Scheme.OPEN))),
    Template("gentle", (("walk", Scheme.WALK), ("chair_squat", Scheme.FIXED)), Goal.HEALTH),
    Template("weaker_side", (("one_arm_row", Scheme.OPEN),)),
    Template("one_arm", (("one_arm_row", Scheme.OPEN), ("one_arm_curl", Scheme.OPEN))),
    Template("one_leg", (("split_squat", Scheme.OPEN),)),
    Template("rehab_one_arm", (("one_arm_curl", Scheme.FIXED),), Goal.REHAB),
    Template("rehab_one_leg", (("split_squat", Scheme.FIXED),), Goal.REHAB),
)
TEMPLATES: Mapping[str, Template] = MappingProxyType({each.name: each for each in _ALL})


def build(
    template: Template,
    owned: Owned,
    start: Mapping[str, Load | str],
    sides: tuple[Side, ...] = (Side.BOTH,),
    when: str | None = None,
    limbs: Collection[Limb] = ALL,
    goal: Goal | None = None,
) -> Plan:
    """The plan. `owned` ascending; `start` has a load (of exercise bands: a name) for each of `template.loaded`; `goal` None: its own.

    `limbs`: those that may wear a band; one-sided work keeps its open sides. Raises ValueError naming `regions`,
    `scheme` (sets to failure in rehab), `start` or `sides`.
    """
    goal = goal or template.goal
    if goal is Goal.REHAB and template.to_failure:
        raise ValueError("scheme: sets to failure are not for rehab")
    exercises = tuple(exercise_of(name, scheme, owned, start, sides) for name, scheme in template.parts)
    plan = Plan(template.name.replace("_", " "), exercises, goal, when=when)
    if resting(plan, limbs):
        raise ValueError("regions: bands would sit where they are not allowed")
    return plan_on(plan, limbs) or plan


def fits(movement: Movement, limbs: Collection[Limb]) -> bool:
    """Whether it can be done with bands on these limbs: on both of a pair, one-sided work on either."""
    pair = PAIRS[movement.region]
    return bool(pair & set(limbs)) if movement.one_sided else pair <= set(limbs)


def without_failure(plan: Plan) -> Plan:
    """The same plan with fixed sets of a set number where it has sets until the form goes."""
    fixed = tuple(
        replace(one, scheme=Scheme.FIXED, aims=FIXED_AIMS) if one.to_failure else one
        for one in plan.exercises
    )
    return replace(plan, exercises=fixed)


def exercise_of(
    name: str, scheme: Scheme, owned: Owned, start: Mapping[str, Load | str], sides: tuple[Side, ...]
) -> Exercise:
    """One movement as a plan begins with it. Raises ValueError naming `start` or `sides`."""
    movement = MOVEMENTS[name]
    limit = LIMIT_MIN[movement.region]
    base = Exercise(
        name, movement.region, scheme, AIMS[scheme], sides=_sides(movement, sides), limit_min=limit
    )
    match movement.kind:
        case Kind.WALK:
            return replace(base, walk_min=WALK_MIN, walk_kmh=START_KMH, limit_min=WALK_LIMIT_MIN)
        case Kind.BODYWEIGHT:
            rungs = movement.rungs
            return replace(base, rungs=rungs, rung=rungs[0].name if rungs else None)
        case Kind.LOAD:
            return _with(base, owned, start)


def _sides(movement: Movement, sides: tuple[Side, ...]) -> tuple[Side, ...]:
    if not movement.one_sided:
        return (Side.BOTH,)
    if not sides or Side.BOTH in sides or len(set(sides)) != len(sides):
        raise ValueError(f"sides: {movement.name} works left, right, or one after the other")
    return sides


def _with(base: Exercise, owned: Owned, start: Mapping[str, Load | str]) -> Exercise:
    """The movement with its load of those owned, or with its exercise band."""
    loads = tuple(one for one in owned if isinstance(one, Load))
    bands = tuple(one for one in owned if isinstance(one, Rung))
    used = start.get(base.movement)
    if used is None:
        raise ValueError(f"start: {base.movement} has no load")
    if isinstance(used, Load) and used in loads:
        return replace(base, load=used, reachable=loads)
    if isinstance(used, str) and used in {one.name for one in bands}:
        return replace(base, rung=used, rungs=bands)
    raise ValueError(f"start: {used} is not among the loads owned")


def from_maximum(maximum: Load, owned: tuple[Load, ...]) -> Load | None:
    """The heaviest load owned of at most 30 % of a one-repetition maximum, else the lightest.

    None when there is none, or even the lightest is above 50 % of that maximum: too heavy to begin with.
    """
    top = _exact_kg(maximum)
    light = [load for load in owned if _exact_kg(load) <= top * SHARE_OF_MAX]
    if light:
        return max(light, key=_exact_kg)
    lightest = min(owned, key=_exact_kg, default=None)
    return lightest if lightest is not None and _exact_kg(lightest) <= top * MOST_OF_MAX else None


def _exact_kg(load: Load) -> Decimal:
    """In exact kg, so that 12 kg is not above 30 % of 40 kg."""
    return load.value * (KG_PER_LB if load.unit is Unit.LB else Decimal(1))
