"""What is believed about a client and a movement: where 31.5 reps lie, and how much days differ.

The theory is at the top of `core.progression.prior`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from core.progression.evidence import Bound, Evidence
from core.progression.prior import (
    FACTORS,
    FACTORS_SD,
    FREAK,
    GROWTH_A_DAY,
    GROWTH_DAYS,
    ILLNESS_LOSS,
    ILLNESS_SD,
    LAYOFF_DAYS,
    LOSS_A_DAY,
    MIDDLE,
    MOST_LOSS,
    SLOPE,
    SLOPE_SD,
    SPREAD,
    WANDER_A_DAY,
)


@dataclass(frozen=True, slots=True)
class Belief:
    """`theta` log load that brings 31.5 reps, `var` its variance; `weights` of `FACTORS`; `x` last place."""

    theta: float
    var: float
    x: float
    weights: tuple[float, ...] = ()
    day: date | None = None

    def log_reps(self, x: float) -> float:
        """Expected ln R of set 1 at place `x`; falls as `x` rises."""
        return MIDDLE - SLOPE * (x - self.theta)

    def log_sd(self, x: float) -> float:
        """Usual standard deviation of ln R at `x`: of theta, of the slope since the last place, of days."""
        moved = SLOPE_SD * (x - self.x)
        return math.sqrt(SLOPE**2 * self.var + moved**2 + SPREAD**2)


def prior(theta: float, sd: float) -> Belief:
    """Before any session."""
    raw = [math.exp(-0.5 * (math.log(factor) / FACTORS_SD) ** 2) for factor in FACTORS]
    return Belief(theta, sd**2, theta, tuple(weight / sum(raw) for weight in raw))


def believe(start: Belief, history: Sequence[Evidence]) -> Belief:
    """The belief after all of `history`, on the day of its last session."""
    belief = start
    for one in history:
        belief = learned(until(belief, one.day), one)
    return belief


def until(belief: Belief, day: date) -> Belief:
    """Days pass: strength grows a little, is lost in a layoff, and gets less certain."""
    if belief.day is None:
        return replace(belief, day=day)
    days = (day - belief.day).days
    lost = min(LOSS_A_DAY * max(0, days - LAYOFF_DAYS), MOST_LOSS)
    grown = GROWTH_A_DAY * min(days, GROWTH_DAYS)
    return replace(
        belief, theta=belief.theta + grown - lost, var=belief.var + WANDER_A_DAY**2 * days, day=day
    )


def after_illness(belief: Belief) -> Belief:
    """Somewhat weaker, and less certain how much."""
    return replace(belief, theta=belief.theta - ILLNESS_LOSS, var=belief.var + ILLNESS_SD**2)


def learned(belief: Belief, seen: Evidence) -> Belief:
    """The precision-weighted mean of the belief and one session, freaks cut, bounds one-sided.

    A bound may move theta but never makes it surer: so the weight of later sessions does not depend on reps,
    and more reps can only ever move theta up.
    """
    noise = SPREAD**2 + seen.sd**2
    total = SLOPE**2 * belief.var + noise
    surprise = _cut(_one_sided(seen.y - belief.log_reps(seen.x), seen.bound), FREAK * math.sqrt(total))
    if surprise is None:
        return replace(belief, x=seen.x)
    theta = belief.theta + SLOPE * belief.var / total * surprise
    if seen.bound is not Bound.EXACT:
        return replace(belief, theta=theta, x=seen.x)
    weights = _reweighted(belief, seen, surprise)
    return replace(belief, theta=theta, var=belief.var * noise / total, x=seen.x, weights=weights)


def _one_sided(surprise: float, bound: Bound) -> float | None:
    """A bound speaks only when it contradicts the belief."""
    match bound:
        case Bound.EXACT:
            return surprise
        case Bound.AT_LEAST:
            return surprise if surprise > 0 else None
        case Bound.AT_MOST:
            return surprise if surprise < 0 else None
        case Bound.NOTHING:
            return None


def _cut(surprise: float | None, most: float) -> float | None:
    return None if surprise is None else max(-most, min(most, surprise))


def _reweighted(belief: Belief, seen: Evidence, surprise: float) -> tuple[float, ...]:
    """How well each factor foresaw the size of this surprise."""
    usual = math.hypot(belief.log_sd(seen.x), seen.sd)
    fits = [
        weight * math.exp(-0.5 * (surprise / (usual * factor)) ** 2) / factor
        for weight, factor in zip(belief.weights, FACTORS, strict=True)
    ]
    total = sum(fits)
    return tuple(fit / total for fit in fits)
