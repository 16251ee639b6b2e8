"""Typed lists of loads, and the load to start with."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import Unclear, Why
from conversations.equipment.loads import (
    MOST_LOADS,
    listed,
    loads_from_text,
    numbers_and_unit,
    read_owned,
    read_start,
    to_text,
)
from core.units import Load, Unit

RACK = loads_from_text("8 kg|12 kg|16 kg")


@pytest.mark.parametrize(
    ("text", "numbers", "unit"),
    [
        ("4, 6, 8, 10 kg", "4 6 8 10", Unit.KG),
        ("4kg, 6kg", "4 6", Unit.KG),
        ("4 and 10 lb", "4 10", Unit.LB),
        ("4,6,8", "4 6 8", None),
        ("2.5; 5", "2.5 5", None),
        ("10, 4, 4.0", "4 10", None),
        ("2-10 by 2", "2 4 6 8 10", None),
        ("2-10 by 2 kg", "2 4 6 8 10", Unit.KG),
        ("2 to 9 kg in steps of 3", "2 5 8", Unit.KG),
        ("From 5 – 10 by 2.5 lbs.", "5 7.5 10", Unit.LB),
        ("12", "12", None),
        ("500 kg", "500", Unit.KG),
        ("bar 10 kg, plates 2x1.25 2x2.5", "10 12.5 15 17.5", Unit.KG),
        ("Bar 10 with plates 4 x 2.5 kg", "10 15 20", Unit.KG),
        ("handle 2kg + 2x0.5, 2x1 and 2x1.25", "2 3 4 4.5 5 5.5 6.5 7.5", Unit.KG),
        ("bar 5, discs 2x1", "5 7", None),
        ("bar 45 lb, plates 2x10 lb", "45 65", Unit.LB),
    ],
)
def test_lists_and_spans_are_read(text: str, numbers: str, unit: Unit | None) -> None:
    assert read_owned(text) == (tuple(Decimal(one) for one in numbers.split()), unit)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "pairs",
        "4-10",
        "2x5",
        "-4",
        "0",
        "4 6 heavy",
        "10-2 by 2",
        "2-20 by 0",
        "1-200 by 1",
        "4..5",
        "0.001 kg",
    ],
)
def test_what_is_no_list_is_asked_again(text: str) -> None:
    with pytest.raises(Unclear) as problem:
        read_owned(text)
    assert problem.value.reason is Why.NOT_A_NUMBER


def test_a_comma_that_may_be_a_decimal_point_is_never_guessed() -> None:
    with pytest.raises(Unclear) as problem:
        read_owned("2,5 kg")
    assert problem.value.options == ("2.5", "2 and 5")


def test_two_units_are_asked_back() -> None:
    with pytest.raises(Unclear) as problem:
        read_owned("5 kg, 10 lb")
    assert problem.value.reason is Why.NO_UNIT


def test_a_load_beyond_lifting_is_asked_back() -> None:
    with pytest.raises(Unclear) as problem:
        read_owned("501 kg")
    assert problem.value.reason is Why.TOO_HIGH


@pytest.mark.parametrize(
    ("count", "fits"), [(MOST_LOADS - 1, True), (MOST_LOADS, True), (MOST_LOADS + 1, False)]
)
def test_a_rack_has_an_end(count: int, fits: bool) -> None:
    for text in (f"1-{count} by 1 kg", " ".join(map(str, range(1, count + 1)))):
        if fits:
            assert len(read_owned(text)[0]) == count
        else:
            with pytest.raises(Unclear):
                read_owned(text)


NUMBERS = st.lists(st.decimals("0.25", "500", places=2), min_size=1, max_size=MOST_LOADS, unique=True)


@given(NUMBERS, st.sampled_from(Unit))
def test_a_list_written_out_is_read_back(numbers: list[Decimal], unit: Unit) -> None:
    owned = loads_from_text(to_text(tuple(sorted(numbers)), unit))
    assert read_owned(listed(owned)) == (tuple(load.value for load in owned), unit)
    assert numbers_and_unit(to_text(tuple(sorted(numbers)), None)) == (tuple(sorted(numbers)), None)


@given(st.text(max_size=60))
def test_any_text_is_read_or_asked_again(text: str) -> None:
    try:
        numbers, _ = read_owned(text)
    except Unclear:
        return
    assert list(numbers) == sorted(set(numbers))
    assert numbers[0] > 0


@pytest.mark.parametrize(
    ("text", "load"),
    [
        ("12", 12),
        ("12 kg", 12),
        ("max 40", 12),
        ("Max: 40 kg", 12),
        ("max 88 lb", 8),
        ("1rm 60", 16),
        ("max 15.9", 0),
    ],
)
def test_a_start_is_typed_or_comes_from_a_maximum(text: str, load: int) -> None:
    assert read_start(text, RACK) == (Load(Decimal(load)) if load else None)


@pytest.mark.parametrize("text", ["13", "12 lb", "max", "max 0", "heavy", "", "max lots"])
def test_a_start_that_is_not_owned_or_no_load_is_asked_again(text: str) -> None:
    with pytest.raises(Unclear):
        read_start(text, RACK)


@pytest.mark.parametrize(
    "text",
    [
        "bar 10 kg",
        "bar 10 kg, plates 1.25 2.5",
        "bar 10 kg, plates 3x1.25",
        "bar 10 kg, plates 2x0",
        "bar, plates 2x1",
    ],
)
def test_a_bar_with_plates_that_nobody_can_count_is_asked_again(text: str) -> None:
    with pytest.raises(Unclear):
        read_owned(text)


def test_a_bar_in_kilograms_takes_no_plates_in_pounds() -> None:
    with pytest.raises(Unclear) as found:
        read_owned("bar 10 kg, plates 2x5 lb")
    assert found.value.reason is Why.NO_UNIT


@pytest.mark.parametrize("typed", ["max 0", "max 0.001 kg", "1rm 0.4"])
def test_a_best_lift_of_nothing_is_asked_again(typed: str) -> None:
    with pytest.raises(Unclear) as problem:
        read_start(typed, RACK)
    assert problem.value.reason is Why.TOO_LOW
