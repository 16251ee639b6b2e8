"""Two coaches and a client act in the same fetch of updates: nothing is lost, nothing counts twice."""

from collections.abc import Iterator

import pytest

from core.facts import BandsOff, CoachDid, PlanGiven
from core.store import duties, facts
from tests.bot.coach_room import COACH, RUTA, SECOND, Room


@pytest.fixture
def room() -> Iterator[Room]:
    """Vera's client, while Otto stands in for her."""
    made = Room()
    made.client(RUTA, "Ruta")
    for label in ("stand-in", "Otto", "two weeks"):
        made.types(COACH, label)
    yield made
    made.stage.close()


def newest_with(room: Room, number: int, label: str) -> int:
    """The newest message of somebody that has this button."""
    fitting = [
        message.id
        for message in room.messages(number)
        if label in [shown for row in message.buttons for shown, _ in row]
    ]
    return fitting[-1]


def all_tap(room: Room, *taps: tuple[int, str]) -> None:
    """Everybody taps before anybody hears an answer."""
    for number, label in taps:
        room.stage.phones[number].taps(newest_with(room, number, label), label)
    room.settle()


def test_a_sign_and_two_coaches_words_in_one_moment(room: Room) -> None:
    client = room.person(RUTA).id
    room.in_a_set(RUTA)
    room.stage.phones[RUTA].types("my leg is numb")
    room.stage.phones[COACH].types("to ruta: how is it going")
    room.stage.phones[SECOND].types("to ruta: stop")
    room.settle()
    told = [message.text for message in room.messages(RUTA)]
    assert sum("Your coach ends this session" in text for text in told) == 1
    assert not any("how is it going" in text for text in told)  # words wait until the bands are off
    all_tap(room, (SECOND, "I am on it"), (RUTA, "Bands are off"))
    assert len(facts.current(room.store, BandsOff, client)) == 1
    all_tap(room, (SECOND, "Clear to train"), (RUTA, "Better"))
    assert duties.open_alerts(room.store, client) == []
    room.later(hours=3)
    assert any("how is it going" in message.text for message in room.messages(RUTA))


def test_both_send_a_plan_in_one_moment_and_both_stand_in_the_log(room: Room) -> None:
    client = room.person(RUTA).id
    for number in (COACH, SECOND):
        for label in ("client ruta", "The plan", "New plan", "Travel: push-up, chair squat", "none"):
            room.types(number, label)
    all_tap(room, (COACH, "Send it"), (SECOND, "Send it"))
    assert len(facts.current(room.store, PlanGiven, client)) == 3  # the first one, and these
    did = [one for one in facts.current(room.store, CoachDid, client) if one.action == "gave_plan"]
    assert {one.by for one in did} == {room.person(COACH).id, room.person(SECOND).id}
    assert "Your plan: travel" in room.says(RUTA)
