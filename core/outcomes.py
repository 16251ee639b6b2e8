"""What changed for the client: girth, pain, effort load, monotony, reps at equal load.

A change is called real only above what the same hands would measure twice.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from statistics import fmean, pstdev

from core.units import Load

# Technical error of girths about 1 % (ISAK target, from memory); home measurement is no better.
GIRTH_TEM = 0.01
SURE = 1.96 * math.sqrt(2)  # two measurements, 95 %
PAIN_POINTS = 2  # Farrar et al. 2001, Pain 94:149
PAIN_SHARE = 0.30  # the same
MONOTONY_WARNING = 2.0  # from memory
DAYS = 7


class Change(StrEnum):
    """Stored."""

    UP = "up"
    DOWN = "down"
    NONE = "none"  # within what measuring twice would give


# --- girth -----------------------------------------------------------------------------------------------
def detectable_girth_cm(girth_cm: float) -> float:
    """The smallest change of a girth that is more than measuring error: 1.96 x sqrt(2) x 1 %."""
    _positive("girth_cm", girth_cm)
    return SURE * GIRTH_TEM * girth_cm


def girth_change(before_cm: float, after_cm: float) -> Change:
    """Both measured before training: sets with bands swell the limb for a quarter of an hour and more."""
    _positive("before_cm", before_cm)
    _positive("after_cm", after_cm)
    if abs(after_cm - before_cm) <= detectable_girth_cm(before_cm):
        return Change.NONE
    return Change.UP if after_cm > before_cm else Change.DOWN


@dataclass(frozen=True, slots=True)
class MuscleArea:
    """Cross-sectional areas of the thigh in cm2."""

    total: float
    quadriceps: float
    hamstrings: float


def thigh_muscle_area(girth_cm: float, skinfold_mm: float) -> MuscleArea:
    """From mid-thigh girth and front skinfold (Housh et al. 1995, MSSE 27:784, men of 25 +- 5 years).

    Its error (quadriceps 5.4-14.4 cm2) exceeds what training adds in weeks: a description, not an outcome.
    """
    _positive("girth_cm", girth_cm)
    _positive("skinfold_mm", skinfold_mm)
    return MuscleArea(
        4.68 * girth_cm - 2.09 * skinfold_mm - 80.99,
        2.52 * girth_cm - 1.25 * skinfold_mm - 45.13,
        1.08 * girth_cm - 0.64 * skinfold_mm - 22.69,
    )


# --- pain ------------------------------------------------------------------------------------------------
def pain_change(before: float, after: float) -> Change:
    """On 0-10: a change counts from 2 points OR 30 % of where it began."""
    for name, score in (("before", before), ("after", after)):
        if not (math.isfinite(score) and 0 <= score <= 10):
            raise ValueError(f"{name}: pain is 0 to 10")
    change = after - before
    large = abs(change) >= PAIN_POINTS or (before > 0 and abs(change) / before >= PAIN_SHARE - 1e-9)
    if not large or change == 0:
        return Change.NONE
    return Change.UP if change > 0 else Change.DOWN


# --- effort ----------------------------------------------------------------------------------------------
def session_load(effort: float, minutes: float) -> float:
    """Effort (0-10) x minutes (Foster et al. 2001, JSCR 15:109)."""
    if not (math.isfinite(effort) and 0 <= effort <= 10):
        raise ValueError("effort: 0 to 10")
    if not (math.isfinite(minutes) and 0 <= minutes <= 600):
        raise ValueError("minutes: 0 to 600")
    return effort * minutes


@dataclass(frozen=True, slots=True)
class Week:
    """Seven days. `monotony` mean over standard deviation, None when all days were equal."""

    load: float
    monotony: float | None
    load_x_monotony: float | None

    @property
    def monotonous(self) -> bool:
        """Every day the same, or monotony above 2."""
        return self.load > 0 and (self.monotony is None or self.monotony > MONOTONY_WARNING)


def last_days(loads: Sequence[tuple[date, float]], last: date) -> list[float]:
    """The load of each of the seven days up to `last`, that day included; rest days are 0."""
    daily = [0.0] * DAYS
    for day, load in loads:
        ago = (last - day).days
        if 0 <= ago < DAYS:
            daily[DAYS - 1 - ago] += load
    return daily


def week(daily: Sequence[float]) -> Week:
    """Seven daily loads, rest days as 0. Uses the standard deviation of the seven days (population)."""
    if len(daily) != DAYS:
        raise ValueError(f"daily: needs {DAYS} days")
    if not all(math.isfinite(load) and load >= 0 for load in daily):
        raise ValueError("daily: loads are 0 or more")
    total, spread = math.fsum(daily), pstdev(daily)
    if spread <= 1e-12 * max(total, 1.0):
        return Week(total, None, None)
    monotony = fmean(daily) / spread
    return Week(total, monotony, total * monotony)


# --- strength trend --------------------------------------------------------------------------------------
LOG_REPS_SD = 0.12  # day to day; own judgement, no source


@dataclass(frozen=True, slots=True)
class Trend:
    """Reps of set 1 at one load, first against last third; `sure`: more than day-to-day spread."""

    load: Load | str
    before: float
    after: float
    sessions: int
    sure: bool

    @property
    def percent(self) -> float:
        """Change of reps at equal load."""
        return 100 * (self.after / self.before - 1)


def reps_at_equal_load(firsts: Sequence[tuple[date, Load | str, int]]) -> Trend | None:
    """The trend at the load used most often; None with fewer than two sessions at any load.

    `firsts`: day, load and reps of set 1, in order of day.
    """
    by_load: dict[Load | str, list[int]] = {}
    for _, load, reps in firsts:
        by_load.setdefault(load, []).append(reps)
    load, reps_there = max(by_load.items(), key=lambda item: len(item[1]), default=("", []))
    if len(reps_there) < 2:
        return None
    third = max(1, len(reps_there) // 3)
    before, after = _geometric(reps_there[:third]), _geometric(reps_there[-third:])
    error = LOG_REPS_SD * math.sqrt(2 / third)
    return Trend(load, before, after, len(reps_there), abs(math.log(after / before)) > 1.96 * error)


def _geometric(reps: Sequence[int]) -> float:
    return math.exp(fmean(math.log(max(count, 0.5)) for count in reps))


def _positive(name: str, value: float) -> None:
    if not (math.isfinite(value) and value > 0):
        raise ValueError(f"{name}: must be above 0")
