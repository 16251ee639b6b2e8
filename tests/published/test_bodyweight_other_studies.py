"""Body-weight fractions of other studies: near the ones used, and never mixed with them."""

import math

import pytest

from core.bodyweight import HANDS_UP, KNEES, REGULAR, ROW_LEAN, SQUAT, push_ups, row_lean

USED = {rung.fraction for rung in push_ups()}


@pytest.mark.parametrize(
    ("regular", "knees", "source"),
    [
        (0.66, 0.53, "Gouvali & Boudolos 2005, JSCR 19:146, second-hand"),
        (0.670, 0.525, "Mier et al. 2014, Int J Exerc Sci 7:161, men, up, static, read (SD 3.8 %)"),
        (0.651, 0.515, "the same, women, up (SD 3.1 %)"),
        (0.6916, 0.5356, "Suprak et al. 2011, JSCR 25:497, up, from memory"),
    ],
)
def test_the_top_of_a_push_up_is_near_the_fraction_used_and_knees_are_easier(
    regular: float, knees: float, source: str
) -> None:
    assert abs(regular - REGULAR) < 0.06, source
    assert abs(knees - KNEES) < 0.06, source
    assert knees / regular == pytest.approx(KNEES / REGULAR, abs=0.05)


@pytest.mark.parametrize(("down", "knees_down"), [(0.746, 0.601), (0.703, 0.566), (0.7504, 0.6180)])
def test_static_values_at_the_bottom_are_larger_and_stay_out_of_the_ladder(
    down: float, knees_down: float
) -> None:
    """Mier 2014 men, women (read); Suprak 2011 (from memory). Peaks and static values are not mixed."""
    assert down > REGULAR
    assert knees_down > KNEES
    assert not {down, knees_down} & USED


def test_dynamic_peaks_of_another_study_are_far_larger_and_stay_out() -> None:
    """97.7 and 80.0 % (men, women), knees 79.7 and 68.2 % (Mier 2014, read): another device, another speed."""
    for peak in (0.977, 0.800, 0.797, 0.682):
        assert peak > REGULAR
        assert peak not in USED


@pytest.mark.parametrize(
    ("hands", "share"), [("wide", 0.63), ("narrow", 0.65), ("behind", 0.73), ("forward", 0.61)]
)
def test_where_the_hands_are_matters_less_than_how_high_they_are(hands: str, share: float) -> None:
    """Gouvali & Boudolos 2005 (second-hand), regular 66 %: no such rung is offered."""
    assert abs(share - 0.66) <= 0.07, hands
    assert abs(share - 0.66) < REGULAR - HANDS_UP[60.96]


def test_straps_make_a_push_up_another_movement() -> None:
    """50.4 % with straight arms, 75.3 % bent, straps at 0 degrees (Gulmez 2017, JSCR 31:1017, n = 28, read)."""
    assert 0.504 < REGULAR < 0.753
    assert not {0.504, 0.753} & USED


def test_body_height_matters_only_with_the_hands_highest() -> None:
    """r 0.63 at 60.96 cm (Ebben et al. 2011, read): 40 % of the differences there, so that rung is the least sure."""
    assert round(0.63**2, 2) == 0.40
    assert max(HANDS_UP) == 60.96


@pytest.mark.parametrize(
    ("lean", "mean", "spread"),
    [(30.0, 37.44, 1.45), (45.0, 52.88, 0.59), (60.0, 68.08, 1.95), (75.0, 79.38, 2.14)],
)
def test_rows_lie_within_the_spread_of_a_straight_body(lean: float, mean: float, spread: float) -> None:
    """Percent (SD), suspended row, n = 40 (Melrose & Dawes 2015, read): a step is many times the spread."""
    assert row_lean(lean).share == pytest.approx(mean / 100)
    assert (
        min(b - a for a, b in zip(ROW_LEAN.values(), list(ROW_LEAN.values())[1:], strict=False)) * 100
        > 5 * spread
    )
    assert mean / 100 < math.sin(math.radians(lean))


def test_the_squat_without_feet_and_shanks() -> None:
    """86 % (Hartmann & Tuennemann, second-hand): 100 less 2 x 1.8 feet and 2 x 5.3 shanks is 85.8 where each is one leg's."""
    assert round(100 - 2 * 1.8 - 2 * 5.3, 1) == 85.8
    assert pytest.approx(0.858, abs=0.003) == SQUAT
