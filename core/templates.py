"""Ready-made plans, to be filled with the loads a client owns."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from core.bodyweight import HIP_BRIDGES, SQUATS, push_ups
from core.movements import MOVEMENTS, Kind
from core.plans import (
    FIXED_AIMS,
    LIMIT_MIN,
    OPEN_AIMS,
    WALK_LIMIT_MIN,
    Exercise,
    Goal,
    Plan,
    Region,
    Rung,
    Scheme,
    Side,
)
from core.units import Load

WALK_MIN = 10  # common practice, no source: 10 min a day, older adults
WALK_KMH = 4.0  # start of a published 12-week trial in people of 60 and more (conference abstract)


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

    @property
    def loaded(self) -> tuple[str, ...]:
        """Movements that need a load."""
        return tuple(movement for movement, _ in self.parts if MOVEMENTS[movement].kind is Kind.LOAD)

    @property
    def one_sided(self) -> bool:
        """Whether a side has to be asked for."""
        return any(MOVEMENTS[movement].one_sided for movement, _ in self.parts)


TEMPLATES = {
    each.name: each
    for each in (
        Template("dumbbells", (("goblet_squat", Scheme.OPEN), ("curl", Scheme.OPEN))),
        Template("one_dumbbell", (("goblet_squat", Scheme.OPEN),)),
        Template("arms", (("curl", Scheme.OPEN), ("floor_press", Scheme.OPEN))),
        Template("rehab_fixed", (("goblet_squat", Scheme.FIXED),), Goal.REHAB),
        Template("travel", (("push_up", Scheme.OPEN), ("chair_squat", Scheme.OPEN))),
        Template("gentle", (("walk", Scheme.WALK), ("chair_squat", Scheme.FIXED)), Goal.HEALTH),
        Template("weaker_side", (("one_arm_row", Scheme.OPEN),)),
    )
}


def rungs_of(movement: str) -> tuple[Rung, ...]:
    """The body-weight ladder of a movement, easiest first."""
    ladders: Mapping[str, tuple[Rung, ...]] = {
        "push_up": push_ups(),
        "chair_squat": SQUATS,
        "hip_bridge": HIP_BRIDGES,
    }
    return ladders.get(movement, ())


def build(
    template: Template,
    owned: tuple[Load, ...],
    start: Mapping[str, Load],
    sides: tuple[Side, ...] = (Side.BOTH,),
    when: str | None = None,
) -> Plan:
    """The plan. Raises ValueError for a start that is not owned, or sets to failure in rehab."""
    exercises = tuple(_exercise(name, scheme, owned, start, sides) for name, scheme in template.parts)
    if template.goal is Goal.REHAB and any(one.scheme is Scheme.OPEN for one in exercises):
        raise ValueError("scheme: sets to failure are not for rehab")
    return Plan(template.name.replace("_", " "), exercises, template.goal, when=when)


def _exercise(
    name: str, scheme: Scheme, owned: tuple[Load, ...], start: Mapping[str, Load], sides: tuple[Side, ...]
) -> Exercise:
    movement = MOVEMENTS[name]
    aims = {Scheme.OPEN: OPEN_AIMS, Scheme.FIXED: FIXED_AIMS, Scheme.WALK: ()}[scheme]
    base = Exercise(name, movement.region, scheme, aims, limit_min=LIMIT_MIN[movement.region])
    if movement.one_sided:
        base = replace(base, sides=sides)
    match movement.kind:
        case Kind.WALK:
            return replace(base, walk_min=WALK_MIN, walk_kmh=WALK_KMH, limit_min=WALK_LIMIT_MIN)
        case Kind.BODYWEIGHT:
            rungs = rungs_of(name)
            return replace(base, rungs=rungs, rung=rungs[0].name if rungs else None)
        case Kind.LOAD:
            load = start[name]
            if load not in owned:
                raise ValueError(f"start: {load} is not among the loads owned")
            return replace(base, load=load, reachable=owned)
