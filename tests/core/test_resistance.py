"""From equipment to exact loads."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.plans import Rung
from core.resistance import (
    Ladder,
    Loads,
    dumbbells,
    scale,
    shown,
    stack,
    with_plates,
    with_tempo,
)
from core.units import Load, Unit


def kg(value: float | str) -> Load:
    return Load(Decimal(str(value)))


def values(loads: tuple[Load, ...]) -> list[str]:
    return [shown(load) for load in loads]


def test_dumbbells_are_sorted_and_listed_once() -> None:
    rack = dumbbells([Decimal("5"), Decimal("2.5"), Decimal("5.0")], Unit.LB)
    assert values(rack) == ["2.5 lb", "5 lb"]


def test_a_stack_goes_up_by_its_step() -> None:
    assert values(stack(Decimal("2.5"), Decimal("2.5"), Decimal("11"), Unit.KG)) == [
        "2.5 kg", "5 kg", "7.5 kg", "10 kg",
    ]  # fmt: skip


def test_plates_go_on_in_pairs() -> None:
    loads = with_plates(Decimal(10), [Decimal("1.25"), Decimal("2.5")], Unit.KG)
    assert values(loads) == ["10 kg", "12.5 kg", "15 kg", "17.5 kg"]


def test_two_pairs_alike_can_both_go_on() -> None:
    loads = with_plates(Decimal(2), [Decimal("0.5"), Decimal("0.5")], Unit.KG)
    assert values(loads) == ["2 kg", "3 kg", "4 kg"]


@given(st.lists(st.sampled_from(["0.25", "0.5", "1.1", "1.25", "2.5", "5"]), max_size=7))
def test_every_load_is_the_exact_sum_of_bar_and_pairs(plates: list[str]) -> None:
    """Against the plain listing of all subsets."""
    pairs = [Decimal(plate) for plate in plates]
    subsets = {
        Decimal("7.5") + 2 * sum((plate for at, plate in enumerate(pairs) if mask >> at & 1), Decimal(0))
        for mask in range(1 << len(pairs))
    }
    found = with_plates(Decimal("7.5"), pairs, Unit.KG)
    assert {load.value for load in found} == subsets
    assert list(found) == sorted(found, key=lambda load: load.value)


BAD = [
    (lambda: Loads(()), "available"),
    (lambda: Loads((kg(0),)), "available"),
    (lambda: Loads((kg(5), Load(Decimal(5), Unit.LB))), "available"),
    (lambda: Loads((kg(5),), kg(0)), "one_rm"),
    (lambda: Ladder(()), "rungs"),
    (lambda: Ladder((Rung("a"), Rung("a"))), "rungs"),
    (lambda: Ladder((Rung(""),)), "rungs"),
    (lambda: Ladder((Rung("a", 0.6), Rung("b", 0.5))), "rungs"),
    (lambda: Ladder((Rung("a", float("nan")),)), "rungs"),
    (lambda: Ladder((Rung("a"),), -1), "body_mass_kg"),
    (lambda: stack(Decimal(5), Decimal(0), Decimal(9), Unit.KG), "stack"),
    (lambda: stack(Decimal(1), Decimal("0.001"), Decimal(9), Unit.KG), "stack"),
    (lambda: with_plates(Decimal(5), [Decimal(-1)], Unit.KG), "pairs"),
]


@pytest.mark.parametrize(("wrong", "named"), BAD)
def test_bad_equipment_names_its_field(wrong: object, named: str) -> None:
    with pytest.raises(ValueError, match=f"^{named}:"):
        wrong()  # type: ignore[operator]


def test_elastic_bands_are_an_order_without_kilograms() -> None:
    places = scale(Ladder((Rung("yellow"), Rung("red"), Rung("blue"))))
    assert places.names == ("yellow", "red", "blue")
    assert places.x[0] < places.x[1] < places.x[2]


def test_a_missing_fraction_is_filled_in_from_its_neighbours() -> None:
    ladder = Ladder((Rung("a"), Rung("b", 0.4), Rung("c"), Rung("d", 0.6), Rung("e")))
    x = scale(ladder).x
    assert list(x) == sorted(x)
    assert x[2] == pytest.approx((x[1] + x[3]) / 2)


def test_slow_reps_are_a_rung_between_rungs() -> None:
    slow = with_tempo(Ladder((Rung("knees", 0.49), Rung("floor", 0.64)), 80))
    assert [rung.name for rung in slow.rungs] == [
        "knees", "knees, tempo 2/2", "floor", "floor, tempo 2/2",
    ]  # fmt: skip
    x = scale(slow).x
    assert x[0] < x[1] < x[2] < x[3]
    assert slow.rungs[1].fraction is None
