"""A plan without equipment: the same pattern, the same limbs, nothing to lift but oneself."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.movements import MOVEMENTS, Kind
from core.plans import FIXED_AIMS, OPEN_AIMS, Exercise, Plan, Scheme, Side
from core.progression.travel import needs_equipment, swaps, travel_plan
from core.units import Load

TEN = Load(Decimal(10))


def exercise(name: str, sides: tuple[Side, ...] = (Side.BOTH,)) -> Exercise:
    movement = MOVEMENTS[name]
    loaded = movement.kind is Kind.LOAD
    if movement.kind is Kind.WALK:
        return Exercise(name, movement.region, Scheme.WALK, walk_min=10, walk_kmh=4.0)
    return Exercise(
        name,
        movement.region,
        Scheme.OPEN,
        OPEN_AIMS,
        TEN if loaded else None,
        (TEN,) if loaded else (),
        movement.rungs[0].name if movement.rungs else None,
        movement.rungs,
        sides,
    )


@pytest.mark.parametrize(
    ("name", "now"),
    [
        ("goblet_squat", "chair_squat"),
        ("split_squat", "chair_squat"),
        ("calf_raise", "heel_raise"),
        ("curl", "towel_curl"),
        ("floor_press", "push_up"),
        ("one_arm_row", "doorway_row"),
        ("suspended_row", "doorway_row"),
        ("chair_squat", "chair_squat"),
        ("walk", "walk"),
    ],
)
def test_each_movement_has_its_stand_in(name: str, now: str) -> None:
    assert swaps(Plan("a", (exercise(name),)))[0].now == now


def test_a_swapped_movement_begins_with_the_easiest_variation() -> None:
    plan = travel_plan(Plan("squats", (exercise("goblet_squat"),)))
    assert plan is not None
    assert plan.exercises[0].rung == "sit to stand, high chair"


@pytest.mark.parametrize("side", [Side.LEFT, Side.RIGHT])
@pytest.mark.parametrize(
    ("name", "now"),
    [
        ("one_arm_row", "one_arm_doorway_row"),
        ("one_arm_curl", "one_arm_towel_curl"),
        ("split_squat", "free_split_squat"),
    ],
)
def test_one_side_alone_stays_on_its_side_because_the_other_may_have_to_rest(
    side: Side, name: str, now: str
) -> None:
    made = travel_plan(Plan("one side", (exercise(name, (side,)),)))
    assert made is not None
    assert [(one.movement, one.sides, one.region) for one in made.exercises] == [
        (now, (side,), MOVEMENTS[name].region)
    ]


def test_two_sides_one_after_the_other_become_both_at_once() -> None:
    made = travel_plan(Plan("row", (exercise("one_arm_row", (Side.RIGHT, Side.LEFT)),)))
    assert made is not None
    assert [(one.movement, one.sides) for one in made.exercises] == [("doorway_row", (Side.BOTH,))]


def test_the_scheme_and_its_limits_stay() -> None:
    fixed = Exercise("curl", MOVEMENTS["curl"].region, Scheme.FIXED, FIXED_AIMS, TEN, (TEN,), limit_min=7)
    made = travel_plan(Plan("rehab", (fixed,), when="x"))
    assert made is not None
    [one] = made.exercises
    assert (one.scheme, one.aims, one.limit_min, made.when) == (Scheme.FIXED, FIXED_AIMS, 7, "x")


@given(st.lists(st.sampled_from(sorted(MOVEMENTS)), min_size=1, max_size=6))
def test_nothing_is_left_that_needs_equipment_and_every_limb_stays_as_it_was(names: list[str]) -> None:
    plan = Plan("any", tuple(exercise(name) for name in names))
    made = travel_plan(plan)
    assert made is not None
    assert not needs_equipment(made)
    assert [one.region for one in made.exercises] == [one.region for one in plan.exercises]
    assert [MOVEMENTS[one.movement].pattern for one in made.exercises] == [
        MOVEMENTS[name].pattern for name in names
    ]
    assert travel_plan(made) == made
