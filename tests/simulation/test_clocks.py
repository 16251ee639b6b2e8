"""Clocks that jump over summer time, sleeps, restarts: a small part of `python -m tests.bench.clocks`."""

from datetime import timedelta

import pytest

from bot.engine import recording
from bot.engine.days import set_back
from core.facts import BandsOff, BandsOn
from core.plans import Region
from core.safety.causes import Cause
from core.store import duties, settings
from tests.simulation.clocks import Story, Wrong, play

FOUND = (10, 32)  # seeds that once showed a reminder that planned no next one


@pytest.mark.parametrize("seed", FOUND)
def test_each_date_is_reminded_of_once_and_calls_about_bands_come_on_time(seed: int) -> None:
    assert play(seed) >= 60


def test_a_clock_that_ran_a_month_ahead_for_a_moment_puts_nothing_off() -> None:
    story = Story(5)
    story.lives(30)
    story.machine.error = timedelta(days=30)
    story.works()
    story.none_missing(2)
    story.once_a_date()
    story.close()


def bands_on(story: Story) -> None:
    now = story.steady.now()
    with story.store.transaction():
        recording.record(story.engine, story.clients[0], BandsOn(now, "s1", "1.1", Region.LEGS, 600))
        settings.put(story.store, "awake_at", now.isoformat())  # as with the message that said so
    story.works()


@pytest.mark.parametrize("behind", [timedelta(minutes=5), timedelta(hours=1), timedelta(days=40)])
def test_after_a_power_cut_bands_are_called_off_at_once_by_a_machine_that_went_back_in_time(
    behind: timedelta,
) -> None:
    """How long it was off nobody knows, and the call would come that much later."""
    story = Story(5)
    client = story.clients[0]
    bands_on(story)
    story.machine.passes(60)
    story.works()
    story.power_cut(120, behind)
    story.works()
    [watch] = duties.watches(story.store, client)
    assert watch.calls == 1
    assert [alert.cause for alert in duties.open_alerts(story.store, client)] == [Cause.AWAY]
    with story.store.transaction():
        recording.record(story.engine, client, BandsOff(story.steady.now(), "s1", "1.1", "time"))
    story.works()
    assert story.steady.now() == story.machine.wall(), "with no bands on the wall clock is followed again"
    story.close()


def test_a_power_cut_with_a_right_clock_calls_nobody_early() -> None:
    story = Story(5)
    bands_on(story)
    story.power_cut(120, timedelta(0))
    story.works()
    [watch] = duties.watches(story.store, story.clients[0])
    assert watch.calls == 0
    story.close()


def test_this_check_can_fail(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(set_back, "look", lambda engine, now: None)
    with pytest.raises(Wrong):
        test_a_clock_that_ran_a_month_ahead_for_a_moment_puts_nothing_off()
