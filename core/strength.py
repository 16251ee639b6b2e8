"""Estimates of the one-repetition maximum (1RM) from a set to failure, and where they stop being valid.

All published formulas agree near 5-10 reps and part beyond. At the 25-40 reps of a light banded set they
disagree by a factor of four, Brzycki's is undefined at 37 reps, and none is validated there; so this module
refuses anything above `MOST_REPS`. Use reps at an equal load as the strength trend instead.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Decimal
from enum import StrEnum
from statistics import median

from core.units import Load

# Linear formulas hold to about 10 reps (Reynolds et al. 2006, JSCR 20:584).
MOST_REPS = 10
# Handbook rep tables are called accurate above 75 % of the maximum, which is 10 reps.
ERROR = 0.12  # total error 10.6-13.5 % of the mean (Hutchins & Gearhart 2010)


class Formula(StrEnum):
    """Published estimates, by author. Stored."""

    EPLEY = "epley"
    BRZYCKI = "brzycki"
    LANDER = "lander"
    LOMBARDI = "lombardi"
    MAYHEW = "mayhew"
    OCONNER = "oconner"
    WATHAN = "wathan"
    ADAMS = "adams"


MULTIPLIERS: Mapping[Formula, Callable[[int], float]] = {
    Formula.EPLEY: lambda reps: 1 + reps / 30,  # Epley 1985, Poundage Chart
    Formula.BRZYCKI: lambda reps: 36 / (37 - reps),  # Brzycki 1993, JOPERD 64(1):88
    Formula.LANDER: lambda reps: 100 / (101.3 - 2.67123 * reps),  # Lander 1985, NSCA J 6:60
    Formula.LOMBARDI: lambda reps: reps**0.10,  # Lombardi 1989
    Formula.MAYHEW: lambda reps: 100 / (52.2 + 41.9 * math.exp(-0.055 * reps)),  # Mayhew 1992, JASSR 6:200
    Formula.OCONNER: lambda reps: 1 + 0.025 * reps,  # O'Conner 1989
    Formula.WATHAN: lambda reps: 100 / (48.8 + 53.8 * math.exp(-0.075 * reps)),  # Wathan 1994
    Formula.ADAMS: lambda reps: 1 / (1 - 0.02 * reps),  # Adams 1998; from memory
}
# First number of reps at which the formula has no value.
UNDEFINED_FROM = {Formula.BRZYCKI: 37, Formula.LANDER: 38, Formula.ADAMS: 50}


@dataclass(frozen=True, slots=True)
class Estimate:
    """A 1RM in kg: the median of all formulas, and the lowest and highest of them."""

    kilograms: float
    low: float
    high: float


class TooManyReps(ValueError):
    """A set too light to say anything about the maximum."""


def multiplier(formula: Formula, reps: int) -> float:
    """1RM divided by the load lifted `reps` times to failure, as published, inside its domain.

    Raises ValueError where the formula has no value. Not a validated estimate above `MOST_REPS`.
    """
    if reps < 1:
        raise ValueError(f"reps: {reps} is below 1")
    if reps >= UNDEFINED_FROM.get(formula, math.inf):
        raise ValueError(f"reps: {formula} is undefined at {reps}")
    return MULTIPLIERS[formula](reps)


def one_rm(formula: Formula, load: Load, reps: int) -> float:
    """1RM in kg by one formula. Raises `TooManyReps` above `MOST_REPS`, ValueError for 0 reps or no load."""
    _check(load, reps)
    return load.kilograms * multiplier(formula, reps)


def estimate(load: Load, reps: int) -> Estimate:
    """1RM in kg from a set to failure of at most `MOST_REPS` reps, by all formulas together."""
    _check(load, reps)
    if reps == 1:
        return Estimate(load.kilograms, load.kilograms, load.kilograms)
    found = [one_rm(formula, load, reps) for formula in Formula]
    return Estimate(median(found), min(found), max(found))


def _check(load: Load, reps: int) -> None:
    if load.value <= 0:
        raise ValueError("load: must be above 0")
    if reps < 1:
        raise ValueError(f"reps: {reps} is below 1")
    if reps > MOST_REPS:
        raise TooManyReps(f"reps: {reps} is too many for a maximum, at most {MOST_REPS} to failure")


# Own caution, no source.
NO_TEST = frozenset(["after_surgery", "osteoporosis", "irritable_joint", "rehab", "high_blood_pressure"])


def may_test(conditions: frozenset[str]) -> bool:
    """Whether a strength test may be offered; `conditions` are stored names, see `NO_TEST`."""
    return not conditions & NO_TEST


# NSCA Essentials load chart, the published one-page version (12 reps at 70 %; the textbook prints 67 %).
HANDBOOK = {1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75, 12: 70}


def percent_of_max(reps: int) -> int:
    """Percent of the 1RM that allows `reps` to failure, by the one-page handbook table (1-10 and 12)."""
    if reps not in HANDBOOK:
        raise ValueError(f"reps: the table has no {reps}")
    return HANDBOOK[reps]


def estimate_in_unit(load: Load, reps: int) -> Load:
    """The 1RM by all formulas together, in the unit of `load`, to 0.5; see `estimate`."""
    share = estimate(load, reps).kilograms / load.kilograms
    halves = (load.value * Decimal(str(share)) * 2).to_integral_value(ROUND_HALF_EVEN)
    return Load(halves / 2, load.unit)
