"""An alert is sent again until somebody takes it; equal ones are counted together; open ones bar training."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.safety.causes import NOW, WEEKLY, Cause, Tier, bars_training, tier_of
from core.safety.escalation import Who, asked_again_at, joins, next_round, sounds_again

AT = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
C, S, K = Who.COACH, Who.SECOND, Who.CLIENT


def minutes(count: float) -> timedelta:
    return timedelta(minutes=count)


def test_a_now_alert_goes_again_after_five_and_fifteen_minutes_and_then_with_growing_gaps() -> None:
    found = [next_round(Cause.NERVE, AT, count) for count in range(9)]
    assert [((one.at - AT) / minutes(1), one.to) for one in found if one] == [
        (0, (C,)),
        (5, (C, S)),
        (15, (C, S, K)),
        (30, (C, S)),
        (60, (C, S)),
        (120, (C, S)),
        (240, (C, S)),
        (480, (C, S)),
        (720, (C, S)),
    ]


def test_taking_it_ends_the_calls_and_asks_again_a_day_later() -> None:
    assert next_round(Cause.EMERGENCY, AT, 1, taken=True) is None
    assert asked_again_at(AT) - AT == timedelta(days=1)


def test_a_today_alert_comes_daily_and_a_weekly_one_waits_for_the_digest() -> None:
    first, second = (next_round(Cause.NO_REPLY, AT, count) for count in (0, 1))
    assert first is not None
    assert second is not None
    assert (first.at, first.to) == (AT, (C,))
    assert second.at - AT == timedelta(days=1)
    assert next_round(Cause.MISSED, AT, 0) is None


def test_a_negative_count_is_refused() -> None:
    with pytest.raises(ValueError, match="rounds"):
        next_round(Cause.NERVE, AT, -1)


@given(st.sampled_from(sorted(NOW)), st.integers(0, 5000))
def test_a_now_alert_never_ends_unacknowledged_and_its_gaps_never_shrink(cause: Cause, rounds: int) -> None:
    one, two, three = (next_round(cause, AT, rounds + more) for more in range(3))
    assert one is not None
    assert two is not None
    assert three is not None
    assert Who.COACH in one.to
    assert timedelta(0) < two.at - one.at <= three.at - two.at <= timedelta(hours=4)


@given(st.sampled_from(Cause), st.integers(0, 50))
def test_only_taking_it_or_the_digest_is_an_end(cause: Cause, rounds: int) -> None:
    assert (next_round(cause, AT, rounds) is None) == (tier_of(cause) is Tier.WEEKLY)


@pytest.mark.parametrize(("late", "sounds"), [(0, False), (30, False), (30.001, True)])
def test_one_more_of_a_cause_sounds_at_once_after_half_an_hour(late: float, sounds: bool) -> None:
    assert sounds_again(AT + minutes(late), AT) is sounds


def test_another_cause_or_one_that_was_taken_is_a_new_alert() -> None:
    assert joins(Cause.NERVE, Cause.NERVE, taken=False)
    assert not joins(Cause.NERVE, Cause.FAINT, taken=False)
    assert not joins(Cause.NERVE, Cause.NERVE, taken=True)


@pytest.mark.parametrize("cause", sorted(NOW))
def test_an_open_now_alert_bars_training_until_it_is_settled(cause: Cause) -> None:
    assert bars_training(cause, settled=False)
    assert not bars_training(cause, settled=True)


@pytest.mark.parametrize(
    ("cause", "bars"),
    [
        (Cause.SCREENED, True),
        (Cause.NO_REPLY, True),
        (Cause.PAIN_PAUSED, True),
        (Cause.STOPPED, False),
        (Cause.MISSED, False),
    ],
)
def test_which_slower_alerts_bar_training(cause: Cause, bars: bool) -> None:
    assert bars_training(cause, settled=False) is bars


def test_no_cause_is_in_two_tiers() -> None:
    assert not NOW & WEEKLY
    assert {tier_of(cause) for cause in Cause} == set(Tier)
