"""Away from the equipment: each movement of a plan for one of the same pattern that needs none."""

from dataclasses import dataclass, replace

from core.movements import MOVEMENTS, Movement
from core.plans import Exercise, Plan, Side
from core.progression.swapping import Setting, swapped
from core.resistance import Ladder, Loads, Resistance

ONE_SIDE = ((Side.LEFT,), (Side.RIGHT,))


@dataclass(frozen=True, slots=True)
class Swap:
    """One movement of the plan and what stands for it meanwhile; None: nothing does, so it rests."""

    was: str
    now: str | None


def swaps(plan: Plan) -> tuple[Swap, ...]:
    """What the travel plan does with each movement, in the plan's order."""
    return tuple(
        Swap(one.movement, other.movement if (other := _without(one)) else None) for one in plan.exercises
    )


def travel_plan(plan: Plan) -> Plan | None:
    """The plan without equipment, on the same days, with the same schemes and limits; None: nothing is left.

    A movement that was swapped begins with its easiest variation that should bring about the same reps.
    """
    kept = tuple(other for one in plan.exercises if (other := _without(one)) is not None)
    return replace(plan, exercises=kept) if kept else None


def _without(exercise: Exercise) -> Exercise | None:
    """The same movement when it needs no equipment, its stand-in, or None.

    A movement for one side only stays on that side, as the other may have to rest.
    """
    movement = MOVEMENTS.get(exercise.movement)
    if movement is None or not movement.equipment:
        return exercise
    other = stand_in(movement, one_sided=exercise.sides in ONE_SIDE)
    return None if other is None else _swapped(exercise, movement, other)


def stand_in(movement: Movement, *, one_sided: bool = False) -> Movement | None:
    """The first movement of the same pattern and limbs that needs nothing; one with a ladder is preferred."""
    fitting = [
        one
        for one in MOVEMENTS.values()
        if (one.pattern, one.region, one.one_sided) == (movement.pattern, movement.region, one_sided)
        and not one.equipment
    ]
    return min(fitting, key=lambda one: not one.rungs, default=None)


def _swapped(exercise: Exercise, movement: Movement, other: Movement) -> Exercise:
    rung = _rung(exercise, movement, other) if other.rungs else None
    return replace(
        exercise,
        movement=other.name,
        load=None,
        reachable=(),
        rung=rung,
        rungs=other.rungs,
        sides=exercise.sides if other.one_sided else (Side.BOTH,),
    )


def _rung(exercise: Exercise, movement: Movement, other: Movement) -> str:
    now, used = _resistance(exercise), exercise.load or exercise.rung
    if now is None or used is None:
        return other.rungs[0].name
    setting = Setting(movement.name, movement.pattern, now)
    found = swapped(setting, used, Setting(other.name, other.pattern, Ladder(other.rungs)))
    return str(found)


def _resistance(exercise: Exercise) -> Resistance | None:
    if exercise.reachable:
        return Loads(exercise.reachable)
    return Ladder(exercise.rungs) if exercise.rungs else None


def needs_equipment(plan: Plan) -> bool:
    """Whether anything in the plan would be swapped."""
    return any(one.was != one.now for one in swaps(plan))
