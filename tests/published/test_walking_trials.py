"""Walking and cycling with leg bands in trials, beside what is planned here."""

import pytest

from core.plans import WALK_LIMIT_MIN
from core.templates import WALK_MIN
from core.walking import BOUT_MIN, BOUTS, CEILING, SLOWEST_KMH, START_KMH, TOP_KMH, vo2, within_ceiling


def test_five_times_two_minutes_are_the_ten_of_one_walk() -> None:
    """5 x 2 min at 50 m/min, 1 min between (Abe et al. 2006; Sakamaki et al. 2011; read): ten minutes of walking."""
    assert 5 * 2 == BOUT_MIN == WALK_MIN
    assert SLOWEST_KMH == 50 * 60 / 1000
    assert WALK_LIMIT_MIN >= 5 * 2 + 4 * 1


def test_bands_made_walking_dearer_by_two_points_and_far_from_the_ceiling() -> None:
    """19.5 (SD 3.6) % of VO2max with, 17.2 (3.1) % without (Abe et al. 2006, abstract)."""
    assert round(19.5 - 17.2, 1) == 2.3
    assert CEILING > (19.5 + 2 * 3.6) / 100
    assert abs(100 * vo2(3.0) / 50 - 17.2) < 3.1


def test_twenty_minutes_at_67_metres_a_minute_are_two_rounds_at_the_starting_pace() -> None:
    """60-78 y, 20 min at 67 m/min, 5 days a week (Abe et al. 2010, J Geriatr Phys Ther 33:34, read)."""
    assert BOUTS * BOUT_MIN == 20
    assert pytest.approx(START_KMH, abs=0.03) == 67 * 60 / 1000
    assert WALK_LIMIT_MIN < 20  # in one go only with a pause without bands: own caution, no source


def test_ten_minutes_at_4_km_an_hour() -> None:
    """Clarkson et al. 2017, JSAMS 20:1041: four times a week, from memory; session effort 14, then 11 (of 6-20), read."""
    assert (BOUT_MIN, START_KMH) == (10, 4.0)
    assert (11 - 6) / 14 < (14 - 6) / 14 < 0.6  # both below "hard", on a scale from 0 to 1


def test_the_outdoor_trial_reaches_its_last_pace_below_the_top() -> None:
    """4 km/h and 0.5 more every 4 of 12 weeks, at 60 % of occlusion pressure (conference abstract, read)."""
    assert START_KMH + 0.5 * (12 // 4) <= TOP_KMH


def test_cycling_at_40_percent_lies_below_the_ceiling_too() -> None:
    """40 % of VO2max, 15 min, 3 days a week, 8 weeks: VO2max +6.4, time to exhaustion +15.4 % (JSSM 9:452, read)."""
    assert CEILING > 0.40
    assert WALK_LIMIT_MIN == 15
    assert within_ceiling(4.0, 10.17 / 0.40)


def test_a_walk_at_4_km_an_hour_is_refused_to_nobody_above_20() -> None:
    """10.17 ml/kg/min (derived): half of a VO2max of 20.3."""
    assert not within_ceiling(4.0, 20.3)
    assert within_ceiling(4.0, 20.4)
