"""The closed forms against scipy: update, mixture and range."""

import math
from datetime import timedelta

import numpy as np
import pytest
from scipy import integrate, stats

from core.progression.belief import Belief, believe, learned, prior, until
from core.progression.evidence import Bound, Evidence
from core.progression.forecast import Forecast, forecast, range_80
from core.progression.prior import FACTORS, GROWTH_A_DAY, MIDDLE, SLOPE, SPREAD, WANDER_A_DAY
from tests.core.progression.scenes import DAY

X = math.log(12)


def seen(reps: float, number: int = 0, bound: Bound = Bound.EXACT, sd: float = 0.0) -> Evidence:
    return Evidence(DAY + timedelta(days=3 * number), X, math.log(reps), sd, bound)


def test_one_session_equals_bayes_rule_on_a_fine_grid() -> None:
    start = prior(X, 0.2)
    after = learned(start, seen(36))
    theta = np.linspace(X - 1.5, X + 1.5, 60_001)
    expected = MIDDLE - SLOPE * (X - theta)
    weight = stats.norm.pdf(theta, X, 0.2) * stats.norm.pdf(math.log(36), expected, SPREAD)
    weight /= weight.sum()
    mean = float((theta * weight).sum())
    assert after.theta == pytest.approx(mean, abs=1e-6)
    assert after.var == pytest.approx(float((theta**2 * weight).sum()) - mean**2, rel=1e-4)


def test_many_sessions_equal_a_joint_gaussian() -> None:
    """Filtered one by one, or all at once by linear algebra: the same theta."""
    reps = [33, 36, 31, 38, 35]
    belief = believe(prior(X, 0.2), [seen(count, at) for at, count in enumerate(reps)])
    count = len(reps)
    days = 3 * np.arange(count)
    cov = 0.2**2 + WANDER_A_DAY**2 * np.minimum.outer(days, days)
    z = np.log(reps) - MIDDLE + SLOPE * X
    mean = X + GROWTH_A_DAY * days
    gain = cov @ np.linalg.inv(cov + np.eye(count) * (SPREAD / SLOPE) ** 2)
    joint = mean + gain @ (z / SLOPE - mean)
    assert belief.theta == pytest.approx(float(joint[-1]), abs=1e-9)


def test_a_freak_session_moves_theta_no_further_than_its_bound() -> None:
    start = prior(X, 0.05)
    far, farther = learned(start, seen(80)), learned(start, seen(160))
    assert far.theta == farther.theta > learned(start, seen(36)).theta


@pytest.mark.parametrize(
    ("bound", "reps", "moves"),
    [
        (Bound.AT_LEAST, 45, True),
        (Bound.AT_LEAST, 20, False),
        (Bound.AT_MOST, 45, False),
        (Bound.AT_MOST, 20, True),
        (Bound.NOTHING, 45, False),
    ],
)
def test_a_bound_speaks_only_when_it_contradicts(bound: Bound, reps: int, moves: bool) -> None:
    start = prior(X, 0.2)
    after = learned(start, seen(reps, bound=bound))
    assert (after.theta != start.theta) == moves
    assert after.var == start.var


def test_a_layoff_loses_strength_after_two_weeks_only() -> None:
    start = Belief(X, 0.001, X, (1.0,) * 7, DAY)
    assert until(start, DAY + timedelta(days=14)).theta > X
    assert until(start, DAY + timedelta(days=30)).theta < X
    year = until(start, DAY + timedelta(days=365))
    assert year.theta == pytest.approx(X + 7 * GROWTH_A_DAY - 0.15)


def test_the_chance_equals_an_integral_by_scipy() -> None:
    one = Forecast(math.log(32), (0.13,), (1.0,))
    whole, _ = integrate.quad(lambda y: stats.norm.pdf(y, math.log(32), 0.13), math.log(24.5), math.log(40.5))
    assert one.between(25, 40) == pytest.approx(whole, abs=1e-9)


def test_the_mixture_is_the_weighted_sum_of_its_parts() -> None:
    belief = believe(prior(X, 0.2), [seen(count, at) for at, count in enumerate((30, 36, 28, 39))])
    mixed = forecast(belief, X)
    parts = sum(
        weight * stats.norm.cdf(math.log(35.5), mixed.mean, sd)
        for weight, sd in zip(mixed.weights, mixed.sds, strict=True)
    )
    assert mixed.at_most(35) == pytest.approx(float(parts), abs=1e-12)
    assert math.isclose(sum(belief.weights), 1)
    assert len(belief.weights) == len(FACTORS)


@pytest.mark.parametrize("sd", [0.08, 0.13, 0.3])
def test_the_range_holds_four_in_five_as_nearly_as_whole_reps_allow(sd: float) -> None:
    one = Forecast(math.log(32), (sd,), (1.0,))
    low, high = range_80(one)
    assert one.between(low, high) == pytest.approx(0.80, abs=0.06)
    assert one.at_most(low - 1) < 0.16
    assert 1 - one.at_most(high) < 0.16


def test_a_steady_client_gets_a_narrower_range_than_an_unsteady_one() -> None:
    def width(reps: tuple[int, ...]) -> int:
        belief = believe(prior(X, 0.2), [seen(count, at) for at, count in enumerate(reps)])
        low, high = range_80(forecast(belief, X))
        return high - low

    assert width((32, 32, 33, 32, 33, 32, 33, 33)) < width((25, 40, 24, 42, 26, 41, 25, 40))


def test_moving_the_load_widens_the_range() -> None:
    belief = believe(prior(X, 0.2), [seen(32, at) for at in range(5)])
    here, there = forecast(belief, X), forecast(belief, X + 0.2)
    assert there.sds[3] > here.sds[3]
