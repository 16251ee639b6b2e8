"""A client's settings and girth, told in the chat."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine import quiet, status
from core.facts import Measured
from core.store import facts, people
from tests.practice import CLIENT, COACH, Practice


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


def girths(practice: Practice) -> list[tuple[str, float]]:
    """What is kept."""
    return [
        (one.limb, one.girth_cm)
        for one in facts.current(practice.stage.engine.store, Measured, practice.client)
    ]


def test_a_client_sets_a_reminder_ahead_of_time(practice: Practice) -> None:
    practice.types(CLIENT, "settings")
    practice.taps(CLIENT, "Reminder")
    practice.taps(CLIENT, "30 min before")
    assert practice.newest(CLIENT).text == "Noted. Reminder: 30 min before."
    assert status.detail(practice.stage.engine, practice.client, "remind_before", "0") == "30"


def test_a_coach_sets_quiet_hours_and_is_asked_of_no_reminder(practice: Practice) -> None:
    practice.types(COACH, "settings")
    assert "Reminder" not in [label for row in practice.newest(COACH).buttons for label, _ in row]
    practice.taps(COACH, "Quiet hours")
    practice.types(COACH, "6pm to 7am")
    coach = people.by_chat(practice.stage.engine.store, COACH)
    assert coach is not None
    assert quiet.is_quiet(practice.stage.engine, coach, practice.stage.clock.now())


def test_a_girth_is_kept_and_compared_with_the_first(practice: Practice) -> None:
    practice.types(CLIENT, "girth left leg 54.5 cm")
    assert practice.newest(CLIENT).text == "Noted: left leg 54.5 cm."
    practice.later(days=20)
    practice.types(CLIENT, "Girth left thigh: 55")
    assert practice.newest(CLIENT).text.endswith("+0.5 cm since 2 March; less than 1.5 cm may be the tape.")
    practice.types(CLIENT, "girth my left leg 56.1 cm")
    assert practice.newest(CLIENT).text.endswith("+1.6 cm since 2 March, more than the tape's error.")
    assert girths(practice) == [("left_leg", 54.5), ("left_leg", 55.0), ("left_leg", 56.1)]


@pytest.mark.parametrize(("minutes", "kept"), [(119, 0), (120, 1)])
def test_right_after_training_a_girth_is_not_kept(practice: Practice, minutes: int, kept: int) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31")
    practice.types(CLIENT, "stop")
    practice.stage.clock.skip_to(practice.stage.clock.now() + timedelta(minutes=minutes))
    practice.types(CLIENT, "girth left leg 56 cm")
    assert len(girths(practice)) == kept


def test_a_girth_that_no_limb_has_is_asked_again(practice: Practice) -> None:
    practice.types(CLIENT, "girth right arm 300")
    assert girths(practice) == []
    assert practice.newest(CLIENT).text
