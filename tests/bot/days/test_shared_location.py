"""Where somebody is, shared from the phone: the zone is asked back, and a live location is no stream of answers."""

from collections.abc import Iterator
from datetime import date, time
from typing import Any

import pytest

from bot.engine import turns
from conversations.dates.nearby import near
from core.calendar.recurrence import Weekday, weekly
from core.calendar.stored import when_to_text
from core.facts import PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan
from core.store import facts, people
from tests.bot.arriving import comes, message
from tests.practice import CLIENT, SQUAT, START, Practice

HELSINKI = {"latitude": 60.1699, "longitude": 24.9384}


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


def shares(practice: Practice, place: dict[str, float], field: str = "message") -> None:
    body: dict[str, Any] = message(CLIENT, "", location=place, edit_date=int(START.timestamp()))
    del body["text"]
    comes(practice, **{field: body})


@pytest.mark.parametrize(
    ("coordinates", "zone"),
    [
        ("38.72, -9.14", "Europe/Lisbon"),
        ("60.17, 24.94", "Europe/Helsinki"),
        ("-13.83, -171.77", "Pacific/Apia"),
        ("40.71, -74.01", "America/New_York"),
        ("-31.55, 159.08", "Australia/Lord_Howe"),
        ("35.65, 139.74", "Asia/Tokyo"),
    ],
)
def test_the_nearest_zone_comes_first(coordinates: str, zone: str) -> None:
    assert near(coordinates)[0] == zone


@pytest.mark.parametrize("text", ["", "Lisbon", "38.72", "38.72, x", "138.72, -9.14"])
def test_what_is_no_place_on_earth_has_no_zones(text: str) -> None:
    assert near(text) == ()


def test_at_the_question_the_nearest_zones_are_asked_back(practice: Practice) -> None:
    engine = practice.stage.engine
    with engine.store.transaction():
        person = people.by_id(engine.store, practice.client)
        turns.begin(engine, person, "consent", {}, engine.clock())
    practice.settle()
    practice.types(CLIENT, "yes")
    practice.types(CLIENT, "41")
    for _ in range(12):
        if "Where do you live?" in practice.newest(CLIENT).text:
            break
        practice.types(CLIENT, "112")
    shares(practice, HELSINKI)
    practice.taps(CLIENT, "Helsinki time")
    assert people.by_id(engine.store, practice.client).zone == "Europe/Helsinki"


def test_out_of_the_blue_it_asks_whether_the_clock_there_holds(practice: Practice) -> None:
    store = practice.stage.engine.store
    when = when_to_text(weekly((Weekday.MON,), time(19), "Europe/Lisbon", date(2026, 3, 9)))
    with store.transaction():
        plan = plan_to_text(Plan("squats", (SQUAT,), when=when))
        facts.put(store, practice.client, PlanGiven(START, plan, 1), START)
    shares(practice, HELSINKI)
    assert "Helsinki time" in practice.newest(CLIENT).text
    assert people.by_id(store, practice.client).zone == "Europe/Lisbon"
    practice.taps(CLIENT, "Yes")
    assert people.by_id(store, practice.client).zone == "Europe/Helsinki"


def test_in_a_set_it_is_no_answer_and_a_live_one_is_left_alone(practice: Practice) -> None:
    practice.in_a_set()
    shares(practice, HELSINKI)
    assert practice.sets() == {}
    assert any("where you are" in text for text in practice.heard(CLIENT))
    said = len(practice.heard(CLIENT))
    shares(practice, HELSINKI, "edited_message")
    assert len(practice.heard(CLIENT)) == said
