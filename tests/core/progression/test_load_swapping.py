"""The same pattern with other equipment."""

import pytest

from core.plans import Rung
from core.progression.swapping import Setting, swapped
from core.resistance import Ladder
from tests.core.progression.scenes import kg, rack

PRESS = Setting("dumbbell press", "push", rack(one_rm=100, high=60))
PUSH_UP = Setting("push-up", "push", Ladder((Rung("high", 0.30), Rung("low", 0.41), Rung("floor", 0.64)), 80))


def test_the_same_share_of_both_maxima() -> None:
    machine = Setting("machine press", "push", rack(one_rm=60, low=10, step=2))
    assert swapped(PRESS, kg(30), machine) == kg(18)


def test_kilograms_to_body_weight_stay_on_the_light_side() -> None:
    assert swapped(PRESS, kg(40), PUSH_UP) == "low"  # 32.8 kg is at most 90 % of 40
    assert swapped(PRESS, kg(36), PUSH_UP) == "high"  # 32.8 would be above 32.4
    assert swapped(PRESS, kg(10), PUSH_UP) == "high"


def test_body_weight_to_kilograms() -> None:
    assert swapped(PUSH_UP, "low", Setting("press", "push", rack(high=60))) == kg(29)


def test_without_a_measure_the_easiest_is_the_beginning() -> None:
    bands = Setting("band press", "push", Ladder((Rung("thin"), Rung("thick"))))
    assert swapped(PRESS, kg(40), bands) == "thin"
    assert swapped(bands, "thick", PRESS) == kg(2)


def test_another_pattern_is_no_swap() -> None:
    with pytest.raises(ValueError, match=r"^pattern:"):
        swapped(PRESS, kg(30), Setting("row", "pull", rack()))
