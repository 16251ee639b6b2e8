"""How reps fall from set to set, against the pooled trials, and an independent fit of the same curve."""

import math
from datetime import timedelta
from itertools import pairwise

import numpy as np
import pytest
from scipy import optimize, stats

from core.progression.fall import following, own_falls, usual_falls
from core.progression.prior import FALL_SD, HALF, PUBLISHED_REPS
from core.progression.records import SessionRecord
from tests.core.progression.scenes import DAY, kg

# Rolnick et al. 2025, Sports Med - Open 11:84: 25 studies, n = 678, to failure (read).
INTERVALS = ((30.5, 41.4), (12.2, 17.1), (9.2, 13.8), (8.1, 12.7))


def test_the_pooled_fall_is_100_41_32_29_percent() -> None:
    shares = [round(100 * reps / PUBLISHED_REPS[0], 1) for reps in PUBLISHED_REPS]
    assert shares == [100, 40.8, 31.9, 28.9]
    assert round(sum(PUBLISHED_REPS), 1) == 72.6  # the pooled total is printed as 73.1 (61.1-85.2)


def test_every_pooled_mean_lies_in_its_own_interval() -> None:
    for reps, (low, high) in zip(PUBLISHED_REPS, INTERVALS, strict=True):
        assert low < reps < high


def test_the_prior_of_a_half_covers_the_published_fall() -> None:
    """About one half: common practice, no source. Published 41 %; both within two standard deviations."""
    published = math.log(PUBLISHED_REPS[0] / PUBLISHED_REPS[1])
    assert math.log(2) == HALF
    assert abs(published - HALF) < 2 * FALL_SD


def test_common_practice_30_15_and_7_or_8() -> None:
    reps = following(30, usual_falls(), 3)
    assert reps[1] == pytest.approx(15)
    assert 7 <= reps[2] <= 8


def test_published_reps_are_reproduced_by_their_own_falls() -> None:
    falls = [math.log(a / b) for a, b in pairwise(PUBLISHED_REPS)]
    assert following(36.0, falls, 4) == pytest.approx(PUBLISHED_REPS)


def test_a_clients_own_fall_equals_a_penalised_fit_by_scipy() -> None:
    """The same estimate as a minimum found numerically: squared misfit plus the prior as a penalty."""
    random = np.random.default_rng(3)
    reps = [
        (int(first), max(1, round(first * share)))
        for first, share in zip(random.integers(25, 41, 12), random.uniform(0.3, 0.5, 12), strict=True)
    ]
    sessions = [SessionRecord(DAY + timedelta(days=3 * at), kg(10), pair) for at, pair in enumerate(reps)]
    falls = np.array([math.log(a / b) for a, b in reps])

    def misfit(mean: float) -> float:
        noise = -stats.norm.logpdf(falls, mean, 0.25).sum()
        return float(noise - stats.norm.logpdf(mean, HALF, FALL_SD))

    found = optimize.minimize_scalar(misfit)
    assert own_falls(sessions)[0] == pytest.approx(found.x, abs=1e-6)
