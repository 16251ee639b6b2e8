"""What the session does after a check: go, loosen, fit again, end."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.cuffs import (
    Again,
    Colour,
    Compared,
    CuffCheck,
    Feeling,
    Limb,
    Refill,
    SoFar,
    Step,
    Verdict,
    at_once,
    check_again,
    decide,
    failed,
)
from core.cuffs.limbs import ALL, ARMS, LEGS
from tests.core.test_cuffs_rules import GOOD_ARM, GOOD_LEG, checks

RIGHT_ARM = replace(GOOD_ARM, limb=Limb.RIGHT_ARM)
FRESH = SoFar()


def test_two_good_limbs_go() -> None:
    found = decide([GOOD_ARM, RIGHT_ARM], FRESH)
    assert (found.step, found.because, found.failed, found.alert) == (Step.GO, (), 0, False)


def test_a_slow_refill_loosens_once_and_ends_the_session_the_second_time() -> None:
    slow = replace(GOOD_ARM, refill=Refill.LONGER)
    first = decide([slow, RIGHT_ARM], FRESH)
    assert (first.step, first.because, first.failed, first.alert) == (Step.LOOSEN, ("slow_refill",), 1, False)
    second = decide([slow, RIGHT_ARM], SoFar(failed=first.failed))
    assert (second.step, second.alert) == (Step.END, True)


def test_tingling_takes_the_bands_off_for_one_new_fit_and_then_for_good() -> None:
    tingling = replace(GOOD_LEG, feeling=Feeling.TINGLING)
    first = decide([tingling], FRESH)
    assert first.step is Step.FIT_AGAIN
    assert decide([tingling], SoFar(failed=first.failed)).step is Step.END


def test_both_limbs_of_one_fitting_are_one_check() -> None:
    bad = replace(GOOD_ARM, refill=Refill.LONGER)
    assert decide([bad, replace(bad, limb=Limb.RIGHT_ARM)], FRESH).failed == 1


def test_a_slow_refill_and_later_a_blue_hand_are_two_failed_checks() -> None:
    first = decide([replace(GOOD_ARM, refill=Refill.LONGER)], FRESH)
    assert failed(Verdict.STOP, ("blue",), SoFar(failed=first.failed)).step is Step.END


def test_loose_bands_get_one_new_fit_before_the_first_set_and_then_go_marked_loose() -> None:
    loose = replace(GOOD_ARM, tightness=5)
    first = decide([loose], FRESH)
    assert (first.step, first.failed) == (Step.SNUGGER, 0)
    second = decide([loose], SoFar(snugged=True))
    assert (second.step, second.loose) == (Step.GO, True)


def test_what_was_too_tight_and_is_loose_now_is_not_tightened_again() -> None:
    found = decide([replace(GOOD_ARM, tightness=5)], SoFar(failed=1))
    assert (found.step, found.loose, found.failed) == (Step.GO, True, 1)


def test_loose_bands_are_never_tightened_once_a_set_is_done() -> None:
    found = decide([replace(GOOD_ARM, tightness=5)], SoFar(sets_done=1))
    assert (found.step, found.loose) == (Step.GO, True)


def test_an_unseen_refill_waits_for_the_coach_unless_he_allowed_it() -> None:
    unseen = replace(GOOD_LEG, refill=Refill.CANT_SEE, compared=Compared.SAME)
    assert decide([unseen], FRESH).step is Step.ASK_COACH
    allowed = decide([unseen], SoFar(unseen_allowed=LEGS))
    assert (allowed.step, allowed.loose, allowed.because) == (Step.GO, False, ("unseen_refill",))


@pytest.mark.parametrize("allowed", [ARMS, ALL - {GOOD_LEG.limb}])
def test_what_he_allowed_for_other_limbs_says_nothing_about_this_one(allowed: frozenset[Limb]) -> None:
    unseen = replace(GOOD_LEG, refill=Refill.CANT_SEE, compared=Compared.SAME)
    seen = replace(GOOD_LEG, limb=Limb.RIGHT_LEG if GOOD_LEG.limb is Limb.LEFT_LEG else Limb.LEFT_LEG)
    assert decide([unseen], SoFar(unseen_allowed=allowed)).step is Step.ASK_COACH
    assert decide([seen, unseen], SoFar(unseen_allowed=allowed)).step is Step.ASK_COACH


def test_snug_arms_go() -> None:
    found = decide([replace(GOOD_ARM, tightness=7)], FRESH)
    assert (found.step, found.because, found.loose) == (Step.GO, ("snug_arms",), False)


def test_an_incomplete_check_decides_nothing() -> None:
    with pytest.raises(ValueError, match="checks"):
        decide([replace(GOOD_ARM, feeling=None)], FRESH)
    with pytest.raises(ValueError, match="checks"):
        decide([], FRESH)


@pytest.mark.parametrize(
    ("session", "sets", "slow", "refitted", "wanted"),
    [
        (1, 1, False, False, Again.LIMBS_SWELL),
        (4, 1, False, False, Again.LIMBS_SWELL),
        (5, 1, False, False, None),
        (5, 1, True, False, Again.WAS_SLOW),
        (5, 2, True, False, None),
        (1, 0, False, False, None),
        (1, 2, False, False, None),
        (9, 3, False, True, Again.REFITTED),
    ],
)
def test_when_to_check_again(
    session: int, sets: int, slow: bool, refitted: bool, wanted: Again | None
) -> None:
    assert check_again(session, sets, was_slow=slow, refitted=refitted) is wanted


complete = checks.filter(lambda check: check.complete)
limbs = st.frozensets(st.sampled_from(Limb))
so_fars = st.builds(SoFar, st.integers(0, 3), st.booleans(), st.integers(0, 4), limbs)


@given(st.lists(complete, min_size=1, max_size=2), so_fars)
def test_a_failed_check_never_goes_and_two_always_end(found: list[CuffCheck], so_far: SoFar) -> None:
    step = decide(found, so_far)
    if any(check.colour is Colour.BLUE or check.feeling is not Feeling.FINE for check in found):
        assert step.step in (Step.FIT_AGAIN, Step.END)
    if step.failed > so_far.failed:
        assert (step.step is Step.END) == (step.failed >= 2) == step.alert
    else:
        assert step.step not in (Step.END, Step.FIT_AGAIN, Step.LOOSEN)


@given(complete, complete, so_fars)
def test_a_second_limb_never_makes_the_step_milder(one: CuffCheck, other: CuffCheck, so_far: SoFar) -> None:
    milder = [Step.GO, Step.SNUGGER, Step.ASK_COACH, Step.LOOSEN, Step.FIT_AGAIN, Step.END]
    alone, together = decide([one], so_far), decide([one, other], so_far)
    assert milder.index(together.step) >= milder.index(alone.step)


@pytest.mark.parametrize(
    ("tightness", "step"), [(5, None), (7, None), (8, Step.LOOSEN), (9, Step.FIT_AGAIN), (10, Step.FIT_AGAIN)]
)
def test_a_tightness_of_eight_and_above_decides_before_the_other_questions(
    tightness: int, step: Step | None
) -> None:
    found = at_once([CuffCheck(Limb.LEFT_ARM, tightness), CuffCheck(Limb.RIGHT_ARM, tightness)], FRESH)
    assert (found.step if found else None) is step


@given(st.lists(checks, min_size=1, max_size=2))
def test_what_is_decided_at_once_is_never_less_strict_than_the_whole_check(found: list[CuffCheck]) -> None:
    early = at_once(found, FRESH)
    if early is not None and all(check.complete for check in found):
        assert early.step is decide(found, FRESH).step
