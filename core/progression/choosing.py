"""Which reachable load comes next for open sets: the one with the best chance of 25-40, within bounds.

The chance of a load falls with its distance from theta on the log scale and with nothing else, so the best
load is the nearest one. The choice therefore depends on reps through theta alone; how large the chance is, by
the client's own spread, is told with the advice.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.plans import OPEN_AIMS
from core.progression.prior import MIDDLE, SLOPE
from core.progression.records import Reason
from core.resistance import Ladder, Loads, Resistance, Scale
from core.units import Load

AIM = OPEN_AIMS[0]
MOST_UP = math.log(1.30)  # never more than 30 % heavier at once; own caution, no source
MOST_OF_MAX = math.log(0.50)  # never above half of the maximum: Patterson et al. 2019 give 20-40 %
HOLD_FOR = 0.02  # a change must come nearer by this much, log load; own judgement, no source
FOUND_VAR = 0.04**2  # theta known to 4 %: the load is found, and it rises one step at a time
EASED_REPS = 36  # aimed at instead of the middle when coming back; own caution, no source
EXACT = 1e-9  # rounding of logarithms is no difference


class Limit(StrEnum):
    """What kept the load from rising further."""

    NONE = "none"
    CAUTION = "caution"
    TOP = "top"
    TOO_FEW = "too_few"
    STEP = "step"
    HALF_OF_MAX = "half_of_max"


@dataclass(frozen=True, slots=True, order=True)
class Bounds:
    """The highest place allowed, and why not higher; `index` into the reachable loads, -1: none allowed."""

    index: int
    limit: Limit


@dataclass(frozen=True, slots=True)
class Choice:
    """`index` into the reachable loads, and why. `pause`: nothing at hand is light enough."""

    index: int
    reason: Reason
    pause: bool = False


NONE_FITS = Choice(0, Reason.BOTTOM_OF_EQUIPMENT, pause=True)


def bounds(places: Scale, resistance: Resistance, last: float | None, found: bool) -> Bounds:
    """How heavy the next load may be after one at place `last` (None: the first session)."""
    caps = [Bounds(len(places.x) - 1, Limit.TOP)]
    if isinstance(resistance, Loads) and resistance.one_rm is not None:
        half = math.log(resistance.one_rm.kilograms) + MOST_OF_MAX
        caps.append(Bounds(reach(places, half), Limit.HALF_OF_MAX))
    if last is not None:
        caps.append(Bounds(reach(places, last + MOST_UP), Limit.STEP))
        if found or isinstance(resistance, Ladder):
            caps.append(Bounds(reach(places, last) + 1, Limit.NONE))
    return min(caps)


def reach(places: Scale, x: float) -> int:
    """The index of the heaviest load not above place `x`, -1: all are above."""
    return sum(1 for place in places.x if place <= x + EXACT) - 1


def nearest(places: Scale, theta: float) -> int:
    """The reachable place nearest to theta; of two equally near, the lighter."""
    return min(range(len(places.x)), key=lambda at: (round(abs(places.x[at] - theta), 9), at))


def easiest_fit(off: Sequence[float], eased: float = 0.0) -> int:
    """The index of what is nearest to the wanted difficulty, `eased` below the usual one; `off` as in `Client`."""
    return min(range(len(off)), key=lambda at: (round(abs(off[at] + eased), 9), at))


def best(places: Scale, off: Sequence[float], last: Load | str | None) -> int:
    """The nearest to what brings 31.5 reps, unless the last one is nearly as near."""
    goal = easiest_fit(off)
    if last is None or last not in places.names:
        return goal
    at = places.names.index(last)
    still_off = (at < goal and off[goal] <= 0) or (at > goal and off[goal] >= 0)
    if still_off and any(places.guessed):
        return goal  # even the harder one is too easy, or the easier one too hard: no reason to stay
    return at if abs(off[at]) - abs(off[goal]) <= HOLD_FOR else goal


EASED = (math.log(EASED_REPS) - MIDDLE) / SLOPE  # the same as a place, log load


def eased(x: float) -> float:
    """The place for a session that is to be easier than at `x`."""
    return x - EASED
