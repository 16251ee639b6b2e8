"""Time under bands and between sessions, against published caps and worked set lengths."""

from datetime import UTC, datetime, timedelta

import pytest

from core.calendar.limits import HOURS_APART, SESSIONS_A_WEEK, WALKS_A_DAY
from core.cuffs.limits import CAP_MIN, OFF, calls, can_finish, set_length
from core.plans import FIXED_AIMS, LIMIT_MIN, LONGEST_MIN, REST_S, Region

ON = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
REPS = [aim.high for aim in FIXED_AIMS]


@pytest.mark.parametrize(("region", "cap"), [(Region.ARMS, 15), (Region.LEGS, 20)])
def test_the_whole_chain_of_calls_lies_within_the_published_cap(region: Region, cap: int) -> None:
    """Below 15 min (arm), 20 min (leg): a support page citing the Australian Institute of Sport, second-hand."""
    assert CAP_MIN[region] == cap
    first, second, alert = calls(ON, 60 * LONGEST_MIN[region], region)
    assert second.at - ON < timedelta(minutes=cap)
    assert alert.at - ON <= timedelta(minutes=cap)
    assert first.at < second.at < alert.at


def test_three_minutes_without_bands_before_the_next() -> None:
    """The same page, second-hand."""
    assert timedelta(minutes=3) == OFF


def spell(tempo_s: float, rest_s: float) -> timedelta:
    """75 reps with their rests."""
    return set_length(sum(REPS), tempo_s) + timedelta(seconds=rest_s * (len(REPS) - 1))


@pytest.mark.parametrize(
    ("tempo", "rest", "seconds"), [(4, 30, 390), (3, 30, 315), (2, 30, 240), (4, 60, 480)]
)
def test_worked_lengths_of_thirty_and_three_times_fifteen(tempo: float, rest: float, seconds: int) -> None:
    """Derived: 75 x tempo + 3 rests."""
    assert REPS == [30, 15, 15, 15]
    assert spell(tempo, rest) == timedelta(seconds=seconds)


def test_one_such_movement_fits_into_the_usual_limit_and_two_do_not() -> None:
    """5-10 min per exercise, released between (Patterson et al. 2019, table cells from memory)."""
    one = spell(4, REST_S)
    assert timedelta(minutes=5) <= one <= timedelta(minutes=LIMIT_MIN[Region.LEGS])
    assert 2 * one > timedelta(minutes=LIMIT_MIN[Region.LEGS])


def test_the_last_set_of_a_second_movement_is_not_started_any_more() -> None:
    limit_s = 60 * LIMIT_MIN[Region.ARMS]
    assert can_finish(ON, ON + spell(4, 30) - set_length(15, 4), 15, 4, limit_s)
    assert not can_finish(ON, ON + 2 * spell(4, 30) - set_length(15, 4), 15, 4, limit_s)


def test_hours_between_sessions_and_sessions_a_week() -> None:
    """At least 36 h (trial protocol PMC7534706, table 3, read); three days a week (Yasuda 2012, read); walking
    once a day (Abe 2009, read)."""
    assert (HOURS_APART, SESSIONS_A_WEEK, WALKS_A_DAY) == (36, 3, 1)
