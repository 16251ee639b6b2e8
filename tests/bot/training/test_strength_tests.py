"""A test set asked for while a plan is made, done by the client, and used for the first load."""

import pytest

from core.facts import Detail, PlanGiven, Rated, ScreeningDone
from core.plan_text import plan_from_text
from core.store import facts
from tests.practice import CLIENT, COACH, START, Practice


def to_the_start(practice: Practice) -> None:
    """The coach makes a plan as far as the first load."""
    practice.types(COACH, "clients")
    practice.types(COACH, "ruta")
    practice.taps(COACH, "The plan")
    practice.taps(COACH, "New plan")
    practice.taps(COACH, "One dumbbell: goblet squat")
    practice.types(COACH, "2-20 by 2 kg")


def test_a_test_comes_before_the_plan_and_gives_its_first_load(practice: Practice) -> None:
    to_the_start(practice)
    practice.taps(COACH, "Ask for a test set first")
    practice.later(seconds=1)
    practice.taps(CLIENT, "Warmed up, let's go")
    practice.types(CLIENT, "16")
    practice.types(CLIENT, "8")
    assert "Best single lift about 20 kg" in practice.newest(COACH).text
    practice.taps(COACH, "Make the plan")
    practice.taps(COACH, "One dumbbell: goblet squat")
    practice.types(COACH, "2-20 by 2 kg")
    assert "about 6 kg" in practice.newest(COACH).text
    practice.taps(COACH, "6 kg")
    practice.types(COACH, "mon and thu 7pm")
    practice.taps(COACH, "Send it")
    given = facts.latest(practice.stage.engine.store, PlanGiven, practice.client)
    assert given is not None
    assert str(plan_from_text(given.plan).exercises[0].load) == "6 kg"


def test_a_maximum_told_by_the_coach_is_kept_for_the_limit_of_half(practice: Practice) -> None:
    to_the_start(practice)
    practice.types(COACH, "max 40")
    practice.taps(COACH, "Yes, 12 kg")
    practice.types(COACH, "mon and thu 7pm")
    practice.taps(COACH, "Send it")
    kept = facts.latest(practice.stage.engine.store, Detail, practice.client, name="best:goblet_squat")
    assert kept is not None
    assert kept.value == "40 kg"


@pytest.mark.parametrize("reason", ["surgery", "pain"])
def test_no_test_is_offered_after_surgery_or_with_an_irritable_joint(practice: Practice, reason: str) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        if reason == "surgery":
            done = ScreeningDone(START, "1", "coach", "", "after_surgery")
            facts.put(store, practice.client, done, START)
        else:
            facts.put(store, practice.client, Rated(START, "s", "pain", "after", 4, "joint"), START)
    to_the_start(practice)
    labels = [label for row in practice.newest(COACH).buttons for label, _ in row]
    assert "2 kg" in labels
    assert "Ask for a test set first" not in labels
