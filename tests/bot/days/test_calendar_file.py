"""The client asks for the days of the plan and gets a file."""

from collections.abc import Iterator
from datetime import date, time

import pytest
from icalendar import Calendar

from core.calendar.recurrence import Weekday, weekly
from core.calendar.stored import when_to_text
from core.facts import PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan
from core.store import facts
from tests.practice import CLIENT, SQUAT, START, Practice


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


def give_days(practice: Practice) -> None:
    """A plan on Mondays and Thursdays."""
    when = when_to_text(weekly((Weekday.MON, Weekday.THU), time(19), "Europe/Lisbon", date(2026, 3, 2)))
    store = practice.stage.engine.store
    with store.transaction():
        plan = Plan("squats", (SQUAT,), when=when)
        facts.put(store, practice.client, PlanGiven(START, plan_to_text(plan), 1), START)


def test_the_word_calendar_and_the_button_under_the_plan_send_the_file(practice: Practice) -> None:
    give_days(practice)
    practice.types(CLIENT, "plan")
    practice.taps(CLIENT, "Into my calendar")
    sent = practice.newest(CLIENT)
    assert sent.document_name == "training.ics"
    assert sent.document is not None
    [event] = Calendar.from_ical(sent.document).walk("VEVENT")
    assert event["summary"] == "Training: squats"
    practice.types(CLIENT, "calendar")
    assert practice.newest(CLIENT).document is not None


def test_without_fixed_days_there_is_nothing_to_send(practice: Practice) -> None:
    practice.types(CLIENT, "calendar")
    assert "no fixed days" in practice.newest(CLIENT).text
