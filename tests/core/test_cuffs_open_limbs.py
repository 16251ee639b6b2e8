"""One closed limb closes that limb: what may still wear a band, and what of a plan is left."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.cuffs.limbs import ALL, ARMS, LEGS, Limb, banded, on_open_limbs, opened, places_of, plan_on, resting
from core.plans import FIXED_AIMS, Exercise, Plan, Region, Scheme, Side

LEFT, RIGHT, BOTH = Side.LEFT, Side.RIGHT, Side.BOTH
LIMBS = st.sets(st.sampled_from(Limb))
SIDES = st.sampled_from([(BOTH,), (LEFT,), (RIGHT,), (LEFT, RIGHT), (RIGHT, LEFT)])


def work(region: Region, *sides: Side) -> Exercise:
    return Exercise("some_movement", region, Scheme.FIXED, FIXED_AIMS, sides=sides or (BOTH,))


EXERCISES = st.builds(lambda region, sides: work(region, *sides), st.sampled_from(Region), SIDES)


@pytest.mark.parametrize(
    ("stored", "limbs"),
    [
        ("arms,legs", ALL),
        ("legs", LEGS),
        ("arms", ARMS),
        ("right_arm,legs", LEGS | {Limb.RIGHT_ARM}),
        ("right_arm,left_leg", {Limb.RIGHT_ARM, Limb.LEFT_LEG}),
    ],
)
def test_clearances_of_every_age_read_and_read_back_the_same(stored: str, limbs: set[Limb]) -> None:
    assert opened(stored.split(",")) == limbs
    assert ",".join(places_of(limbs)) == stored


@pytest.mark.parametrize("unknown", ["", "arm", "left", "both"])
def test_a_name_that_is_no_place_opens_nothing_but_is_refused(unknown: str) -> None:
    with pytest.raises(ValueError, match=r"is not a valid Limb"):
        opened([unknown])


@given(LIMBS)
def test_places_name_exactly_their_limbs(limbs: set[Limb]) -> None:
    assert opened(places_of(limbs)) == limbs


@pytest.mark.parametrize(
    ("sides", "left_over"),
    [
        ((BOTH,), None),
        ((LEFT,), None),
        ((RIGHT,), (RIGHT,)),
        ((LEFT, RIGHT), (RIGHT,)),
        ((RIGHT, LEFT), (RIGHT,)),
    ],
)
def test_with_the_left_arm_closed_one_sided_work_keeps_the_right(
    sides: tuple[Side, ...], left_over: tuple[Side, ...] | None
) -> None:
    found = on_open_limbs(work(Region.ARMS, *sides), ALL - {Limb.LEFT_ARM})
    assert (found.sides if found else None) == left_over


@given(EXERCISES, LIMBS)
def test_no_band_ever_comes_to_sit_on_a_closed_limb(exercise: Exercise, limbs: set[Limb]) -> None:
    found = on_open_limbs(exercise, limbs)
    assert found is None or (banded(found) and banded(found) <= limbs)
    assert (
        found is not None
        or not {frozenset({limb}) for limb in banded(exercise) & limbs}
        or BOTH in exercise.sides
    )


@given(st.lists(EXERCISES, min_size=1, max_size=4), LIMBS, st.sampled_from(Limb))
def test_closing_one_more_limb_never_adds_a_band(
    work: list[Exercise], limbs: set[Limb], closed: Limb
) -> None:
    plan = Plan("x", tuple(work))
    before, after = plan_on(plan, limbs), plan_on(plan, limbs - {closed})
    worn = frozenset(limb for one in (before.exercises if before else ()) for limb in banded(one))
    assert all(banded(one) <= worn - {closed} for one in (after.exercises if after else ()))
    assert set(resting(plan, limbs)) <= set(resting(plan, limbs - {closed}))


@given(st.lists(EXERCISES, min_size=1, max_size=4))
def test_with_every_limb_open_a_plan_stays_as_it_is(work: list[Exercise]) -> None:
    plan = Plan("x", tuple(work))
    assert plan_on(plan, ALL) == plan
    assert plan_on(plan, ()) is None
