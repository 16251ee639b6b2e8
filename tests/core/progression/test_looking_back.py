"""What a session was expected to bring, from those before it alone."""

from datetime import date
from decimal import Decimal

import pytest

from core.plans import Scheme
from core.progression import Request, SessionRecord, advise
from core.progression.looking_back import expected_80
from core.resistance import Loads
from core.units import Load

OWNED = tuple(Load(Decimal(kg)) for kg in (8, 10, 12, 14))
SESSIONS = tuple(
    SessionRecord(date=date(2026, 1, day), used=OWNED[1], reps=(reps, 15, 8))
    for day, reps in ((5, 28), (8, 30), (12, 31), (15, 33))
)


def request(count: int) -> Request:
    """After so many sessions."""
    return Request("goblet_squat", Scheme.OPEN, Loads(OWNED), SESSIONS[:count])


def test_at_the_load_advised_it_is_the_range_of_the_advice() -> None:
    advice = advise(request(4))
    assert expected_80(request(4), advice.use) == advice.first_set_80


@pytest.mark.parametrize("count", [2, 3, 4])
def test_a_heavier_load_is_expected_to_bring_fewer_reps(count: int) -> None:
    ranges = [expected_80(request(count), load) for load in OWNED]
    lows = [found[0] for found in ranges if found]
    assert lows == sorted(lows, reverse=True)
    assert len(set(lows)) > 1


def test_before_the_first_session_and_at_a_load_not_at_hand_nothing_is_expected() -> None:
    assert expected_80(request(0), OWNED[1]) is None
    assert expected_80(request(3), Load(Decimal(9))) is None
