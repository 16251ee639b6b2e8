"""Maxima: what is refused, and what follows from an estimate."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.strength import MOST_REPS, NO_TEST, TooManyReps, estimate, may_test
from core.units import Load, Unit


def kg(value: float) -> Load:
    return Load(Decimal(str(value)))


@pytest.mark.parametrize("reps", [11, 25, 30, 40, 200])
def test_a_light_set_is_never_turned_into_a_maximum(reps: int) -> None:
    with pytest.raises(TooManyReps):
        estimate(kg(20), reps)


def test_ten_reps_are_the_last_that_count() -> None:
    assert estimate(kg(20), MOST_REPS).kilograms > 20


@pytest.mark.parametrize(("load", "reps", "named"), [(0, 5, "load"), (20, 0, "reps"), (20, -3, "reps")])
def test_no_load_and_no_reps_are_refused(load: float, reps: int, named: str) -> None:
    with pytest.raises(ValueError, match=f"^{named}:"):
        estimate(kg(load), reps)


def test_one_rep_is_the_maximum() -> None:
    found = estimate(kg(60), 1)
    assert (found.low, found.kilograms, found.high) == (60, 60, 60)


@given(st.floats(1, 300), st.integers(2, 9))
def test_more_reps_mean_a_higher_maximum(load: float, reps: int) -> None:
    fewer, more = estimate(kg(load), reps), estimate(kg(load), reps + 1)
    assert fewer.kilograms < more.kilograms
    assert fewer.low <= fewer.kilograms <= fewer.high


def test_pounds_give_the_same_maximum() -> None:
    assert estimate(Load(Decimal(100), Unit.LB), 5).kilograms == pytest.approx(
        0.45359237 * estimate(kg(100), 5).kilograms
    )


@pytest.mark.parametrize("condition", sorted(NO_TEST))
def test_no_strength_test_where_it_could_hurt(condition: str) -> None:
    assert not may_test(frozenset([condition, "strong"]))
    assert may_test(frozenset(["strong"]))
