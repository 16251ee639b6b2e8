"""Loads that go up only with the coach's tap."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine import status, turns
from bot.engine.coach import loads_asked
from bot.engine.training import loads
from core.facts import LoadMoved
from tests.bot.coach_room import COACH, RUTA, START, Room

WHY = "Your reps are climbing."


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


def asked(room: Room, client: int, use: str = "12 kg", action: str = "raise") -> list[loads_asked.Told]:
    """A session ended and the model moved the load; what the client is told."""
    move = LoadMoved(room.now, f"s-{use}", "goblet_squat", "10 kg", use, action, WHY, action != "pause")
    with room.store.transaction():
        told = [loads.put(room.stage.engine, client, move)]
    room.settle()
    return told


def now_at(room: Room, client: int) -> str:
    plan = status.plan_of(room.stage.engine, client)
    return loads.exercises(room.stage.engine, client, plan)[0].doing


def ask_me(room: Room) -> None:
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "Next loads: ask me")


def test_by_itself_a_load_moves_and_nobody_is_asked(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    heard = len(room.messages(COACH))
    assert asked(room, client) == [("Goblet squat", "10 kg", "12 kg", WHY)]
    assert len(room.messages(COACH)) == heard
    assert now_at(room, client) == "12 kg"


def test_until_the_tap_the_old_load_stays_and_then_the_new_one_holds(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    ask_me(room)
    told = asked(room, client)
    assert told == [("Goblet squat", "10 kg", "10 kg", "Your coach looks whether 12 kg is next.")]
    assert room.says(COACH) == f"Ruta: goblet squat 10 kg → 12 kg? {WHY}"
    assert now_at(room, client) == "10 kg"
    room.types(COACH, "clients")
    assert "Ruta: a load waits for your tap" in room.says(COACH)
    room.types(COACH, "ruta")
    assert "Waits for your tap: Goblet squat 10 kg → 12 kg." in room.says(COACH)
    room.taps(COACH, "Use 12 kg")
    assert room.says(RUTA) == "Your coach has looked: Goblet squat, 12 kg next time."
    assert now_at(room, client) == "12 kg"
    room.types(COACH, "clients")
    assert "waits for your tap" not in room.says(COACH)


def test_keeping_the_old_load_is_an_answer_too(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    ask_me(room)
    asked(room, client)
    room.taps(COACH, "Keep 10 kg")
    assert room.says(RUTA) == "Your coach has looked: Goblet squat, 10 kg next time."
    assert now_at(room, client) == "10 kg"
    assert loads_asked.waiting(room.stage.engine, client) == []
    room.taps(COACH, "Use 12 kg")
    assert "is old" in room.says(COACH)
    assert now_at(room, client) == "10 kg"


def test_a_lighter_load_holds_at_once_and_can_be_taken_back(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    ask_me(room)
    asked(room, client, "8 kg", "lower")
    assert room.says(COACH) == f"Ruta: goblet squat 10 kg → 8 kg from now on. {WHY}"
    assert now_at(room, client) == "8 kg"
    room.taps(COACH, "Keep 10 kg")
    assert now_at(room, client) == "10 kg"


def test_a_button_of_last_week_does_not_move_this_weeks_load(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    ask_me(room)
    asked(room, client)
    room.later(days=3)
    asked(room, client, "14 kg")
    room.taps(COACH, "Use 12 kg")
    assert "is old" in room.says(COACH)
    room.taps(COACH, "Use 14 kg")
    assert now_at(room, client) == "14 kg"


def test_a_rest_from_a_movement_is_not_the_same_as_a_load_to_decide(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    ask_me(room)
    asked(room, client, "10 kg", "pause")
    assert loads_asked.waiting(room.stage.engine, client) == []


def test_after_a_real_session_the_client_reads_that_the_coach_decides(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    for number in range(4):
        room.trained(client, f"old{number}", (44, 22, 12), START - timedelta(days=15 - 3 * number))
    ask_me(room)
    room.in_a_set(RUTA)
    room.types(RUTA, "48 24 14")
    for _ in range(30):
        if any("Next time" in message.text for message in room.messages(RUTA)):
            break
        labels = room.labels(RUTA)
        room.taps(
            RUTA,
            next(
                (label for label in ("Bands are off", "No", "None", "0", "5") if label in labels), labels[0]
            ),
        )
    [recap] = [message.text for message in room.messages(RUTA) if "Next time" in message.text]
    assert "goblet squat: 10 kg again. Your coach looks whether 12 kg is next." in recap
    assert any(
        text.startswith("Ruta: goblet squat 10 kg → 12 kg?")
        for text in (m.text for m in room.messages(COACH))
    )
    assert now_at(room, client) == "10 kg"
    room.taps(COACH, "Use 12 kg")
    assert now_at(room, client) == "12 kg"


def answered(room: Room, client: int, reps_left: str) -> None:
    """After the recap the client is asked how many more reps there were, and says so."""
    engine, session = room.stage.engine, "new"
    about = {"session": session, "movement": "goblet_squat", "movement_name": "Goblet squat"}
    with room.store.transaction():
        turns.begin(engine, room.person(RUTA), "asking", {**about, "question": "could_do_more"}, room.now)
    room.settle()
    room.types(RUTA, reps_left)


def in_range(room: Room) -> int:
    """A client whose coach wants to be asked, with the sessions of three weeks; the last one holds the load."""
    client = room.client(RUTA, "Ruta")
    for number in range(4):
        room.trained(client, f"old{number}", (38, 18, 9), START - timedelta(days=15 - 3 * number))
    ask_me(room)
    room.trained(client, "new", (38, 18, 9), room.now)
    engine = room.stage.engine
    with room.store.transaction():
        loads.move(engine, client, "new", loads.advised(engine, client, "new"))
    assert loads_asked.waiting(room.stage.engine, client) == []
    return client


def test_the_answer_to_the_question_after_the_recap_raises_no_load_without_the_tap(room: Room) -> None:
    client = in_range(room)
    answered(room, client, "20")
    assert (
        room.says(RUTA)
        == "With that, next time, goblet squat: 10 kg. Your coach looks whether 12 kg is next."
    )
    assert room.says(COACH).startswith("Ruta: goblet squat 10 kg → 12 kg?")
    assert now_at(room, client) == "10 kg"
    room.taps(COACH, "Use 12 kg")
    assert now_at(room, client) == "12 kg"


def test_an_answer_that_changes_nothing_asks_the_coach_nothing(room: Room) -> None:
    client = in_range(room)
    heard = len(room.messages(COACH))
    answered(room, client, "0")
    assert len(room.messages(COACH)) == heard


def test_once_the_coach_has_decided_a_late_answer_moves_no_load(room: Room) -> None:
    client = in_range(room)
    answered(room, client, "20")
    room.taps(COACH, "Keep 10 kg")
    answered(room, client, "25")
    assert now_at(room, client) == "10 kg"
    assert loads_asked.waiting(room.stage.engine, client) == []
