"""Alerts are repeated until a human answers, and no cause is lost."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.access import ALLOWED, Action, Actor, may
from core.alarms import Tier, client_is_told, next_send, tier, to_second_contact

RAISED = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)


@pytest.mark.parametrize(("sent", "minutes"), [(1, 5), (2, 15), (3, 30), (4, 60), (6, 240), (7, 480)])
def test_an_alert_of_now_comes_again_after_five_and_fifteen_minutes_and_then_with_growing_gaps(
    sent: int, minutes: int
) -> None:
    assert next_send(Tier.NOW, RAISED, sent) == RAISED + timedelta(minutes=minutes)


@given(st.integers(0, 500))
def test_an_unanswered_alert_is_never_dropped_and_never_waits_more_than_four_hours(sent: int) -> None:
    here, following = next_send(Tier.NOW, RAISED, sent), next_send(Tier.NOW, RAISED, sent + 1)
    assert here is not None
    assert following is not None
    assert timedelta(0) < following - here <= timedelta(hours=4)


def test_the_second_contact_hears_from_the_second_sending_and_the_client_at_the_third() -> None:
    assert [to_second_contact(Tier.NOW, sent) for sent in (1, 2, 3)] == [False, True, True]
    assert [client_is_told(Tier.NOW, sent) for sent in (1, 2, 3, 4)] == [False, False, True, False]


def test_an_unknown_cause_still_reaches_somebody_today() -> None:
    assert tier("something_that_nobody_thought_of") is Tier.TODAY
    assert next_send(Tier.WEEK, RAISED, 1) is None


def test_every_actor_is_in_the_table_and_strangers_can_only_redeem() -> None:
    assert set(ALLOWED) == set(Actor)
    assert [action for action in Action if may(Actor.STRANGER, action)] == [Action.REDEEM]
    assert not may(Actor.OTHER_COACH, Action.SEE_CLIENT)
