"""A movement more, less, or another in its place, in a plan that is under way."""

from collections.abc import Collection
from dataclasses import replace

from core.cuffs.limbs import Limb, on_open_limbs
from core.movements import MOVEMENTS, Kind, Movement
from core.plans import Exercise, Goal, Plan, Rung, Scheme, Side
from core.resistance import is_band
from core.templates import Owned, exercise_of, fits
from core.units import Load

WEAKER_UNKNOWN = (Side.LEFT, Side.RIGHT)  # where the plan says nothing of a weaker side


def owned_in(plan: Plan) -> Owned:
    """All loads that the client owns as far as the plan knows, ascending; without any, the exercise bands."""
    found = {load for one in plan.exercises for load in one.reachable}
    if found:
        return tuple(sorted(found, key=lambda load: load.kilograms))
    return next((one.rungs for one in plan.exercises if is_band(one.doing)), ())


def to_add(plan: Plan, limbs: Collection[Limb], pattern: str = "") -> tuple[Movement, ...]:
    """Movements not yet in the plan that these limbs allow; of this pattern, "": of any."""
    there = {one.movement for one in plan.exercises}
    return tuple(
        one
        for one in MOVEMENTS.values()
        if one.name not in there and pattern in ("", one.pattern) and fits(one, limbs)
    )  # fmt: skip


def with_movement(
    plan: Plan,
    name: str,
    limbs: Collection[Limb],
    at: int | None = None,
    *,
    no_failure: bool = False,
    owned: Owned = (),
    begin: Load | str | None = None,
) -> Plan:
    """The plan with this movement at the place of another (None: at its end), from the lightest load or rung on.

    `owned`: what there is to train with, (): as the plan knows; `begin`: a load or band of these. Raises ValueError
    when the limbs do not allow it, or it needs a load and there is none.
    """
    new = _new(plan, MOVEMENTS[name], owned or owned_in(plan), begin, no_failure=no_failure)
    made = on_open_limbs(new, limbs)
    if made is None:
        raise ValueError("movement: bands would sit where they are not allowed")
    exercises = list(plan.exercises)
    place = len(exercises) if at is None else at
    exercises[place : place + 1] = [made]
    return replace(plan, exercises=tuple(exercises))


def without_movement(plan: Plan, at: int) -> Plan:
    """The plan without the movement at this place. Raises ValueError when it is the only one."""
    return replace(plan, exercises=(*plan.exercises[:at], *plan.exercises[at + 1 :]))


def with_owned(plan: Plan, owned: Owned) -> Plan:
    """The plan with other loads or exercise bands at hand.

    Each movement goes on at the heaviest load that is not above its load of now, else at the lightest; a band
    that is still there stays, else it is the easiest.
    """
    return replace(plan, exercises=tuple(_equipped(one, owned) for one in plan.exercises))


def _equipped(one: Exercise, owned: Owned) -> Exercise:
    if not one.reachable and not is_band(one.doing):
        return one
    loads = tuple(each for each in owned if isinstance(each, Load))
    if loads:
        most = one.load.kilograms if one.load is not None else loads[0].kilograms
        light = [each for each in loads if each.kilograms <= most] or [loads[0]]
        return replace(one, load=light[-1], reachable=loads, rung=None, rungs=())
    bands = tuple(each for each in owned if isinstance(each, Rung))
    kept = one.rung if one.rung in {each.name for each in bands} else bands[0].name
    return replace(one, load=None, reachable=(), rung=kept, rungs=bands)


def _new(
    plan: Plan, movement: Movement, owned: Owned, begin: Load | str | None, *, no_failure: bool
) -> Exercise:
    easiest = owned[0] if owned else None
    begin = begin or (easiest.name if isinstance(easiest, Rung) else easiest)
    start = {movement.name: begin} if movement.kind is Kind.LOAD and begin is not None else {}
    return exercise_of(
        movement.name, _scheme(plan, movement, no_failure), owned, start, _sides(plan, movement)
    )


def _scheme(plan: Plan, movement: Movement, no_failure: bool) -> Scheme:
    """As the plan's other movements; never to failure in rehab or where the clearance forbids it."""
    if movement.kind is Kind.WALK:
        return Scheme.WALK
    others = [one.scheme for one in plan.exercises if one.scheme is not Scheme.WALK]
    careful = no_failure or plan.goal is not Goal.STRENGTH
    return Scheme.FIXED if careful or not others else others[0]


def _sides(plan: Plan, movement: Movement) -> tuple[Side, ...]:
    """The working order of the plan's other one-sided work on these limbs."""
    known = [
        one.sides for one in plan.exercises if one.region is movement.region and Side.BOTH not in one.sides
    ]
    return known[0] if known else WEAKER_UNKNOWN
