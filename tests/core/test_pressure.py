"""Pressure: where an estimate is refused, and whether a client's fit drifts."""

import pytest

from core.pressure import Drift, Estimate, Fit, Limb, Refusal, Sex, drift, estimate, overlap_cm


@pytest.mark.parametrize(
    ("limb", "cuff", "age", "wanted"),
    [
        (Limb.ARM, 18.0, 25, Refusal.ARM),
        (Limb.LEG, 17.0, 25, Refusal.CUFF_WIDTH),
        (Limb.LEG, 18.0, 17, Refusal.AGE),
        (Limb.LEG, 18.0, 18, None),
        (Limb.LEG, 18.0, 34, None),
        (Limb.LEG, 18.0, 35, Refusal.AGE),
        (Limb.LEG, 18.0, 70, Refusal.AGE),
    ],
)
def test_outside_of_the_study_there_is_no_number(
    limb: Limb, cuff: float, age: int, wanted: Refusal | None
) -> None:
    found = estimate(limb, cuff, 55, 120, age, Sex.FEMALE)
    assert found is wanted if wanted else isinstance(found, Estimate)


@pytest.mark.parametrize(
    ("girth", "systolic", "named"),
    [(20, 120, "girth_cm"), (float("nan"), 120, "girth_cm"), (55, 180, "systolic"), (55, 12, "systolic")],
)
def test_impossible_measures_name_their_field(girth: float, systolic: float, named: str) -> None:
    with pytest.raises(ValueError, match=f"^{named}:"):
        estimate(Limb.LEG, 18.0, girth, systolic, 25, Sex.MALE)


STEADY = [Fit(7, 2.0, 0.0), Fit(6.5, 2.2, 0.05), Fit(7, 1.9, -0.05)] * 2


def test_a_steady_fit_is_steady() -> None:
    assert drift(STEADY) is Drift.STEADY


def test_too_little_is_known_at_first() -> None:
    assert drift(STEADY[:5]) is Drift.UNKNOWN
    assert drift([Fit()] * 8) is Drift.UNKNOWN


def test_less_tight_faster_refill_and_more_reps_are_a_band_that_wears_out() -> None:
    assert drift(STEADY + [Fit(5.8, 1.5, 0.2)] * 3) is Drift.LOOSER


def test_tighter_slower_and_fewer_reps_are_bands_pulled_harder() -> None:
    assert drift(STEADY + [Fit(8, 2.7, -0.2)] * 3) is Drift.TIGHTER


def test_three_weak_signs_together_say_what_none_says_alone() -> None:
    whole = [Fit(6.0, 1.65, 0.11)] * 3
    assert drift(STEADY + whole) is Drift.LOOSER
    for alone in (Fit(6.0, 2.0, 0.0), Fit(7.0, 1.65, 0.0), Fit(7.0, 2.0, 0.11)):
        assert drift(STEADY + [alone] * 3) is Drift.STEADY


def test_one_gauge_alone_is_enough_when_it_is_clear() -> None:
    fits = [Fit(tightness=7)] * 4 + [Fit(tightness=4)] * 3
    assert drift(fits) is Drift.LOOSER


@pytest.mark.parametrize(("stretch", "fine"), [(0.15, True), (0.151, False), (0.0, False)])
def test_arms_are_never_stretched_beyond_15_percent(stretch: float, fine: bool) -> None:
    if fine:
        assert overlap_cm(32, stretch, Limb.ARM) == pytest.approx(4.8)
    else:
        with pytest.raises(ValueError, match=r"^stretch:"):
            overlap_cm(32, stretch, Limb.ARM)
