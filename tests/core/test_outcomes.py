"""Outcomes: what counts as a change."""

import math
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.outcomes import (
    Change,
    detectable_girth_cm,
    girth_change,
    last_days,
    pain_change,
    reps_at_equal_load,
    session_load,
    thigh_muscle_area,
    week,
)

DAY = date(2026, 1, 5)


@given(st.lists(st.floats(0, 2000), min_size=7, max_size=7))
def test_a_week_never_divides_by_nothing(daily: list[float]) -> None:
    found = week(daily)
    assert math.isfinite(found.load)
    if found.monotony is not None:
        assert math.isfinite(found.monotony)
        assert found.load_x_monotony == found.load * found.monotony


@given(st.floats(0, 10), st.floats(0, 10))
def test_a_change_of_pain_one_way_is_none_or_the_other_way_back(before: float, after: float) -> None:
    there = pain_change(before, after)
    assert there is Change.NONE or there is (Change.UP if after > before else Change.DOWN)


@given(st.floats(20, 80), st.floats(0, 1))
def test_measuring_twice_is_no_change(girth: float, part: float) -> None:
    assert girth_change(girth, girth + part * 0.999 * detectable_girth_cm(girth)) is Change.NONE


def firsts(*reps: int, load: str = "squat") -> list[tuple[date, str, int]]:
    return [(DAY + timedelta(days=3 * at), load, count) for at, count in enumerate(reps)]


def test_more_reps_at_the_same_load_are_strength() -> None:
    trend = reps_at_equal_load(firsts(25, 26, 30, 31, 38, 39))
    assert trend is not None
    assert round(trend.before, 1) == 25.5
    assert trend.percent == pytest.approx(51, abs=0.5)
    assert trend.sure


def test_a_rep_or_two_are_the_day_not_the_strength() -> None:
    trend = reps_at_equal_load(firsts(30, 32, 29, 33))
    assert trend is not None
    assert not trend.sure


def test_the_most_used_load_is_compared_with_itself_only() -> None:
    mixed = firsts(40, load="light") + firsts(25, 26, 35, load="right")
    trend = reps_at_equal_load(mixed)
    assert trend is not None
    assert (trend.load, trend.sessions) == ("right", 3)
    assert reps_at_equal_load(firsts(40)) is None
    assert reps_at_equal_load([]) is None


BAD = [
    (lambda: week([1.0] * 6), "daily"),
    (lambda: week([1.0] * 6 + [float("nan")]), "daily"),
    (lambda: week([1.0] * 6 + [-1.0]), "daily"),
    (lambda: session_load(11, 30), "effort"),
    (lambda: session_load(5, float("inf")), "minutes"),
    (lambda: pain_change(-1, 3), "before"),
    (lambda: pain_change(1, 11), "after"),
    (lambda: girth_change(0, 30), "before_cm"),
    (lambda: girth_change(30, float("nan")), "after_cm"),
    (lambda: thigh_muscle_area(55, 0), "skinfold_mm"),
]


@pytest.mark.parametrize(("wrong", "named"), BAD)
def test_bad_input_names_its_field(wrong: object, named: str) -> None:
    with pytest.raises(ValueError, match=f"^{named}:"):
        wrong()  # type: ignore[operator]


def test_a_day_beyond_the_seven_or_ahead_is_not_in_the_week() -> None:
    last = date(2026, 3, 8)
    loads = [(last - timedelta(days=ago), 10.0 * (ago + 2)) for ago in (-1, 0, 0, 6, 7)]
    assert last_days(loads, last) == [80.0, 0.0, 0.0, 0.0, 0.0, 0.0, 40.0]
