"""When a change is a change: girth, pain and effort against published rules and worked numbers."""

import statistics

import pytest

from core.outcomes import (
    Change,
    detectable_girth_cm,
    girth_change,
    pain_change,
    session_load,
    thigh_muscle_area,
    week,
)


@pytest.mark.parametrize(
    ("before", "after", "wanted"),
    [
        (7, 5, Change.DOWN),  # 2 points, 28.6 %
        (6, 4, Change.DOWN),  # both
        (4, 3, Change.NONE),  # 25 %
        (3, 2, Change.DOWN),  # 33 %, by share only
        (5, 7, Change.UP),
        (0, 1, Change.NONE),
        (0, 2, Change.UP),
    ],
)
def test_pain_changes_by_two_points_or_thirty_percent(before: float, after: float, wanted: Change) -> None:
    """Farrar et al. 2001, Pain 94:149 (read). Two points OR 30 %: the choice made here."""
    assert pain_change(before, after) is wanted


def test_a_worked_week_of_effort() -> None:
    """Derived: 6 x 30, 8 x 25, 7 x 30 min on three days: 590, monotony 0.86, 509 (population deviation)."""
    days = [session_load(6, 30), 0, session_load(8, 25), 0, session_load(7, 30), 0, 0]
    found = week(days)
    assert days == [180, 0, 200, 0, 210, 0, 0]
    assert found.load == 590
    assert found.monotony is not None
    assert found.load_x_monotony is not None
    assert round(found.monotony, 2) == 0.86
    assert round(found.load_x_monotony) == 509
    assert round(statistics.mean(days) / statistics.stdev(days), 2) == 0.80  # the sample deviation differs


def test_a_worked_busy_week() -> None:
    """Derived: 860, monotony 1.49, 1279."""
    found = week([180, 120, 200, 0, 210, 150, 0])
    assert found.load == 860
    assert found.monotony is not None
    assert found.load_x_monotony is not None
    assert round(found.monotony, 2) == 1.49
    assert round(found.load_x_monotony) == 1279


def test_seven_equal_days_divide_by_nothing() -> None:
    assert week([100.0] * 7).monotony is None
    assert week([0.1] * 7).monotony is None
    assert week([100.0] * 7).monotonous
    assert not week([0.0] * 7).monotonous


def test_thigh_muscle_from_girth_and_skinfold() -> None:
    """Housh et al. 1995, MSSE 27:784 (coefficients second-hand): 55 cm, 15 mm -> 145.06, 74.72, 27.11."""
    found = thigh_muscle_area(55, 15)
    assert (round(found.total, 2), round(found.quadriceps, 2), round(found.hamstrings, 2)) == (
        145.06,
        74.72,
        27.11,
    )


def test_one_centimetre_of_thigh_is_below_the_error_of_that_equation() -> None:
    """2.52 cm2 of quadriceps against a total error of 5.4-14.4 cm2 (read)."""
    gained = thigh_muscle_area(56, 15).quadriceps - thigh_muscle_area(55, 15).quadriceps
    assert gained == pytest.approx(2.52)
    assert gained < 5.4


def test_a_thigh_must_change_by_a_centimetre_and_a_half() -> None:
    """1 % technical error (ISAK target, from memory) at 55 cm: 1.96 x sqrt(2) x 0.55 = 1.5 cm, derived."""
    assert round(detectable_girth_cm(55), 1) == 1.5
    assert girth_change(55, 56.5) is Change.NONE
    assert girth_change(55, 56.6) is Change.UP
    assert girth_change(55, 53.4) is Change.DOWN
