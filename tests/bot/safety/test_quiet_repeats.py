"""At night the bot says nothing a second time: repeats wait for the morning, alerts and training do not."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine import turns
from bot.engine.safety import aftercare
from core.calendar.quiet import QuietHours
from core.calendar.zones import local
from core.facts import Detail
from core.safety.asking import Part
from core.store import duties, facts, people
from core.store.times import moment
from tests.practice import CLIENT, START, Practice

ZONE = "Europe/Lisbon"


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


def begins(practice: Practice, name: str, about: dict[str, object]) -> None:
    """The engine begins a talk with the client."""
    engine = practice.stage.engine
    with engine.store.transaction():
        turns.begin(engine, people.by_id(engine.store, practice.client), name, about, engine.clock())
    practice.settle()


def heard_at(practice: Practice) -> list[str]:
    """The client's local times of what the bot wrote."""
    return [f"{local(message.at, ZONE):%H:%M}" for message in practice.messages(CLIENT)]


def at_night(practice: Practice) -> list[str]:
    """What was said in the quiet hours."""
    quiet = QuietHours()
    return [message.text for message in practice.messages(CLIENT) if local(message.at, ZONE).time() in quiet]


@pytest.mark.parametrize("asked", [120, 180, 239])
def test_the_evening_question_is_not_repeated_at_night(practice: Practice, asked: int) -> None:
    practice.later(minutes=asked - 60)  # 19:00 to 20:59
    begins(practice, "morning", {"session": "1", "day": Part.EVENING})
    practice.later(hours=16)
    assert at_night(practice) == []


def test_an_evening_left_unanswered_is_asked_about_once_in_the_morning(practice: Practice) -> None:
    practice.later(minutes=120)
    begins(practice, "morning", {"session": "1", "day": Part.EVENING})
    with practice.stage.engine.store.transaction():
        tomorrow = practice.stage.clock.now() + timedelta(hours=12)
        about = {"session": "1", "day": Part.MORNING}
        duties.plan(practice.stage.engine.store, practice.client, "morning", about, tomorrow, START)
    practice.later(hours=13)
    assert [text for text in practice.heard(CLIENT) if "out of the ordinary" in text] == [
        "How is the body since training: anything out of the ordinary?",
        "The day after training: anything out of the ordinary?",
    ]
    assert not any("Still here" in text for text in practice.heard(CLIENT))


@pytest.mark.parametrize("name", ["screening", "consent", "preferences", "band_list"])
def test_no_other_open_question_is_repeated_at_night(practice: Practice, name: str) -> None:
    practice.later(minutes=170)
    begins(practice, name, {})
    said = len(practice.messages(CLIENT))
    practice.later(hours=10)
    assert at_night(practice) == []
    practice.later(hours=6)
    assert len(practice.messages(CLIENT)) >= said


def test_a_question_of_the_evening_is_repeated_when_the_night_is_over(practice: Practice) -> None:
    practice.later(minutes=170)
    begins(practice, "screening", {})
    practice.later(hours=14)
    assert heard_at(practice)[-1] == "07:00"


def test_numbness_that_stays_is_asked_about_at_night_too(practice: Practice) -> None:
    practice.later(hours=4)
    begins(practice, "still_numb", {"session": "1"})
    practice.later(hours=2)
    assert len(at_night(practice)) > 1


def test_an_unanswered_morning_is_on_the_coachs_list_though_the_client_sleeps(practice: Practice) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        facts.put(
            store,
            practice.client,
            Detail(practice.stage.clock.now(), "quiet_hours", "19:00-09:00"),
            practice.stage.clock.now(),
        )
    practice.later(hours=15)
    begins(practice, "morning", {"session": "1", "day": Part.MORNING})
    practice.later(hours=12, minutes=5)
    assert [alert.cause for alert in duties.open_alerts(store, practice.client)] == ["no_reply"]


def test_questions_after_training_keep_the_clients_own_quiet_hours(practice: Practice) -> None:
    store = practice.stage.engine.store
    now = practice.stage.clock.now()
    with store.transaction():
        facts.put(store, practice.client, Detail(now, "quiet_hours", "17:00-10:00"), now)
    with store.transaction():
        aftercare.bands_were_on(practice.stage.engine, practice.client, "1", now)
    rows = store.rows("SELECT due_at FROM planned WHERE dialogue = 'morning' ORDER BY due_at")
    assert [f"{local(moment(row['due_at']), ZONE):%a %H:%M}" for row in rows] == ["Tue 10:00", "Thu 10:00"]
