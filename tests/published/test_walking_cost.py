"""What walking costs, by the ACSM walking equation (from memory), and the published walking programme."""

import pytest

from core.walking import BETWEEN_MIN, BOUT_MIN, BOUTS, START, Walk, WalkReason, mets, next_walk, vo2


def kmh(metres_a_minute: float) -> float:
    return metres_a_minute * 60 / 1000


@pytest.mark.parametrize(
    ("speed", "uptake", "met"),
    [(kmh(50), 8.5, 2.43), (kmh(67), 10.2, 2.91), (4.0, 10.17, 2.90), (5.0, 11.83, 3.38), (6.0, 13.5, 3.86)],
)
def test_worked_values_of_the_walking_equation(speed: float, uptake: float, met: float) -> None:
    """3.5 + 0.1 S: derived."""
    assert vo2(speed) == pytest.approx(uptake, abs=0.01)
    assert mets(speed) == pytest.approx(met, abs=0.01)


def test_slow_treadmill_walking_of_a_trial() -> None:
    """0.9 m/s = 54 m/min: 8.9 ml/kg/min (Stray-Gundersen et al. 2020, protocol read; cost derived)."""
    assert vo2(0.9 * 3.6) == pytest.approx(8.9)


def test_the_equation_meets_a_measured_walk() -> None:
    """50 m/min cost 17.2 % of VO2max without bands (Abe et al. 2006, J Appl Physiol 100:1460, read); the
    equation gives 17 % at a VO2max of 50."""
    assert vo2(kmh(50)) / 50 == pytest.approx(0.172, abs=0.005)


def test_the_published_programme() -> None:
    """2 x 10 min with 5 min between, from 4 km/h, +0.5 km/h every 4 weeks (conference abstract, read)."""
    assert (BOUTS, BOUT_MIN, BETWEEN_MIN, START.kmh) == (2, 10, 5, 4.0)
    full = Walk(10, 4.0, 2)
    assert next_walk(full, weeks_at_pace=3) == (full, WalkReason.HOLD_WEEKS)
    assert next_walk(full, weeks_at_pace=4) == (Walk(10, 4.5, 2), WalkReason.FASTER)
