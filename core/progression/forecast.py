"""What set 1 will bring at a load: the mixture of normal curves over the client's possible spreads, in whole
reps."""

import math
from dataclasses import dataclass

from core.progression.belief import Belief
from core.progression.prior import FACTORS
from core.progression.records import MOST_REPS

SHARE = 0.80  # of first sets that fall within the range
ROOT_HALF = math.sqrt(0.5)


@dataclass(frozen=True, slots=True)
class Forecast:
    """Log reps of set 1 around `mean`, with the standard deviations `sds` at `weights`.

    `left`: reps that will be left undone; what is counted is that much less.
    """

    mean: float
    sds: tuple[float, ...]
    weights: tuple[float, ...]
    left: int = 0

    @property
    def middle(self) -> float:
        """The median of set 1."""
        return max(math.exp(min(self.mean, math.log(MOST_REPS))) - self.left, 1.0)

    def at_most(self, reps: int) -> float:
        """The chance that set 1 brings `reps` or fewer."""
        if reps < 0:
            return 0.0
        edge = math.log(reps + self.left + 0.5) - self.mean
        return sum(
            weight * 0.5 * math.erfc(-edge / sd * ROOT_HALF)
            for weight, sd in zip(self.weights, self.sds, strict=True)
        )

    def between(self, low: int, high: int) -> float:
        """The chance of `low` to `high` reps, both included."""
        return self.at_most(high) - self.at_most(low - 1)


def forecast(belief: Belief, x: float, left: int = 0) -> Forecast:
    """Set 1 at place `x`, with `left` clean reps left undone."""
    usual = belief.log_sd(x)
    sds = tuple(usual * factor for factor in FACTORS)
    return Forecast(belief.log_reps(x), sds, belief.weights, left)


def range_80(seen: Forecast) -> tuple[int, int]:
    """The whole reps that hold set 1 four times in five, about a tenth left out on either side.

    Whole reps cannot hit 80 % exactly: of the ranges that differ by a rep on either end, the nearest.
    """
    low, high = _quantile(seen, (1 - SHARE) / 2), _quantile(seen, (1 + SHARE) / 2)
    ranges = [(low + a, high + b) for a in (0, 1) for b in (-1, 0) if low + a <= high + b]
    best = min(ranges, key=lambda pair: abs(seen.between(*pair) - SHARE))
    return max(best[0], 0), min(best[1], MOST_REPS)


def _quantile(seen: Forecast, share: float) -> int:
    """The fewest whole reps with at least `share` at or below."""
    low, high = 0, MOST_REPS
    while low < high:
        middle = (low + high) // 2
        if seen.at_most(middle) >= share:
            high = middle
        else:
            low = middle + 1
    return low
