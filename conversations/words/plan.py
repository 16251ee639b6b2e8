"""A plan in words."""

from conversations.words.movements import NAMES
from core.plans import Exercise, Plan, Region, Scheme, Side
from core.resistance import is_band

LIMB = {Region.ARMS: "arm", Region.LEGS: "leg"}
AGAINST = "against the {band}"
PULLED = "The {bands} is an exercise band: it is moved against, and never goes around the limb."
SIDE_ONLY = "{side} {limb} only"
TEMPO = "{half:g} s up, {half:g} s down"
SIDES = "{first} {limb} first, then {second}"


def plan_text(plan: Plan) -> str:
    """One line a movement, and which band is no restriction band."""
    lines = [f"- {exercise_text(one)}" for one in plan.exercises]
    bands = dict.fromkeys(one.doing for one in plan.exercises if is_band(one.doing))
    note = [PULLED.format(bands=" or ".join(bands))] if bands else []
    return "\n".join([plan.name, *lines, *note])


def doing_text(doing: str) -> str:
    """ "12 kg", "on the floor", or "against the red band"."""
    return AGAINST.format(band=doing) if is_band(doing) else doing


def exercise_text(one: Exercise) -> str:
    """ "Goblet squat, legs, 12 kg: 25-40, 10-20, 5-10"."""
    name = NAMES.get(one.movement, one.movement.replace("_", " "))
    parts = [name, f"bands on the {one.region}"]
    if one.scheme is Scheme.WALK:
        return ", ".join([*parts, f"{one.walk_min} min at about {one.walk_kmh:g} km/h"])
    if one.doing:
        parts.append(doing_text(one.doing))
    if one.sides != (Side.BOTH,):
        parts.append(sides_text(one))
    return f"{', '.join(parts)}: {', '.join(str(aim) for aim in one.aims)}"


def tempo(seconds: int) -> str:
    """How fast one rep is: "2 s up, 2 s down"."""
    return TEMPO.format(half=seconds / 2)


def sides_text(one: Exercise) -> str:
    """ "left arm first, then right", or "left arm only"."""
    sides, limb = [side.value for side in one.sides], LIMB[one.region]
    if len(sides) == 1:
        return SIDE_ONLY.format(side=sides[0], limb=limb)
    return SIDES.format(first=sides[0], limb=limb, second=sides[1])
