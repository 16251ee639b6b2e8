"""Clocks that jump over summer time, sleeps, restarts: a small part of `python -m tests.bench.clocks`."""

from datetime import timedelta

import pytest

from bot.engine.days import set_back
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


def test_this_check_can_fail(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(set_back, "look", lambda engine, now: None)
    with pytest.raises(Wrong):
        test_a_clock_that_ran_a_month_ahead_for_a_moment_puts_nothing_off()
