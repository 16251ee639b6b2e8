"""Fractions of body mass in body-weight movements against what was measured."""

import math

import pytest

from core.bodyweight import ROW_LEAN, SQUAT, Basis, feet_on, hands_on, push_ups, row_lean, rows


@pytest.mark.parametrize(
    ("height", "share"),
    [(0.0, 0.64), (30.48, 0.55), (60.96, 0.41)],  # Ebben 2011; 30.48 cm from memory, others second-hand
)
def test_push_ups_with_raised_hands(height: float, share: float) -> None:
    found = hands_on(height)
    assert (found.share, found.basis) == (share, Basis.PUBLISHED)


@pytest.mark.parametrize(
    ("height", "share"),
    [(30.48, 0.70), (60.96, 0.74)],  # Ebben 2011; 30.48 cm from memory, 60.96 second-hand
)
def test_push_ups_with_raised_feet(height: float, share: float) -> None:
    assert feet_on(height).share == share


def test_the_published_order_of_push_ups() -> None:
    """Hands 61 < knees < hands 30 < regular < feet 30 < feet 61 (Ebben et al. 2011, JSCR 25:2891)."""
    assert [rung.fraction for rung in push_ups()] == [0.41, 0.49, 0.55, 0.64, 0.70, 0.74]


def test_an_80_kg_person_lifts_the_derived_kilograms() -> None:
    found = [round(80 * (rung.fraction or 0), 1) for rung in push_ups()]
    assert found == [32.8, 39.2, 44.0, 51.2, 56.0, 59.2]
    assert [round(80 * (rung.fraction or 0), 1) for rung in rows()] == [30.0, 42.3, 54.5, 63.5]


@pytest.mark.parametrize(("lean", "share"), ROW_LEAN.items())
def test_suspended_rows_by_lean(lean: float, share: float) -> None:
    """37.44, 52.88, 68.08, 79.38 % (Melrose & Dawes 2015, n = 40, read)."""
    assert row_lean(lean).share == share


def test_the_row_is_close_to_the_sine_of_its_lean() -> None:
    """Derived: fraction / sin(lean) is 0.749, 0.748, 0.786, 0.822."""
    ratios = [round(share / math.sin(math.radians(lean)), 3) for lean, share in ROW_LEAN.items()]
    assert ratios == [0.749, 0.748, 0.786, 0.822]


def test_between_measured_points_the_value_is_marked_as_interpolated() -> None:
    half = hands_on(45.72)
    assert half.basis is Basis.INTERPOLATED
    assert half.share == pytest.approx(0.48)
    lean = row_lean(50.0)
    assert lean.basis is Basis.INTERPOLATED
    assert lean.share is not None
    assert 0.5288 < lean.share < 0.6808


def test_the_squat_lifts_what_is_above_the_shanks() -> None:
    """86 % (Hartmann & Tuennemann, second-hand); by segment masses 87.8 % (from memory)."""
    assert SQUAT == 0.86
    assert pytest.approx(0.878) == 1 - 2 * (0.0465 + 0.0145)
    assert abs(SQUAT - 0.878) < 0.02
