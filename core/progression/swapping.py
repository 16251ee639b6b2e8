"""Away from home: the same pattern with other equipment, at a load that should bring about the same reps.

Between two movements only a rough exchange is possible. With both maxima known, the same share of the
maximum is used. Else kilograms are compared (body weight by its fraction), and the guess stays a little on
the light side. The model finds the rest: the first session with the other equipment is a new beginning.
"""

import math
from dataclasses import dataclass

from core.progression.choosing import nearest, reach
from core.resistance import Ladder, Loads, Resistance, scale
from core.units import Load

LIGHTER = 0.90  # of the kilograms when only those are known; own caution, no source


@dataclass(frozen=True, slots=True)
class Setting:
    """A movement of a `pattern` (push, pull, squat, hinge, ...) with its equipment."""

    movement: str
    pattern: str
    resistance: Resistance


def swapped(now: Setting, used: Load | str, other: Setting) -> Load | str:
    """The load or rung of `other` for about the reps of `used` in `now`.

    Raises ValueError when the patterns differ. Without any common measure: the lightest.
    """
    if now.pattern != other.pattern:
        raise ValueError(f"pattern: {other.movement} is no {now.pattern}")
    places = scale(other.resistance)
    share = _share_of_max(now.resistance, used)
    if share is not None and isinstance(other.resistance, Loads) and other.resistance.one_rm is not None:
        return places.names[nearest(places, math.log(share * other.resistance.one_rm.kilograms))]
    goal = _kilograms(now.resistance, used)
    if goal is None:
        return places.names[0]
    return _lighter(other.resistance, LIGHTER * goal)


def _share_of_max(resistance: Resistance, used: Load | str) -> float | None:
    if isinstance(resistance, Loads) and isinstance(used, Load) and resistance.one_rm is not None:
        return used.kilograms / resistance.one_rm.kilograms
    return None


def _kilograms(resistance: Resistance, used: Load | str) -> float | None:
    """What is moved, in kg; None where a fraction or the body mass is missing."""
    if isinstance(used, Load):
        return used.kilograms
    if not isinstance(resistance, Ladder) or resistance.body_mass_kg is None:
        return None
    shares = {rung.name: rung.fraction for rung in resistance.rungs}
    share = shares.get(used)
    return None if share is None else share * resistance.body_mass_kg


def _lighter(other: Resistance, goal_kg: float) -> Load | str:
    """The heaviest at or below the goal, or the lightest there is."""
    places = scale(other)
    if isinstance(other, Loads):
        return places.names[max(0, reach(places, math.log(goal_kg)))]
    known = [
        rung.name
        for rung in other.rungs
        if (kilograms := _kilograms(other, rung.name)) is not None and kilograms <= goal_kg
    ]
    return known[-1] if known else other.rungs[0].name
