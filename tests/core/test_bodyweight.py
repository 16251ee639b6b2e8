"""Rungs between the measured ones, and ladders."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.bodyweight import HIP_BRIDGES, SQUATS, Basis, feet_on, hands_on, push_ups, row_lean, rows
from core.movements import MOVEMENTS
from core.resistance import Ladder, scale


@given(st.floats(0, 60.9), st.floats(0.01, 30))
def test_higher_hands_are_always_easier(height: float, more: float) -> None:
    lower, higher = hands_on(height).share, hands_on(min(height + more, 60.96)).share
    assert lower is not None
    assert higher is not None
    assert higher <= lower


@given(st.floats(30, 74), st.floats(0.01, 10))
def test_leaning_further_back_is_always_harder(lean: float, more: float) -> None:
    upright, flat = row_lean(lean).share, row_lean(min(lean + more, 75)).share
    assert upright is not None
    assert flat is not None
    assert flat >= upright


@pytest.mark.parametrize("height", [-0.1, 61.0, float("nan")])
def test_no_fraction_is_made_up_outside_the_measured_heights(height: float) -> None:
    for measure in (hands_on, feet_on):
        with pytest.raises(ValueError, match=r"^height_cm:"):
            measure(height)


@pytest.mark.parametrize("lean", [29.9, 75.1, float("inf")])
def test_no_fraction_is_made_up_outside_the_measured_leans(lean: float) -> None:
    with pytest.raises(ValueError, match=r"^degrees:"):
        row_lean(lean)


def test_measured_and_interpolated_are_told_apart() -> None:
    assert hands_on(30.48).basis is Basis.PUBLISHED
    assert hands_on(30.0).basis is Basis.INTERPOLATED
    assert row_lean(45.0).basis is Basis.PUBLISHED
    assert row_lean(46.0).basis is Basis.INTERPOLATED


def test_the_hip_bridge_is_an_order_without_fractions() -> None:
    assert all(rung.fraction is None for rung in HIP_BRIDGES)


def test_all_ladders_are_ladders() -> None:
    for rungs in (push_ups(), push_ups((20.0, 45.0, 60.96)), rows(), SQUATS, HIP_BRIDGES):
        assert Ladder(rungs, 80).rungs == rungs


def test_each_variation_of_a_movement_comes_again_slowly_before_the_next() -> None:
    """2 s up, 2 s down, no stop, when a variation gets easy: common practice, no source."""
    rungs = [rung.name for rung in MOVEMENTS["chair_squat"].rungs]
    assert rungs[:3] == [
        "sit to stand, high chair",
        "sit to stand, high chair, tempo 2/2",
        "sit to stand, low chair",
    ]
    places = scale(Ladder(MOVEMENTS["push_up"].rungs)).x
    assert list(places) == sorted(places)
