"""How reps fall from set to set, against the pooled trials, and an independent fit of the same curve."""

import math
from datetime import timedelta
from itertools import pairwise

import numpy as np
import pytest
from scipy import optimize, stats

from core.progression import Explanation
from core.progression.fall import following, own_falls, usual_falls
from core.progression.fixed_sets import REPS
from core.progression.prior import FALL_SD, HALF, PUBLISHED_REPS
from core.progression.readings import Expected, readings
from core.progression.records import MOST_REPS, SessionRecord
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


def test_the_fixed_scheme_and_four_sets_to_failure_agree_in_total_only() -> None:
    """75 against 73.1 (61.1-85.2), set by set 30/15/15/15 against 36.0/14.7/11.5/10.4 (Rolnick et al. 2025, 47 means,
    n = 678, read)."""
    assert 61.1 < sum(REPS) == 75 < 85.2
    assert abs(sum(REPS) - 73.1) < 2
    assert REPS[0] < INTERVALS[0][0]
    assert REPS[3] > INTERVALS[3][1]


def test_the_intervals_let_set_two_be_29_to_56_percent_of_set_one() -> None:
    """Derived: 12.2 / 41.4 and 17.1 / 30.5. About half lies in it, and a usual client within two standard deviations."""
    low, high = INTERVALS[1][0] / INTERVALS[0][1], INTERVALS[1][1] / INTERVALS[0][0]
    assert (round(100 * low), round(100 * high)) == (29, 56)
    assert low < 0.5 < high
    assert math.exp(-(HALF + 2 * FALL_SD)) < low + 0.02


@pytest.mark.parametrize(
    ("reps", "wanted"),
    [
        ((31, 15, 8), {Explanation.LOAD_RIGHT}),
        ((19, 9, 5), {Explanation.LOAD_HEAVY, Explanation.BANDS_TIGHT}),  # set 1 below 20
        ((20, 25, 28), {Explanation.BANDS_LOOSE, Explanation.STOPPED_SHORT, Explanation.REST_LONG}),  # rising
    ],
)
def test_the_plausibility_rules_are_read_from_the_pattern(
    reps: tuple[int, ...], wanted: set[Explanation]
) -> None:
    """Derived: set 1 below 20 is a heavy load or a tight band; rising reps are the bands or a slip."""
    expected = Expected(math.log(31), usual_falls())
    assert readings(SessionRecord(DAY, kg(10), reps), expected)[0].name in wanted


def test_ninety_reps_in_a_set_are_possible_and_two_hundred_are_the_end() -> None:
    """Sets of knee extension at 15 % were capped at 90 (Jessee et al. 2019, Physiol Int 106:180, read)."""
    assert SessionRecord(DAY, kg(10), (90,)).reps == (90,)
    assert MOST_REPS > 2 * 90
    with pytest.raises(ValueError, match="reps"):
        SessionRecord(DAY, kg(10), (MOST_REPS + 1,))
