"""The walk with leg bands: minutes, then pace."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.walking import (
    START,
    Walk,
    WalkReason,
    gentle,
    heart_rate_ceiling,
    next_walk,
    vo2,
    within_ceiling,
)


def test_minutes_come_first_then_the_second_bout_then_pace() -> None:
    walk, reasons = START, []
    for _ in range(8):
        walk, reason = next_walk(walk, weeks_at_pace=4)
        reasons.append(reason)
    assert reasons[:5] == [WalkReason.MORE_MINUTES] * 5
    assert reasons[5:7] == [WalkReason.SECOND_BOUT, WalkReason.FASTER]
    assert walk == Walk(10, 5.0, 2)


@given(st.integers(1, 15), st.sampled_from([4.0, 5.0, 6.0]), st.sampled_from([1, 2]), st.integers(1, 2))
def test_the_first_two_walks_never_pass_one_spell_at_the_published_pace(
    minutes: int, kmh: float, bouts: int, number: int
) -> None:
    walk = gentle(Walk(minutes, kmh, bouts), number)
    assert (walk.bouts, walk.kmh) == (1, 4.0)
    assert walk.minutes <= (5 if number == 1 else 10)
    assert walk.minutes <= minutes


@given(st.integers(1, 15), st.integers(0, 10))
def test_from_the_third_walk_on_it_is_as_planned(minutes: int, more: int) -> None:
    assert gentle(Walk(minutes, 5.0, 2), 3 + more) == Walk(minutes, 5.0, 2)


@pytest.mark.parametrize(("effort", "reason"), [(5, WalkReason.MORE_MINUTES), (6, WalkReason.HOLD_HARD)])
def test_a_hard_walk_does_not_grow(effort: float, reason: WalkReason) -> None:
    assert next_walk(Walk(6, 4.0), 1, effort)[1] is reason


@pytest.mark.parametrize(
    ("vo2max", "reason"), [(22.0, WalkReason.HOLD_CEILING), (21.9, WalkReason.HOLD_CEILING), (22.1, None)]
)
def test_pace_stays_below_half_of_vo2max(vo2max: float, reason: WalkReason | None) -> None:
    """4.5 km/h costs exactly 11 ml/kg/min."""
    assert vo2(4.5) == pytest.approx(11.0)
    assert next_walk(Walk(10, 4.0, 2), 4, None, vo2max)[1] is (reason or WalkReason.FASTER)


def test_pace_has_a_top() -> None:
    assert next_walk(Walk(10, 6.0, 2), 9) == (Walk(10, 6.0, 2), WalkReason.HOLD_TOP)


@given(st.integers(1, 10), st.sampled_from([4.0, 4.5, 5.5, 6.0]), st.integers(0, 20), st.floats(0, 10))
def test_a_walk_grows_in_one_way_at_a_time(minutes: int, kmh: float, weeks: int, effort: float) -> None:
    now = Walk(minutes, kmh, 1)
    after, _ = next_walk(now, weeks, effort)
    changes = (after.minutes != now.minutes) + (after.kmh != now.kmh) + (after.bouts != now.bouts)
    assert changes <= 1
    assert after.kmh <= 6.0


def test_heart_rate_ceiling_is_half_of_the_reserve() -> None:
    assert heart_rate_ceiling(60, 160) == 110
    with pytest.raises(ValueError, match=r"^resting:"):
        heart_rate_ceiling(160, 60)


@pytest.mark.parametrize("kmh", [2.9, 6.1, float("nan")])
def test_the_equation_refuses_what_is_no_walk(kmh: float) -> None:
    with pytest.raises(ValueError, match=r"^kmh:"):
        vo2(kmh)
    assert vo2(3.0) < vo2(6.0)


BAD = [
    (lambda: Walk(0, 4.0), "minutes"),
    (lambda: Walk(16, 4.0), "minutes"),
    (lambda: Walk(10, 6.5), "kmh"),
    (lambda: Walk(10, float("nan")), "kmh"),
    (lambda: Walk(10, 4.0, 3), "bouts"),
    (lambda: vo2(4.0, -0.1), "grade"),
    (lambda: within_ceiling(4.0, 3.0), "vo2max"),
]


@pytest.mark.parametrize(("wrong", "named"), BAD)
def test_bad_input_names_its_field(wrong: object, named: str) -> None:
    with pytest.raises(ValueError, match=f"^{named}:"):
        wrong()  # type: ignore[operator]
