"""Seconds, loads, lengths, blood pressure, and counts by side."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import (
    BloodPressure,
    Count,
    Sided,
    Why,
    blood_pressure,
    body_weight,
    centimetres,
    load,
    seconds,
    side_numbers,
)
from core.units import Load, Unit
from tests.conversations.answers.table import outcome


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("3", 3),
        ("3s", 3),
        ("3 seconds", 3),
        ("about 3", 3),
        ("2,5", 2.5),
        ("2.5 sec", 2.5),
        ("one and a half seconds", 1.5),
        ("1:30", 90),
        ("1 min", 60),
        ("1 min 30", 90),
        ("1min30s", 90),
        ("1 minute 30 seconds", 90),
        ("half a minute", 30),
        ("120", 120),
        ("121", Why.TOO_HIGH),
        ("2:01", Why.TOO_HIGH),
        ("1:75", Why.SEVERAL),
        ("1 min 75", Why.NOT_A_NUMBER),
        ("2-3", Why.SEVERAL),
        ("3 2", Why.SEVERAL),
        ("under 2", Why.OPEN_ENDED),
        ("<2", Why.OPEN_ENDED),
        ("3 hours", Why.NOT_A_NUMBER),
        ("300 ms", Why.NOT_A_NUMBER),
        ("-3", Why.TOO_LOW),
        ("nan", Why.NOT_A_NUMBER),
    ],
)
def test_seconds_are_read_with_or_without_their_unit(text: str, value: object) -> None:
    assert outcome(seconds, text, 120) == value


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("12 kg", "12", Unit.KG),
        ("12,5kg", "12.5", Unit.KG),
        ("12.5 KG", "12.5", Unit.KG),
        ("12½ kg", "12.5", Unit.KG),
        ("two and a half kilos", "2.5", Unit.KG),
        ("kg 12", "12", Unit.KG),
        ("25 lb", "25", Unit.LB),
        ("25lbs", "25", Unit.LB),
        ("25 pounds", "25", Unit.LB),
        ("0 kg", "0", Unit.KG),
        ("500 kg", "500", Unit.KG),
    ],
)
def test_a_load_keeps_the_number_and_the_unit_it_was_typed_in(text: str, value: str, unit: Unit) -> None:
    assert load(text) == Load(Decimal(value), unit)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("12", Why.NO_UNIT),
        ("1.250 kg", Why.NOT_A_NUMBER),
        ("2 x 12 kg", Why.SEVERAL),
        ("12 kg each", Why.NOT_A_NUMBER),
        ("12 kg 25 lb", Why.SEVERAL),
        ("12 kg lb", Why.NO_UNIT),
        ("-5 kg", Why.TOO_LOW),
        ("500.5 kg", Why.TOO_HIGH),
        ("12 stone", Why.NOT_A_NUMBER),
        ("nan kg", Why.NOT_A_NUMBER),
    ],
)
def test_a_load_without_one_number_and_one_unit_is_refused(text: str, why: Why) -> None:
    assert outcome(load, text) is why


def test_a_bare_number_takes_the_unit_of_the_plan() -> None:
    assert load("12,5", Unit.LB) == Load(Decimal("12.5"), Unit.LB)
    assert load("12,5 kg", Unit.LB) == Load(Decimal("12.5"), Unit.KG)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("172", "172"),
        ("172 cm", "172"),
        ("1.72", "172"),
        ("1,72 m", "172"),
        ("1m72", "172"),
        ("1 m 72", "172"),
        ("5 ft 8", "172.7"),
        ("I'm about 5 ft 8", "172.7"),
        ("5'8\"", "172.7"),
        ("5’8”", "172.7"),
        ("5ft8in", "172.7"),
        ("5 foot", "152.4"),
        ("68 in", "172.7"),
        ("100", "100"),
        ("230", "230"),
        ("99", Why.TOO_LOW),
        ("231", Why.TOO_HIGH),
        ("5.8", Why.TOO_LOW),
        ("5 ft 12", Why.NOT_A_NUMBER),
        ("1720 mm", Why.NOT_A_NUMBER),
        ("172 cm in", Why.NOT_A_NUMBER),
        ("172 or 173", Why.SEVERAL),
    ],
)
def test_a_height_is_read_in_metric_and_in_feet(text: str, value: object) -> None:
    wanted = value if isinstance(value, Why) else Decimal(str(value))
    assert outcome(centimetres, text, 100, 230) == wanted


def test_a_girth_is_read_in_centimetres_or_inches() -> None:
    assert centimetres("55,5", 15, 100) == Decimal("55.5")
    assert centimetres("21.5 in", 15, 100) == Decimal("54.6")
    assert centimetres("0.55 m", 15, 100) == 55


@pytest.mark.parametrize(
    "text",
    [
        "128/82",
        "128 over 82",
        "128 82",
        "128-82",
        "BP 128/82 mmHg",
        "１２８／８２",
        "sys 128 dia 82",
        "128,82",
    ],
)
def test_a_blood_pressure_is_read_as_the_monitor_shows_it(text: str) -> None:
    assert blood_pressure(text) == BloodPressure(128, 82)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("300/200", BloodPressure(300, 200)),
        ("50/20", BloodPressure(50, 20)),
        ("301/100", Why.NOT_A_PRESSURE),
        ("49/20", Why.NOT_A_PRESSURE),
        ("250/201", Why.NOT_A_PRESSURE),
        ("100/19", Why.NOT_A_PRESSURE),
        ("82/128", Why.PRESSURE_SWAPPED),
        ("128/128", Why.NOT_A_PRESSURE),
        ("12/8", Why.NOT_A_PRESSURE),
        ("128", Why.NOT_A_PRESSURE),
        ("128/82/60", Why.NOT_A_PRESSURE),
        ("128/82 pulse 60", Why.NOT_A_PRESSURE),
        ("high", Why.NOT_A_PRESSURE),
        ("", Why.NOT_A_PRESSURE),
    ],
)
def test_an_unlikely_blood_pressure_is_refused(text: str, value: object) -> None:
    assert outcome(blood_pressure, text) == value


@pytest.mark.parametrize(
    "text",
    [
        "28 left 31 right",
        "31 right 28 left",
        "L28 R31",
        "r31l28",
        "28l 31r",
        "28 L / 31 R",
        "left: 28, right: 31",
        "left 28 31 right",
        "28 left right 31",
        "left leg 28, right leg 31",
        "twenty eight left thirty one right",
    ],
)
def test_two_sides_are_read_in_any_order(text: str) -> None:
    assert side_numbers(text) == Sided(Count(28), Count(31))


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("30 each", Sided(Count(30), Count(30))),
        ("30 each side", Sided(Count(30), Count(30))),
        ("both legs 30", Sided(Count(30), Count(30))),
        ("28 left", Sided(Count(28), None)),
        ("right 31", Sided(None, Count(31))),
        ("about 28 left 31 right", Sided(Count(28, True), Count(31, True))),
        ("28/31", Why.WHICH_SIDE),
        ("28 31", Why.WHICH_SIDE),
        ("30", Why.WHICH_SIDE),
        ("28 left 31", Why.WHICH_SIDE),
        ("left 28 right", Why.WHICH_SIDE),
        ("28 left 31 left", Why.WHICH_SIDE),
        ("28-31 left", Why.WHICH_SIDE),
        ("left", Why.EMPTY),
        ("28 left hurts", Why.NOT_A_NUMBER),
    ],
)
def test_sides_are_never_guessed(text: str, value: object) -> None:
    assert outcome(side_numbers, text) == value


@given(st.integers(0, 200), st.integers(0, 200))
def test_swapping_the_order_never_swaps_the_sides(left: int, right: int) -> None:
    wanted = Sided(Count(left), Count(right))
    assert side_numbers(f"{left} left {right} right") == side_numbers(f"R{right} L{left}") == wanted


@pytest.mark.parametrize(
    ("text", "kg"),
    [
        ("70", 70.0),
        ("154 lb", 69.9),
        ("11 stone", 69.9),
        ("11 st 4", 71.7),
        ("about 11 stone 4", 71.7),
        ("I'm about 11 st 4", 71.7),
        ("11 Stone 13 lbs", 75.7),
    ],
)
def test_a_weight_may_be_said_in_stones(text: str, kg: float) -> None:
    assert float(body_weight(text)) == pytest.approx(kg, abs=0.05)


@pytest.mark.parametrize("text", ["11 st 14", "st 11", "11 stone 4 kg"])
def test_a_weight_that_cannot_be_is_asked_again(text: str) -> None:
    assert isinstance(outcome(body_weight, text), Why)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused_by_every_measure(text: str) -> None:
    for read in (side_numbers, load, body_weight, blood_pressure):
        outcome(read, text)
    outcome(seconds, text, 60)
    outcome(centimetres, text, 100, 230)
