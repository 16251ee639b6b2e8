"""A clearance that forbids sets to failure: the plan builder, a change of the plan, and a plan from before."""

import pytest

from core.facts import Cleared, PlanGiven
from core.plan_text import plan_from_text
from core.plans import Scheme
from core.screening import Restriction, restrictions
from core.store import facts
from tests.bot.coach_room import COACH, RUTA, SQUATS, Room


@pytest.fixture
def room() -> Room:
    room = Room()
    client = room.client(RUTA, "Ruta", plan=None, cleared="")
    limits = Restriction.NO_FAILURE.value
    room.put(client, Cleared(room.now, "1", "cleared", "arms,legs", room.person(COACH).id, limits=limits))
    return room


def plan_by_chat(room: Room) -> None:
    room.types(COACH, "Ruta")
    room.taps(COACH, "New plan")
    for said in ("one dumbbell", "4, 6 kg", "4 kg", "none"):
        room.types(COACH, said)


def test_a_new_plan_has_fixed_sets_and_says_why(room: Room) -> None:
    plan_by_chat(room)
    assert "cleared without sets to failure" in room.says(COACH)
    room.taps(COACH, "Send it")
    given = facts.latest(room.store, PlanGiven, room.person(RUTA).id)
    assert given is not None
    assert {one.scheme for one in plan_from_text(given.plan).exercises} == {Scheme.FIXED}


def test_a_change_of_the_plan_offers_no_open_sets(room: Room) -> None:
    plan_by_chat(room)
    room.taps(COACH, "Send it")
    room.types(COACH, "Ruta")
    room.taps(COACH, "Change the plan")
    room.taps(COACH, "Sets")
    assert not any("Open" in label for label in room.labels(COACH))
    room.types(COACH, "open")
    assert not any("Open" in label for label in room.labels(COACH))


@pytest.mark.parametrize(("limits", "gently"), [("no_failure", True), ("", False)])
def test_open_sets_from_before_are_done_with_reps_left(limits: str, gently: bool) -> None:
    room = Room()
    client = room.client(RUTA, "Ruta", plan=SQUATS)
    for number in range(3):
        room.trained(client, f"s{number}", (30, 15, 8), room.now)
    room.later(hours=40)
    cleared = Cleared(room.now, "2", "cleared", "legs", room.person(COACH).id, limits=limits)
    room.put(client, cleared)
    room.in_a_set(RUTA)
    assert ("3 to 5 clean reps" in room.says(RUTA)) is gently


@pytest.mark.parametrize(
    ("rules", "found"),
    [([], ()), (["smoking"], ()), (["pressure_high", "high_pressure"], (Restriction.NO_FAILURE,))],
)
def test_what_a_screening_forbids(rules: list[str], found: tuple[Restriction, ...]) -> None:
    assert restrictions(rules) == found


def test_the_card_says_it(room: Room) -> None:
    room.types(COACH, "Ruta")
    assert "no sets to failure" in room.says(COACH)
