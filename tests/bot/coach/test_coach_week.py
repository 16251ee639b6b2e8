"""The digest from facts: missed sessions, alerts that led to something, ranges by the set's own aim, names by id."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

import pytest

from bot.engine.numbers import weeks
from bot.engine.safety import alerts
from core.digest import ClientWeek
from core.facts import CoachDid, LoadMoved, PlanGiven, SetDone
from core.plan_text import plan_to_text
from core.plans import FIXED_AIMS, Aim, Scheme, Side
from core.safety.causes import Cause
from core.store import duties
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, SQUAT, SQUATS, START, Room


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


def raised(room: Room, client: int, cause: Cause) -> None:
    with room.store.transaction():
        duties.raise_alert(room.store, client, cause, "said", "told", room.now, None)


def told(room: Room, client: int, cause: Cause) -> None:
    """Raised as the engine does it, with its messages."""
    with room.store.transaction():
        alerts.raise_alert(room.stage.engine, client, cause, "said", "told")
    room.settle()


def one_set(room: Room, client: int, reps: int, aim: Aim | None, expected: int | None = None) -> None:
    low, high = (aim.low, aim.high) if aim else (None, None)
    at = room.now
    fact = SetDone(
        at, f"{client}-{at:%d%H%M%S}-{reps}", 1, "goblet_squat", 1, Side.BOTH, "10 kg", reps, False, at, None, 6, False,
        None, low, high, expected,
    )  # fmt: skip
    room.put(client, fact)


def week(room: Room, chat: int = RUTA) -> ClientWeek:
    return weeks.week_of(room.stage.engine, room.person(chat), room.now)


# --- ranges ----------------------------------------------------------------------------------------------
@pytest.mark.parametrize(("reps", "good"), [(24, False), (25, True), (40, True), (41, False)])
def test_a_set_counts_as_in_range_by_the_aim_it_was_done_for(room: Room, reps: int, good: bool) -> None:
    client = room.client(RUTA, "Ruta")
    one_set(room, client, reps, Aim(25, 40))
    fixed = replace(SQUATS, exercises=(replace(SQUAT, scheme=Scheme.FIXED, aims=FIXED_AIMS),))
    room.put(client, PlanGiven(room.now, plan_to_text(fixed), 1))  # today's plan says 30, then it said 25-40
    assert week(room).in_range == [good]


def test_fixed_and_gentle_sets_have_no_range_to_be_in(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    one_set(room, client, 30, FIXED_AIMS[0])
    one_set(room, client, 20, None)
    assert week(room).in_range == []
    [panel] = weeks.panels_of(room.stage.engine, room.person(RUTA), "Ruta", room.now)
    assert (panel["low"], panel["high"]) == ([30, 25], [30, 40])  # what has none is drawn by the plan
    assert panel["held"] == [True, False]


def test_expected_against_actual_is_the_mean_of_what_the_model_had_said(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    one_set(room, client, 28, Aim(25, 40), 31)
    one_set(room, client, 30, Aim(25, 40), 29)
    assert week(room).off_expected == [-3, 1]
    room.types(COACH, "week")
    assert "Set 1 in range: 100%, 1.0 reps below what was expected." in room.says(COACH)


def test_a_real_session_stores_its_aim_with_the_set_once_it_is_no_longer_gentle(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    for number in range(3):
        room.trained(client, f"old{number}", (30, 15, 8), START - timedelta(days=12 - 3 * number))
    room.in_a_set(RUTA)
    room.types(RUTA, "31")
    assert week(room).in_range == [True, True]  # the last of the old ones, and this one


# --- missed, moved ---------------------------------------------------------------------------------------
def test_missed_sessions_come_from_the_calendar_and_what_was_done(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (30, 15, 8), START + timedelta(hours=1))
    room.stage.clock.skip_to(START + timedelta(days=11))  # Thursday, Monday and Thursday lie behind
    assert (week(room).missed_in_a_row, week(room).planned, week(room).done) == (3, 2, 0)


def test_only_loads_that_hold_count_as_moved(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    for number, applied in enumerate((True, False)):
        move = LoadMoved(room.now, str(number), "goblet_squat", "10 kg", "12 kg", "raise", "", applied)
        room.put(client, move)
    assert (week(room).loads_moved, week(room).loads_asked) == (1, 1)


# --- alerts ----------------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("action", "hours", "acted"),
    [
        ("alert_hold", 1, True),
        ("alert_call", 1, True),
        ("wrote", 24, True),
        ("changed_plan", 25, False),
        ("alert_take", 1, False),
        ("alert_settle", 1, False),
    ],
)
def test_an_alert_led_to_something_when_the_coach_did_more_than_read_it(
    room: Room, action: str, hours: int, acted: bool
) -> None:
    client = room.client(RUTA, "Ruta")
    room.later(hours=1)
    raised(room, client, Cause.NERVE)
    at = room.now + timedelta(hours=hours)
    room.put(client, CoachDid(at, 1, action, Cause.NERVE.value))
    [seen] = weeks.alerts_of(room.stage.engine, room.person(RUTA), room.now, room.now)
    assert seen.acted is acted


def test_a_cause_that_never_led_to_anything_is_named(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.later(hours=1)
    for _ in range(3):
        raised(room, client, Cause.SORE)
    room.later(days=1)
    room.types(COACH, "week")
    assert "Never led to anything in eight weeks: " in room.says(COACH)


def test_alerts_of_this_morning_are_not_called_idle_yet(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.later(hours=1)
    for _ in range(3):
        raised(room, client, Cause.SORE)
    room.later(hours=23, minutes=50)
    room.types(COACH, "week")
    assert "Never led" not in room.says(COACH)


def test_the_stand_in_acts_for_the_coach_and_a_taken_alert_may_be_acted_on_next_week(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.later(hours=1)
    told(room, client, Cause.NERVE)
    room.later(minutes=6)
    room.taps(SECOND, "I am on it")
    room.types(COACH, "week")
    assert "Alerts: 1 urgent (0 led to something), 0 same day (0)." in room.says(COACH)
    room.later(days=6)
    room.taps(SECOND, "Hold")
    room.types(COACH, "week")
    assert "Alerts: 1 urgent (1 led to something), 0 same day (0)." in room.says(COACH)


def test_what_was_done_about_one_alert_says_nothing_about_another(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.later(hours=1)
    told(room, client, Cause.SORE)
    told(room, client, Cause.NERVE)
    room.later(minutes=1)
    room.taps(COACH, "Call noted")
    seen = weeks.alerts_of(room.stage.engine, room.person(RUTA), START, room.now)
    assert {one.cause: one.acted for one in seen} == {Cause.SORE: False, Cause.NERVE: True}


# --- who needs you ---------------------------------------------------------------------------------------
def test_two_of_one_name_have_each_their_own_line_and_button(room: Room) -> None:
    room.client(RUTA, "Ruta")
    second = room.client(MILO, "Ruta", plan=None)
    raised(room, second, Cause.NERVE)
    room.types(COACH, "week")
    wanted = f"Ruta #{second}"
    assert f"- {wanted}: an urgent alert is open" in room.says(COACH)
    assert room.labels(COACH) == [f"{wanted}: see the alert", "Everybody"]


def test_the_button_of_a_client_does_what_the_most_urgent_reason_asks_for(room: Room) -> None:
    kai = room.client(RUTA, "Ruta", plan=None)
    milo = room.client(MILO, "Milo")
    raised(room, milo, Cause.NERVE)
    room.types(COACH, "week")
    assert room.labels(COACH) == ["Milo: see the alert", "Ruta: make a plan", "Everybody"]
    room.taps(COACH, "Ruta: make a plan")
    assert "Which template?" in room.says(COACH)
    room.types(COACH, "cancel")
    room.taps(COACH, "Milo: see the alert")
    assert "I am on it" in room.labels(COACH)
    room.put(kai, PlanGiven(room.now, plan_to_text(SQUATS), 1))
    room.later(days=9)
    room.types(COACH, "week")
    room.taps(COACH, "Ruta: write")
    assert "What shall I tell Ruta?" in room.says(COACH)


def test_the_picture_begins_with_who_needs_the_coach_and_names_movements_of_a_plan_that_is_over(
    room: Room, monkeypatch: pytest.MonkeyPatch
) -> None:
    calm, worried = room.client(MILO, "Ada"), room.client(RUTA, "Ruta", plan=None)
    for client in (calm, worried):
        one_set(room, client, 30, Aim(25, 40))
    room.types(COACH, "week")
    made = weeks.week_of_practice(room.stage.engine, room.person(COACH), room.now)
    clients = [room.person(MILO), room.person(RUTA)]
    chart = weeks.chart_of(room.stage.engine, clients, room.now, made.by_need)
    assert [panel["title"] for panel in chart["panels"]] == ["Ruta: Goblet squat", "Ada: Goblet squat"]
    assert chart["more"] == 0
    monkeypatch.setattr(weeks, "MOST_PANELS", 1)
    chart = weeks.chart_of(room.stage.engine, clients, room.now, made.by_need)
    assert [panel["title"] for panel in chart["panels"]] == ["Ruta: Goblet squat"]
    assert chart["more"] == 1


def test_everybody_is_a_line_each_paged(room: Room) -> None:
    for number in range(16):
        room.client(3000 + number, f"Client {number:02}")
    room.types(COACH, "week")
    assert len(room.says(COACH).splitlines()) <= 14
    room.taps(COACH, "Everybody")
    assert room.says(COACH).splitlines()[0] == "Everybody, 1-14 of 16:"
    room.taps(COACH, "Next")
    assert len(room.says(COACH).splitlines()) == 3
    room.taps(COACH, "Back")
    assert "1-14" in room.says(COACH)


def test_the_week_comes_by_itself_on_monday_morning_and_once(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.later(days=7)
    assert sum(message.text.startswith("Your week.") for message in room.messages(COACH)) == 1
