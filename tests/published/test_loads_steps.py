"""Steps of load: published advice, discs that exist, and exact sums."""

import math
from decimal import Decimal

from core.progression.choosing import MOST_UP
from core.resistance import stack, with_plates
from core.units import KG_PER_LB, Load, Unit

# Competition discs in kg (IPF technical rules, translated copy; 0.25 and 0.5 from memory).
DISCS = tuple(Decimal(one) for one in ("0.25", "0.5", "1.25", "2.5", "5", "10", "15", "20", "25"))


def test_a_published_step_is_two_to_ten_percent() -> None:
    """2-10 % (ACSM 2009, MSSE 41:687, read): 20 kg -> 20.4-22.0; 4 kg -> 4.08-4.40."""
    for load, low, high in ((20, 20.4, 22.0), (4, 4.08, 4.40)):
        assert (round(load * 1.02, 2), round(load * 1.10, 2)) == (low, high)


def test_the_bound_while_finding_the_load_is_wider_on_purpose() -> None:
    """30 % at once at most: own caution, no source."""
    assert math.isclose(math.exp(MOST_UP), 1.30)


def test_every_competition_disc_pairs_up_exactly() -> None:
    loads = with_plates(Decimal(20), DISCS, Unit.KG)
    assert Load(Decimal("22.5")) in loads
    assert Load(Decimal("20.5")) in loads
    assert all(load.value * 2 == int(load.value * 2) for load in loads)


def test_a_pound_is_exact_by_definition() -> None:
    """0.45359237 kg (NIST Special Publication 811, appendix B.8)."""
    assert Decimal("0.45359237") == KG_PER_LB
    assert Load(Decimal(100), Unit.LB).kilograms == 45.359237


def test_decimals_stay_decimals() -> None:
    found = stack(Decimal("2.5"), Decimal("1.1"), Decimal("12.4"), Unit.KG)
    assert [str(load.value) for load in found][:4] == ["2.5", "3.6", "4.7", "5.8"]
    assert found[-1].value == Decimal("12.4")
