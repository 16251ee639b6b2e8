"""Two coaches and a client act in the same fetch of updates: nothing is lost, nothing counts twice."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

import pytest

from bot.engine import status
from bot.engine.coach import replaced
from core.facts import BandsOff, CoachDid, PlanGiven
from core.store import duties, facts, threads
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, Room


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
    assert room.says(RUTA).startswith("This plan holds now, not the one you got before: travel")
    assert len([one for one in room.messages(RUTA) if "travel" in one.text]) == 1, (
        "the older one did not go out"
    )


@pytest.mark.parametrize("at_once", [True, False])
def test_a_first_plan_replaced_in_the_same_moment_is_never_shown(room: Room, at_once: bool) -> None:
    new = room.client(MILO, "Milo", plan=None)
    for number in (COACH, SECOND):
        for label in ("client milo", "The plan", "New plan", "Travel: push-up, chair squat", "none"):
            room.types(number, label)
    if at_once:
        all_tap(room, (COACH, "Send it"), (SECOND, "Send it"))
    else:
        room.taps(COACH, "Send it")
        room.taps(SECOND, "Send it")
    assert len(facts.current(room.store, PlanGiven, new)) == 2
    shown = [one.text.partition(":")[0] for one in room.messages(MILO) if "travel" in one.text]
    again = "This plan holds now, not the one you got before"
    assert shown == (["Your plan"] if at_once else ["Your plan", again])


# --- whose plan was replaced ---
def sends(room: Room, coach: int, template: str, *more: str) -> None:
    for label in ("client ruta", "The plan", "New plan", template, *more, "none", "Send it"):
        room.types(coach, label)


TRAVEL = "Travel: push-up, chair squat"
GENTLE = "Gentle: walk 10 min, chair squat"


def names_of_plan(room: Room) -> list[str]:
    plan = status.plan_of(room.stage.engine, room.person(RUTA).id)
    assert plan is not None
    return [one.movement for one in plan.exercises]


def heard(room: Room, number: int, text: str) -> bool:
    return any(text in message.text for message in room.messages(number))


def test_whose_plan_was_replaced_hears_by_whom_and_takes_it_back(room: Room) -> None:
    sends(room, COACH, TRAVEL)
    room.later(hours=1)
    sends(room, SECOND, GENTLE)
    said = room.says(COACH)
    assert said.startswith("Otto has sent Ruta another plan, in place of the one you sent on Monday")
    assert heard(room, SECOND, "It takes the place of the one Vera sent on Monday")
    assert names_of_plan(room) == ["walk", "chair_squat"]
    room.taps(COACH, "Take mine back")
    assert names_of_plan(room) == ["push_up", "chair_squat"]
    assert room.says(RUTA).startswith("This plan holds now")
    assert room.says(SECOND).startswith("Vera has sent Ruta another plan")
    room.taps(COACH, "Take mine back")  # once more: nothing to do
    assert len(facts.current(room.store, PlanGiven, room.person(RUTA).id)) == 4


@pytest.mark.parametrize(("seconds", "told"), [(86_399, True), (86_400, True), (86_401, False)])
def test_after_a_day_a_plan_is_replaced_without_a_word(room: Room, seconds: int, told: bool) -> None:
    client = room.person(RUTA)
    given = PlanGiven(room.now, facts.newest(room.store, PlanGiven, client.id, 1)[0].plan, client.coach or 0)
    room.put(client.id, given)
    at = room.now + timedelta(seconds=seconds)
    room.put(client.id, replace(given, at=at))
    assert (replaced.before(room.stage.engine, client.id, at) is not None) is told


def test_a_plan_that_was_trained_by_is_replaced_without_a_word(room: Room) -> None:
    sends(room, COACH, TRAVEL)
    room.trained(room.person(RUTA).id, "x", (30,), room.now)
    sends(room, SECOND, GENTLE)
    assert not heard(room, COACH, "another plan")
    assert room.says(RUTA).startswith("Your plan: gentle")


def test_a_stand_in_who_is_one_no_longer_hears_nothing(room: Room) -> None:
    sends(room, SECOND, TRAVEL)
    room.types(COACH, "stand-in")
    room.taps(COACH, "I am back")
    sends(room, COACH, GENTLE)
    assert not heard(room, SECOND, "another plan")


def test_a_change_begun_on_the_plan_before_does_not_replace_a_new_one_silently(room: Room) -> None:
    for label in ("change ruta", "Pain ceiling", "2"):
        room.types(SECOND, label)
    room.later(minutes=1)
    sends(room, COACH, TRAVEL)
    room.types(SECOND, "easier for now")
    assert room.says(COACH).startswith("Otto has sent Ruta another plan")
    assert room.says(RUTA).startswith("This plan holds now")
    room.taps(COACH, "Take mine back")
    assert names_of_plan(room) == ["push_up", "chair_squat"]


def test_a_change_made_on_the_new_plan_is_a_change_and_no_replacing(room: Room) -> None:
    sends(room, COACH, TRAVEL)
    for label in ("change ruta", "Pain ceiling", "2", "easier for now"):
        room.types(SECOND, label)
    assert not heard(room, COACH, "another plan")
    assert room.says(RUTA).startswith("Your coach changed your plan.")


def test_a_new_plan_ends_the_change_that_its_coach_had_begun_on_the_one_before(room: Room) -> None:
    for label in ("change ruta", "Pain ceiling", "2"):
        room.types(COACH, label)
    sends(room, COACH, TRAVEL)
    assert threads.live(room.store, room.person(COACH).id) == []
    room.types(COACH, "easier for now")
    assert names_of_plan(room) == ["push_up", "chair_squat"]
