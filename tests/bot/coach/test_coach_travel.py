"""The travel plan: one tap, given dates, and back by itself; asked for by either side."""

from collections.abc import Iterator

import pytest

from bot.engine import status
from bot.engine.days import calendar
from core.plans import Plan
from core.templates import TEMPLATES, build
from tests.bot.coach_room import COACH, RACK, RUTA, SQUATS, WEEKLY, Room

BOTH = build(TEMPLATES["dumbbells"], RACK, {"goblet_squat": RACK[1], "curl": RACK[0]}, when=WEEKLY)


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


def movements(room: Room) -> list[str]:
    plan = status.plan_of(room.stage.engine, room.person(RUTA).id)
    assert plan is not None
    return [one.movement for one in plan.exercises]


def begin(room: Room, plan: Plan = BOTH) -> None:
    room.client(RUTA, "Ruta", plan)
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "Travel plan")


def test_the_coach_swaps_the_plan_and_it_comes_back_by_itself(room: Room) -> None:
    begin(room)
    assert "goblet squat becomes chair squat, curl becomes towel curl" in room.says(COACH)
    room.taps(COACH, "One week")
    assert "Chair squat" in "".join(message.text for message in room.messages(RUTA))
    assert "Your coach swapped your plan for one without equipment." in room.says(RUTA)
    assert movements(room) == ["chair_squat", "towel_curl"]
    room.types(COACH, "ruta")
    assert "Without equipment until 8 Mar 2026." in room.says(COACH)
    room.later(days=6, hours=14)
    assert any("Back to your usual plan" in message.text for message in room.messages(RUTA))
    assert any("Ruta is back on the usual plan" in message.text for message in room.messages(COACH))
    assert movements(room) == ["goblet_squat", "curl"]


def test_the_client_asks_for_it_and_the_coach_hears(room: Room) -> None:
    room.client(RUTA, "Ruta", SQUATS)
    room.types(RUTA, "travelling")
    assert "goblet squat becomes chair squat" in room.says(RUTA)
    room.types(RUTA, "from 5 march to 7 march")
    assert "the usual plan comes back by itself" in room.says(RUTA)
    assert "Ruta travels." in room.says(COACH)
    assert movements(room) == ["goblet_squat"]
    room.later(days=2, hours=14)
    assert any("From today on, without equipment" in message.text for message in room.messages(RUTA))
    assert movements(room) == ["chair_squat"]
    room.types(RUTA, "cancel")  # the reminder
    room.types(RUTA, "travelling")
    room.taps(RUTA, "I am back")
    assert movements(room) == ["goblet_squat"]
    room.later(days=5)
    assert sum("back on the usual plan" in message.text for message in room.messages(COACH)) == 1


def test_a_session_away_is_done_with_the_chair(room: Room) -> None:
    begin(room, SQUATS)
    room.taps(COACH, "Two weeks")
    room.in_a_set(RUTA)
    assert "Chair squat" in room.says(RUTA)


def test_a_plan_that_needs_nothing_goes_along_as_it_is(room: Room) -> None:
    begin(room, build(TEMPLATES["travel"], (), {}))
    assert "needs no equipment" in room.says(COACH)


def test_the_coach_ends_it_before_its_time(room: Room) -> None:
    begin(room)
    room.taps(COACH, "Two weeks")
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "Back from travel")
    assert movements(room) == ["goblet_squat", "curl"]
    assert "Your plan" in room.says(RUTA)


# --- back before the last day, in plain words ---
@pytest.mark.parametrize("said", ["I'm back", "back home", "I am home", "home again", "Hi, I am back home."])
def test_who_is_away_says_so_and_is_back_after_a_tap(room: Room, said: str) -> None:
    begin(room)
    room.taps(COACH, "One week")
    room.types(RUTA, said)
    assert room.says(RUTA) == "You are on your travel plan. Back at your equipment?"
    room.taps(RUTA, "I am back")
    assert movements(room) == ["goblet_squat", "curl"]


@pytest.mark.parametrize("said", ["my back is home to knots", "back pain", "I am back on thursday"])
def test_other_words_with_back_in_them_are_not_that(room: Room, said: str) -> None:
    begin(room)
    room.taps(COACH, "One week")
    room.types(RUTA, said)
    assert "Back at your equipment?" not in room.says(RUTA)


def test_at_home_it_means_nothing(room: Room) -> None:
    room.client(RUTA, "Ruta", SQUATS)
    room.types(RUTA, "back home")
    assert "Shall I send that to Vera?" in room.says(RUTA)


def test_who_is_on_another_clock_is_asked_about_the_one_at_home(room: Room) -> None:
    room.client(RUTA, "Ruta", SQUATS)
    room.types(RUTA, "I am in Tokyo until 12 march")
    room.taps(RUTA, "Yes")
    room.later(days=1)
    assert room.person(RUTA).zone == "Asia/Tokyo"
    room.types(RUTA, "I'm back")
    assert room.says(RUTA).startswith("Lisbon time from now on")
    room.taps(RUTA, "Yes")
    assert room.person(RUTA).zone == "Europe/Lisbon"


def test_a_trip_that_has_not_begun_is_called_off_without_a_word_of_coming_back(room: Room) -> None:
    begin(room)
    room.types(COACH, "from 22 to 28 march")
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "Back from travel")
    assert room.says(RUTA) == "The travel plan is called off; your usual plan goes on as it is."
    assert "Ruta does not travel" in room.says(COACH)
    room.later(days=21)
    assert movements(room) == ["goblet_squat", "curl"]


def test_a_load_changed_while_they_travel_counts_afterwards_and_the_coach_reads_so(room: Room) -> None:
    begin(room)
    room.taps(COACH, "One week")
    for said in ("change ruta", "load", "0", "12 kg", "going well"):
        room.types(COACH, said)
    told = [message.text for message in room.messages(COACH)]
    assert "Ruta is on the travel plan until 8 Mar; it counts after that." in told


def test_who_is_back_may_say_so_at_a_reminder(room: Room) -> None:
    begin(room)
    room.taps(COACH, "One week")
    with room.store.transaction():
        calendar.remind_next(room.stage.engine, room.person(RUTA), room.now)
    room.later(hours=1)
    assert "Time for" in room.says(RUTA)
    room.types(RUTA, "I'm back")
    room.taps(RUTA, "I am back")
    assert movements(room) == ["goblet_squat", "curl"]
