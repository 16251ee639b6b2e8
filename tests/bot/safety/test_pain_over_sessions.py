"""Pain of the joint over sessions, as stored: every time it was asked counts, in the session itself and after it."""

from datetime import timedelta

import pytest

from bot.engine.safety import checks
from core.facts import Rated
from core.safety.pain import PainDay, PainStep, Where, pain_step
from core.store import facts
from tests.practice import START, Practice


def rate(practice: Practice, session: int, part: str, score: int, where: str = "joint") -> None:
    store = practice.stage.engine.store
    at = START + timedelta(days=3 * session)
    with store.transaction():
        facts.put(store, practice.client, Rated(at, str(session), "pain", part, score, where), at)


def days(practice: Practice, session: str) -> tuple[PainDay, ...]:
    return checks.pain_days(practice.stage.engine, practice.client, session)


@pytest.mark.parametrize("part", ["after", "evening", "morning", "two_days", "48h"])
@pytest.mark.parametrize(("score", "step"), [(3, PainStep.EASED), (4, PainStep.PAUSED)])
def test_too_much_at_any_time_of_the_session_before_is_the_first_of_two(
    practice: Practice, part: str, score: int, step: PainStep
) -> None:
    """At the ceiling of 3 during and in the evening it was accepted; in the morning 3 after 3 is no change."""
    rate(practice, 1, "before", 3)
    rate(practice, 1, part, score)
    rate(practice, 2, "after", 4)
    assert pain_step(days(practice, "2")) is step


def test_the_highest_of_several_counts(practice: Practice) -> None:
    for part, score in (("before", 1), ("after", 2), ("evening", 4), ("morning", 3), ("two_days", 0)):
        rate(practice, 1, part, score)
    assert days(practice, "1") == (PainDay(4, 1, 3),)


def test_a_rating_corrected_afterwards_is_the_one_that_counts(practice: Practice) -> None:
    rate(practice, 1, "after", 5)
    rate(practice, 1, "after", 2)
    assert days(practice, "1") == (PainDay(2),)


def test_no_answer_in_the_morning_is_none_and_burn_is_no_pain_of_the_joint(practice: Practice) -> None:
    rate(practice, 1, "after", 7, Where.MUSCLE)
    assert days(practice, "1") == (PainDay(0),)
    assert days(practice, "never") == (PainDay(0), PainDay(0))
