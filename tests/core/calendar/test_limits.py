"""Three sessions in seven days, 36 h apart, one walk a day, for each region."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.limits import Bout, Limit, Limits, broken_limit, broken_limits
from core.plans import Region

LISBON = "Europe/Lisbon"
MONDAY = datetime(2026, 7, 6, 18, tzinfo=UTC)


def bouts(*hours: float, region: Region = Region.ARMS, walk: bool = False) -> list[Bout]:
    return [Bout(MONDAY + timedelta(hours=hour), region, walk) for hour in hours]


@pytest.mark.parametrize(
    ("hours", "limit"), [(36, None), (35.99, Limit.HOURS_APART), (-36, None), (-35.99, Limit.HOURS_APART)]
)
def test_thirty_six_hours_lie_between_two_sessions_of_one_region(hours: float, limit: Limit | None) -> None:
    [planned] = bouts(hours)
    assert broken_limit(planned, bouts(0), LISBON) is limit


def test_arms_and_legs_do_not_count_against_each_other() -> None:
    [planned] = bouts(1)
    assert broken_limit(planned, bouts(0, region=Region.LEGS), LISBON) is None


def test_a_fourth_session_within_seven_dates_is_too_many() -> None:
    [sunday] = bouts(6 * 24)
    assert broken_limit(sunday, bouts(0, 48, 96), LISBON) is Limit.SESSIONS_A_WEEK


def test_the_same_weekday_a_week_later_is_fine_even_at_an_earlier_hour() -> None:
    [next_monday] = bouts(7 * 24 - 12)
    assert broken_limit(next_monday, bouts(0, 48, 96), LISBON) is None


def test_a_week_is_any_seven_dates_so_a_session_in_the_middle_counts_too() -> None:
    [wednesday] = bouts(48)
    assert broken_limit(wednesday, bouts(0, 96, 144), LISBON) is Limit.SESSIONS_A_WEEK


def test_a_walk_is_once_a_day_and_apart_from_lifting() -> None:
    [walk] = bouts(2, region=Region.LEGS, walk=True)
    assert broken_limit(walk, bouts(0, region=Region.LEGS), LISBON) is None
    assert broken_limit(walk, bouts(0, region=Region.LEGS, walk=True), LISBON) is Limit.WALKS_A_DAY
    assert broken_limit(walk, bouts(24, -24, region=Region.LEGS, walk=True), LISBON) is None


def test_the_day_of_a_walk_is_the_clients_own_date() -> None:
    # 23:30 UTC on Monday is already Tuesday in Lisbon in July.
    late, [morning] = (
        Bout(MONDAY + timedelta(hours=5.5), Region.LEGS, True),
        bouts(16, region=Region.LEGS, walk=True),
    )
    assert broken_limit(morning, [late], LISBON) is Limit.WALKS_A_DAY
    assert broken_limit(morning, [late], "UTC") is None


def test_the_coach_may_widen_the_limits() -> None:
    [daily] = bouts(24)
    assert broken_limit(daily, bouts(0), LISBON, Limits(hours_apart=24)) is None
    [fourth] = bouts(6 * 24)
    assert broken_limit(fourth, bouts(0, 48, 96), LISBON, Limits(sessions_a_week=4)) is None


def test_of_a_plan_only_the_sessions_that_come_too_soon_are_named() -> None:
    first, second, third = bouts(0, 20, 40)
    assert broken_limits([third, first, second], LISBON) == {second: Limit.HOURS_APART}


BOUTS = st.builds(
    lambda hour, region, walk: Bout(MONDAY + timedelta(hours=hour), region, walk),
    st.integers(0, 24 * 28),
    st.sampled_from(Region),
    st.booleans(),
)


@given(st.lists(BOUTS, max_size=25, unique=True))
def test_what_is_left_of_any_plan_keeps_every_limit(planned: list[Bout]) -> None:
    broken = broken_limits(planned, LISBON)
    kept = [bout for bout in planned if bout not in broken]
    for bout in kept:
        others = [other for other in kept if other is not bout]
        assert broken_limit(bout, others, LISBON) is None


@given(st.lists(BOUTS, max_size=10, unique=True), BOUTS)
def test_fewer_sessions_never_break_more(others: list[Bout], bout: Bout) -> None:
    if broken_limit(bout, others, LISBON) is None:
        assert all(broken_limit(bout, others[:end], LISBON) is None for end in range(len(others)))
