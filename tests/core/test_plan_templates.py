"""Movements, ready-made plans, and plans as text."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.cuffs.limbs import Limb, banded
from core.movements import MOVEMENTS, Kind
from core.plan_text import plan_from_text, plan_to_text
from core.plans import (
    FIXED_AIMS,
    FIXED_OPEN_AIMS,
    OPEN_AIMS,
    WALK_LIMIT_MIN,
    Exercise,
    Goal,
    Plan,
    Region,
    Scheme,
    Side,
)
from core.resistance import Ladder
from core.templates import TEMPLATES, Template, build, from_maximum, without_failure
from core.units import Load, Unit

RACK = tuple(Load(Decimal(number)) for number in (4, 8, 12, 16))
LEFT_FIRST = (Side.LEFT, Side.RIGHT)


def made(template: Template, sides: tuple[Side, ...] = LEFT_FIRST, goal: Goal | None = None) -> Plan:
    return build(template, RACK, dict.fromkeys(template.loaded, RACK[0]), sides, goal=goal)


def test_only_body_weight_has_a_ladder_and_each_is_one() -> None:
    for each in MOVEMENTS.values():
        if each.rungs:
            assert each.kind is Kind.BODYWEIGHT
            assert Ladder(each.rungs, 80).rungs == each.rungs


def test_movements_that_replace_each_other_have_their_bands_on_the_same_limbs() -> None:
    regions: dict[str, set[Region]] = {}
    for each in MOVEMENTS.values():
        regions.setdefault(each.pattern, set()).add(each.region)
    assert all(len(found) == 1 for found in regions.values())


@pytest.mark.parametrize("template", TEMPLATES.values(), ids=lambda each: each.name)
def test_every_template_makes_a_plan_that_survives_being_stored(template: Template) -> None:
    plan = made(template)
    assert plan_from_text(plan_to_text(plan)) == plan
    assert {one.region for one in plan.exercises} == template.regions


@pytest.mark.parametrize("text", ["", "{}", "[]", '{"name":"x","exercises":[]}', "null"])
def test_text_that_is_no_plan_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"^plan:"):
        plan_from_text(text)


def test_dumbbells_are_a_squat_and_a_curl_in_open_sets() -> None:
    squat, curl = made(TEMPLATES["dumbbells"]).exercises
    assert (squat.movement, squat.region, squat.aims) == ("goblet_squat", Region.LEGS, OPEN_AIMS)
    assert (curl.movement, curl.region, curl.load) == ("curl", Region.ARMS, RACK[0])
    assert curl.reachable == RACK


def test_rehab_is_thirty_and_three_times_fifteen() -> None:
    plan = made(TEMPLATES["rehab_fixed"])
    assert plan.goal is Goal.REHAB
    assert [one.aims for one in plan.exercises] == [FIXED_AIMS]


def test_travel_begins_on_the_easiest_rung_without_any_load() -> None:
    push_up, squat = made(TEMPLATES["travel"]).exercises
    assert (push_up.rung, push_up.load) == ("hands 61 cm up", None)
    assert squat.rung == "sit to stand, high chair"


def test_gentle_is_ten_minutes_of_walking_and_chair_squats() -> None:
    walk, squat = made(TEMPLATES["gentle"]).exercises
    assert (walk.scheme, walk.walk_min, walk.walk_kmh, walk.limit_min) == (
        Scheme.WALK,
        10,
        4.0,
        WALK_LIMIT_MIN,
    )
    assert squat.scheme is Scheme.FIXED


def test_the_weaker_side_works_first() -> None:
    assert made(TEMPLATES["weaker_side"], (Side.RIGHT, Side.LEFT)).exercises[0].sides == (
        Side.RIGHT,
        Side.LEFT,
    )


def test_movements_for_both_limbs_know_no_sides() -> None:
    assert {one.sides for one in made(TEMPLATES["dumbbells"]).exercises} == {(Side.BOTH,)}


@pytest.mark.parametrize("sides", [(), (Side.BOTH,), (Side.LEFT, Side.BOTH), (Side.LEFT, Side.LEFT)])
def test_a_one_armed_row_needs_its_sides(sides: tuple[Side, ...]) -> None:
    with pytest.raises(ValueError, match=r"^sides:"):
        made(TEMPLATES["weaker_side"], sides)


@pytest.mark.parametrize("template", TEMPLATES.values(), ids=lambda each: each.name)
def test_rehab_refuses_every_set_to_failure_and_nothing_else(template: Template) -> None:
    if any(scheme is Scheme.OPEN for _, scheme in template.parts):
        with pytest.raises(ValueError, match=r"^scheme:"):
            made(template, goal=Goal.REHAB)
    else:
        assert made(template, goal=Goal.REHAB).goal is Goal.REHAB


@given(st.sampled_from(sorted(TEMPLATES)), st.sets(st.sampled_from(Limb)))
def test_no_plan_puts_a_band_where_it_is_not_allowed(name: str, allowed: set[Limb]) -> None:
    template = TEMPLATES[name]
    starts = dict.fromkeys(template.loaded, RACK[0])
    if template.fits(allowed):
        plan = build(template, RACK, starts, LEFT_FIRST, limbs=allowed)
        assert all(banded(one) <= allowed for one in plan.exercises)
        assert {one.movement for one in plan.exercises} == {movement for movement, _ in template.parts}
    else:
        with pytest.raises(ValueError, match=r"^regions:"):
            build(template, RACK, starts, LEFT_FIRST, limbs=allowed)


@pytest.mark.parametrize("limb", list(Limb))
def test_each_limb_alone_has_plans_with_and_without_sets_to_failure(limb: Limb) -> None:
    fitting = [each for each in TEMPLATES.values() if each.fits({limb})]
    assert {each.to_failure for each in fitting} == {True, False}
    assert all(each.sides({limb}) == {limb.side} for each in fitting)


def test_a_load_that_is_not_owned_or_not_given_is_refused() -> None:
    for starts in ({}, {"goblet_squat": Load(Decimal(5))}, {"goblet_squat": Load(Decimal(4), Unit.LB)}):
        with pytest.raises(ValueError, match=r"^start:"):
            build(TEMPLATES["one_dumbbell"], RACK, starts)


@pytest.mark.parametrize(
    ("maximum", "start"),
    [("40", 12), ("39.9", 8), ("40.1", 12), ("8", 4), ("7.99", None), ("100", 16), ("0.1", None)],
)
def test_thirty_percent_of_a_maximum_and_never_above_half(maximum: str, start: int | None) -> None:
    found = from_maximum(Load(Decimal(maximum)), RACK)
    assert found == (None if start is None else Load(Decimal(start)))


def test_a_maximum_in_pounds_is_compared_in_mass() -> None:
    assert from_maximum(Load(Decimal(88), Unit.LB), RACK) == RACK[1]  # 39.9 kg
    assert from_maximum(Load(Decimal(89), Unit.LB), RACK) == RACK[2]  # 40.4 kg


def test_nothing_owned_gives_no_start() -> None:
    assert from_maximum(Load(Decimal(40)), ()) is None


@given(
    st.decimals("0.1", "400", places=1),
    st.lists(st.decimals("0.5", "100", places=1), min_size=1, unique=True),
)
def test_a_start_from_a_maximum_is_owned_and_at_most_half_of_it(top: Decimal, weights: list[Decimal]) -> None:
    owned = tuple(Load(weight) for weight in sorted(weights))
    start = from_maximum(Load(top), owned)
    if start is None:
        assert owned[0].value * 2 > top
    else:
        assert start in owned
        assert start.value * 2 <= top


def test_without_failure_closes_an_open_last_set_too() -> None:
    squat = Exercise("goblet_squat", Region.LEGS, Scheme.FIXED, FIXED_OPEN_AIMS)
    [closed] = without_failure(Plan("squats", (squat,))).exercises
    assert (closed.aims, closed.to_failure, squat.to_failure) == (FIXED_AIMS, False, True)
