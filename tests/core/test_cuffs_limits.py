"""How long bands may stay on, and when somebody is called."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.cuffs import CallKind, can_finish, next_call, on_again_at, quiet_alert_at, quiet_at
from core.cuffs.limits import CAP_MIN, calls
from core.plans import LONGEST_MIN, Region

ON = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
NAIVE = ON.replace(tzinfo=None)


def minutes(count: float) -> timedelta:
    return timedelta(minutes=count)


def test_three_calls_at_the_limit_a_minute_later_and_two_minutes_later() -> None:
    found = [(call.kind, call.at - ON) for call in calls(ON, 600, Region.ARMS)]
    assert found == [
        (CallKind.FIRST, minutes(10)),
        (CallKind.SECOND, minutes(11)),
        (CallKind.ALERT, minutes(12)),
    ]


def test_the_next_call_follows_those_given_and_ends_with_the_alert() -> None:
    given_calls = [next_call(ON, 600, Region.LEGS, count) for count in range(5)]
    assert [call and call.kind for call in given_calls] == [*CallKind, None, None]
    with pytest.raises(ValueError, match="given"):
        next_call(ON, 600, Region.LEGS, -1)


@pytest.mark.parametrize("region", list(Region))
def test_at_the_longest_plan_limit_the_alert_falls_on_the_cap(region: Region) -> None:
    last = calls(ON, 60 * LONGEST_MIN[region], region)[-1]
    assert last.at - ON <= minutes(CAP_MIN[region])


@pytest.mark.parametrize(("region", "limit"), [(Region.ARMS, 13), (Region.LEGS, 18)])
def test_a_limit_above_the_longest_is_refused(region: Region, limit: int) -> None:
    assert calls(ON, 60 * limit, region)
    for wrong in (60 * limit + 1, 0):
        with pytest.raises(ValueError, match="limit_s"):
            calls(ON, wrong, region)


def test_three_minutes_off_before_bands_go_on_again_also_over_a_clock_change() -> None:
    before = datetime(2026, 3, 29, 1, 58, tzinfo=ZoneInfo("Europe/Vienna"))
    assert on_again_at(before) == datetime(2026, 3, 29, 1, 1, tzinfo=UTC)
    assert on_again_at(ON) - ON == minutes(3)


def test_a_set_that_cannot_finish_in_time_is_not_started() -> None:
    start = ON + minutes(8)
    assert can_finish(ON, start, 30, 4, 600)  # 120 s to the second
    assert not can_finish(ON, start + timedelta(seconds=1), 30, 4, 600)
    assert not can_finish(ON, start, 31, 4, 600)


def test_a_silent_set_is_asked_about_after_half_as_long_again_and_a_minute() -> None:
    asked = quiet_at(ON, 30, 4)
    assert asked - ON == timedelta(seconds=1.5 * 120 + 60)
    assert quiet_alert_at(asked) - asked == timedelta(seconds=60)


@pytest.mark.parametrize(("reps", "tempo"), [(-1, 4), (30, 0), (30, float("nan"))])
def test_a_set_that_cannot_be_is_refused(reps: int, tempo: float) -> None:
    with pytest.raises(ValueError, match="reps"):
        quiet_at(ON, reps, tempo)


@given(st.integers(1, 780), st.datetimes(NAIVE, NAIVE + timedelta(days=9000), timezones=st.timezones()))
def test_calls_never_come_before_the_limit_nor_out_of_order(limit_s: int, on_at: datetime) -> None:
    times = [call.at for call in calls(on_at, limit_s, Region.ARMS)]
    assert times == sorted(times)
    assert times[0] - on_at.astimezone(UTC) == timedelta(seconds=limit_s)


@given(st.integers(0, 60), st.floats(1, 6), st.integers(60, 780))
def test_a_set_that_fits_never_fits_later_if_it_did_not_earlier(
    reps: int, tempo: float, limit_s: int
) -> None:
    fits = [can_finish(ON, ON + minutes(late), reps, tempo, limit_s) for late in range(14)]
    assert fits == sorted(fits, reverse=True)
