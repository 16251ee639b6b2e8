"""Plans after they were given: a part changed with its reason, loads as the coach chose them, own templates."""

from collections.abc import Iterator

import pytest

from bot.engine import status
from bot.engine.training import loads
from conversations.words.planning import TEMPLATES as TEMPLATE_NAMES
from core.facts import LoadMoved, PlanGiven
from core.plans import Plan
from core.store import facts
from core.templates import TEMPLATES
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, SQUATS, Room


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


def plan_now(room: Room, chat: int = RUTA) -> Plan:
    plan = status.plan_of(room.stage.engine, room.person(chat).id)
    assert plan is not None
    return plan


def at_load(room: Room, chat: int = RUTA) -> str:
    plan = plan_now(room, chat)
    return loads.exercises(room.stage.engine, room.person(chat).id, plan)[0].doing


def open_plan(room: Room, name: str = "ruta") -> None:
    room.types(COACH, name)
    room.taps(COACH, "The plan")


def moved_to(room: Room, client: int, use: str) -> None:
    room.put(client, LoadMoved(room.now, "x", "goblet_squat", "10 kg", use, "raise", "", True))


def test_a_changed_load_holds_though_the_model_had_moved_it_and_the_client_reads_why(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    moved_to(room, client, "12 kg")
    open_plan(room)
    room.taps(COACH, "Change the plan")
    room.taps(COACH, "Load")
    assert "now 12 kg" in room.says(COACH)
    room.taps(COACH, "8 kg")
    room.types(COACH, "The knee was sore on Thursday.")
    assert room.says(RUTA) == (
        "Your coach changed your plan. goblet squat: 12 kg → 8 kg. Why: The knee was sore on Thursday."
    )
    assert at_load(room) == "8 kg"
    room.types(COACH, "ruta")
    assert "Goblet squat 8 kg" in room.says(COACH)


def test_another_part_changed_leaves_the_load_where_the_model_had_moved_it(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    moved_to(room, client, "12 kg")
    open_plan(room)
    room.taps(COACH, "Change the plan")
    room.taps(COACH, "Pain ceiling")
    room.taps(COACH, "2")
    room.taps(COACH, "Easier for now")
    assert (plan_now(room).pain_ceiling, at_load(room)) == (2, "12 kg")
    given = facts.latest(room.store, PlanGiven, client)
    assert given is not None
    assert given.why == "Easier for now."


def build_plan(room: Room, *answers: str) -> None:
    for text in answers:
        room.types(COACH, text)


def test_a_new_plans_starting_load_holds_though_an_old_move_stands(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    moved_to(room, client, "14 kg")
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "New plan")
    build_plan(room, "One dumbbell: goblet squat", "8, 10, 12, 14 kg", "8 kg", "mon and thu 7pm", "send it")
    assert at_load(room) == "8 kg"


def test_a_plan_saved_by_name_is_offered_first_and_brings_its_settings(room: Room) -> None:
    room.client(RUTA, "Ruta", SQUATS)
    open_plan(room)
    room.taps(COACH, "Change the plan")
    room.taps(COACH, "Pain ceiling")
    build_plan(room, "2", "easier for now")
    open_plan(room)
    room.taps(COACH, "Save as template")
    room.types(COACH, "Knee after op")
    assert "Saved as 'Knee after op'" in room.says(COACH)
    room.client(MILO, "Milo", plan=None)
    room.types(COACH, "milo")
    room.taps(COACH, "New plan")
    assert room.labels(COACH)[0] == "Knee after op"
    room.taps(COACH, "Knee after op")
    build_plan(room, "4, 6, 8 kg", "6 kg", "none", "send it")
    plan = plan_now(room, MILO)
    assert (plan.name, plan.pain_ceiling, at_load(room, MILO)) == ("Knee after op", 2, "6 kg")


def test_right_after_planning_one_line_keeps_the_plan(room: Room) -> None:
    room.client(RUTA, "Ruta", plan=None)
    room.types(COACH, "ruta")
    room.taps(COACH, "New plan")
    build_plan(room, "One dumbbell: goblet squat", "8, 10 kg", "8 kg", "none", "send it")
    assert room.labels(COACH) == ["Change the plan", "Save as template", "Back to Ruta"]
    room.types(COACH, "save as template light legs")
    assert "Saved as 'light legs'" in room.says(COACH)


MOST_TAPS = 8  # from the card on; a minute leaves seven seconds for each


@pytest.mark.parametrize("template", [*map(TEMPLATE_NAMES.get, TEMPLATES)])
def test_a_full_plan_takes_a_few_taps_and_nothing_typed(room: Room, template: str) -> None:
    room.client(RUTA, "Ruta", plan=None)
    room.types(COACH, "ruta")
    room.taps(COACH, "New plan")
    room.taps(COACH, template)
    taps = 2
    while "Sent to Ruta." not in room.says(COACH) and taps <= MOST_TAPS:
        room.taps(COACH, room.labels(COACH)[0])
        taps += 1
    assert taps <= MOST_TAPS
    plan = plan_now(room)
    assert plan.when is not None
    assert "18:00" in room.says(RUTA)


def test_a_movement_changed_by_the_coach_is_what_the_client_trains_next(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    moved_to(room, client, "14 kg")
    room.types(COACH, "ruta")
    for label in ("Change the plan", "Movements", "Goblet squat 14 kg", "Chair squat", "Easier for now"):
        room.taps(COACH, label)
    assert room.says(RUTA).startswith("Your coach changed your plan. Goblet squat goes; new: Chair squat")
    assert [one.movement for one in plan_now(room).exercises] == ["chair_squat"]
    assert at_load(room) == "sit to stand, high chair"
    room.in_a_set(RUTA)
    assert "Chair squat" in "".join(message.text for message in room.messages(RUTA)[-25:])


def test_a_card_looked_at_meanwhile_does_not_break_off_a_change(room: Room) -> None:
    room.client(RUTA, "Ruta")
    for label in ("Change the plan", "Movements", "Add one", "Towel curl", "Going well"):
        room.types(COACH, "client ruta")
        room.taps(COACH, label)
    assert [one.movement for one in plan_now(room).exercises] == ["goblet_squat", "towel_curl"]


def test_own_templates_are_the_coachs_own(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.types(COACH, "save as template mine")
    room.client(MILO, "Milo", plan=None, coach=SECOND)
    room.types(SECOND, "milo")
    room.taps(SECOND, "New plan")
    assert "mine" not in room.labels(SECOND)
    room.types(SECOND, "cancel")
    room.types(SECOND, "save as template stolen")
    assert "Milo has no plan to save." in room.says(SECOND)


def test_a_template_needs_a_client_on_the_table(room: Room) -> None:
    room.types(COACH, "save as template air")
    assert "Whose plan?" in room.says(COACH)


def test_an_own_template_for_limbs_that_are_closed_is_not_offered(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.types(COACH, "save as template legs")
    room.client(MILO, "Milo", plan=None, cleared="arms")
    room.types(COACH, "milo")
    room.taps(COACH, "New plan")
    assert "legs" not in room.labels(COACH)


def test_a_part_tapped_on_the_summary_is_changed_before_the_client_sees_anything(room: Room) -> None:
    room.client(RUTA, "Ruta", plan=None)
    room.types(COACH, "ruta")
    for label in ("New plan", "Dumbbells: goblet squat, curl", "2-20 by 2 kg", "2 kg", "2 kg"):
        room.taps(COACH, label)
    room.taps(COACH, "Mon and Thu 18:00")
    heard = len(room.messages(RUTA))
    for label in ("Movements", "Curl 2 kg", "Towel curl", "Tempo", "Goblet squat 2 kg", "3 s up, 3 s down"):
        room.taps(COACH, label)
    assert len(room.messages(RUTA)) == heard
    room.taps(COACH, "Send it")
    plan = plan_now(room)
    assert [(one.movement, one.tempo_s) for one in plan.exercises] == [("goblet_squat", 6), ("towel_curl", 4)]


def test_loads_that_are_sold_do_not_come_back_with_an_old_move(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    moved_to(room, client, "12 kg")
    for typed, load in (("8, 10 kg", "10 kg"), ("8, 10, 12, 14 kg", "10 kg")):
        room.types(COACH, "ruta")
        room.taps(COACH, "Change the plan")
        room.taps(COACH, "Loads owned")
        build_plan(room, typed, "what you have at home")
        assert at_load(room) == load


def test_another_clients_name_while_a_plan_is_made_opens_that_card(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.client(MILO, "Milo")
    open_plan(room)
    room.taps(COACH, "New plan")
    room.taps(COACH, TEMPLATE_NAMES["travel"])
    asked = room.says(COACH)
    room.types(COACH, "milo")
    assert room.says(COACH).startswith("Milo")
    room.types(COACH, "mon and thu 7pm")
    assert asked.startswith("Which days")
    assert "Send it to Ruta?" in room.says(COACH)
