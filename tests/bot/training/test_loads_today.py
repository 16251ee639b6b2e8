"""Loads over days: eased after a layoff and unsettled pain, walks that grow, the one question after the recap."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest

from bot.engine import status
from bot.engine.training import loads, reading, walks
from bot.engine.training.history import checks_right, with_answers
from conversations.words.readings import AS_IF
from core.facts import (
    Answered,
    CuffChecked,
    Detail,
    LoadMoved,
    PlanGiven,
    Rated,
    SessionEnded,
    SetDone,
    WalkDone,
)
from core.plan_text import plan_to_text
from core.plans import Exercise, Plan, Region, Scheme, Side
from core.progression import Question, SessionRecord
from core.store import facts, people
from core.units import Load
from tests.practice import COACH, START, Practice

LOADS = tuple(Load(Decimal(half) / 2) for half in range(12, 41))


def trained(practice: Practice, day: int, first: int, doing: str = "10 kg", pain: int = 0) -> str:
    """A finished session `day` days after the start, with its loads moved."""
    engine, at = practice.stage.engine, START + timedelta(days=day)
    session = f"{practice.client}-d{day}"
    practice.stage.clock.skip_to(at)
    with engine.store.transaction():
        for no, reps in enumerate((first, first // 2, first // 4), start=1):
            done = SetDone(
                at, session, 1, "goblet_squat", no, Side.BOTH, doing, reps, False, at, 30.0, 6, False
            )
            facts.put(engine.store, practice.client, done, at)
        facts.put(engine.store, practice.client, Rated(at, session, "pain", "after", pain, "joint"), at)
        facts.put(engine.store, practice.client, SessionEnded(at, session, "done"), at)
        loads.move(engine, practice.client, session, loads.advised(engine, practice.client, session))
    return session


def now(practice: Practice) -> loads.Today:
    """A session at this moment."""
    engine = practice.stage.engine
    return loads.today(engine, practice.client, status.plan_of(engine, practice.client))


def replan(practice: Practice, *exercises: Exercise) -> None:
    """Another plan."""
    store = practice.stage.engine.store
    coach = people.coaches(store)[0].id
    with store.transaction():
        plan = plan_to_text(Plan("plan", exercises))
        facts.put(store, practice.client, PlanGiven(START, plan, coach), START)


def squat(kg: int = 10) -> Exercise:
    """A goblet squat with many loads to choose from."""
    base = status_squat()
    return Exercise(base.movement, base.region, base.scheme, base.aims, Load(Decimal(kg)), LOADS)


def status_squat() -> Exercise:
    """The squat of the shared practice."""
    from tests.practice import SQUAT

    return SQUAT


def settled(practice: Practice) -> None:
    """Three sessions in range at the load, the last on day 10."""
    replan(practice, squat())
    for day in (0, 3, 6, 10):
        trained(practice, day, 32, now(practice).exercises[0].doing)


@pytest.mark.parametrize(("days", "eased"), [(7, False), (14, True), (30, True)])
def test_two_weeks_off_ease_the_load_and_say_so(practice: Practice, days: int, eased: bool) -> None:
    settled(practice)
    was = now(practice).exercises[0].load
    practice.stage.clock.skip_to(START + timedelta(days=10 + days))
    today = now(practice)
    assert was is not None
    assert today.exercises[0].load is not None
    assert (today.exercises[0].load.value < was.value) is eased
    assert [line.startswith("Goblet squat") and f"{days} days off" in line for line in today.lines] == [
        True
    ] * eased


def test_pain_that_has_not_settled_by_the_morning_eases_the_next_session(practice: Practice) -> None:
    settled(practice)
    session, at = f"{practice.client}-d10", START + timedelta(days=11)
    was = now(practice).exercises[0].load
    with practice.stage.engine.store.transaction():
        rated = Rated(at, session, "pain", "morning", 5, "joint")
        facts.put(practice.stage.engine.store, practice.client, rated, at)
    practice.stage.clock.skip_to(START + timedelta(days=13))
    today = now(practice)
    assert was is not None
    assert today.exercises[0].load is not None
    assert today.exercises[0].load.value < was.value
    assert "pain" in today.lines[0]


def test_burn_in_the_working_muscle_is_not_pain(practice: Practice) -> None:
    settled(practice)
    session, at = f"{practice.client}-d10", START + timedelta(days=10)
    with practice.stage.engine.store.transaction():
        rated = Rated(at, session, "pain", "after", 8, "muscle")
        facts.put(practice.stage.engine.store, practice.client, rated, at)
    practice.stage.clock.skip_to(START + timedelta(days=13))
    assert now(practice).lines == ()


def test_no_load_goes_above_half_of_the_tested_best(practice: Practice) -> None:
    replan(practice, squat(10))
    with practice.stage.engine.store.transaction():
        best = Detail(START, "best:goblet_squat", "24 kg")
        facts.put(practice.stage.engine.store, practice.client, best, START)
    for day in (0, 3, 6, 10, 13, 17):
        trained(practice, day, 48, now(practice).exercises[0].doing)
    load = now(practice).exercises[0].load
    assert load is not None
    assert load.value == 12


def check(verdict: str, no: int = 1, limb: str = "left_leg") -> CuffChecked:
    """One look at one limb."""
    return CuffChecked(START, "s", "1.1", no, limb, 6, "under_2", None, "fine", verdict, "")


@pytest.mark.parametrize(
    ("checks", "right"),
    [
        ([check("go")], True),
        ([check("ease"), check("go", 2)], True),  # loose, fitted again before the first set
        ([check("go"), check("ease", 2)], False),
        ([check("loosen"), check("go", 2)], False),
        ([check("go"), check("stop", 1, "right_leg")], False),
    ],
)
def test_a_day_is_right_when_no_check_failed_and_the_last_of_each_limb_was_good(
    checks: list[CuffChecked], right: bool
) -> None:
    assert checks_right(checks) is right


# --- walking -------------------------------------------------------------------------------------------------------
WALK = Exercise("walk", Region.LEGS, Scheme.WALK, limit_min=15, walk_min=9, walk_kmh=4.0)


def walked(practice: Practice, day: int, *minutes: float, effort: int = 3) -> list[tuple[str, str, str, str]]:
    """A walking session and what comes next."""
    engine, at, session = practice.stage.engine, START + timedelta(days=day), f"{practice.client}-w{day}"
    practice.stage.clock.skip_to(at)
    kmh = now(practice).exercises[0].walk_kmh
    with engine.store.transaction():
        for no, each in enumerate(minutes, start=1):
            facts.put(engine.store, practice.client, WalkDone(at, session, no, each, kmh), at)
        facts.put(engine.store, practice.client, Rated(at, session, "effort", "after", effort), at)
        return loads.move(engine, practice.client, session, loads.advised(engine, practice.client, session))


def test_a_walk_grows_by_a_minute_then_a_second_round_then_pace_after_four_weeks(practice: Practice) -> None:
    replan(practice, WALK)
    walked(practice, 0, 5)
    assert walked(practice, 1, 9)[0][2] == "10 min, 4 km/h"
    assert walked(practice, 2, 10)[0][2] == "2 x 10 min, 4 km/h"
    assert [one.walk_min for one in now(practice).exercises] == [10, 10]
    assert walked(practice, 27, 10, 10)[0][2] == "2 x 10 min, 4 km/h"
    assert walked(practice, 28, 10, 10)[0][2] == "2 x 10 min, 4.5 km/h"


def test_a_hard_or_unfinished_walk_stays_as_it_is(practice: Practice) -> None:
    replan(practice, WALK)
    walked(practice, 0, 5)
    assert walked(practice, 1, 9, effort=6)[0][2] == "9 min, 4 km/h"
    assert walked(practice, 2, 8, effort=2)[0][2] == "9 min, 4 km/h"


def minutes_today(practice: Practice) -> list[int]:
    """Each spell of a walk now."""
    return [one.walk_min for one in now(practice).exercises]


def test_the_first_two_walks_are_gentle_and_the_second_round_comes_after_them(practice: Practice) -> None:
    replan(practice, replace(WALK, walk_min=10))
    assert minutes_today(practice) == [5]
    assert walked(practice, 0, 5)[0][1:3] == ("5 min, 4 km/h", "10 min, 4 km/h")
    assert minutes_today(practice) == [10]
    assert walked(practice, 2, 10)[0][2] == "2 x 10 min, 4 km/h"
    assert minutes_today(practice) == [10, 10]


@pytest.mark.parametrize(("minutes", "effort"), [(5, 6), (4, 3)])
def test_a_first_walk_that_was_hard_or_cut_short_comes_again(
    practice: Practice, minutes: int, effort: int
) -> None:
    replan(practice, replace(WALK, walk_min=10))
    walked(practice, 0, minutes, effort=effort)
    assert minutes_today(practice) == [5]


def test_a_long_planned_walk_begins_gently_and_grows_as_two_rounds_of_ten(practice: Practice) -> None:
    replan(practice, replace(WALK, walk_min=15))
    days = []
    for day in range(4):
        days.append(minutes_today(practice))
        walked(practice, day, *days[-1])
    assert days == [[5], [10], [10, 10], [10, 10]]


def test_the_walk_that_the_coach_planned_needs_no_tap_and_what_is_beyond_does(practice: Practice) -> None:
    replan(practice, replace(WALK, walk_min=10))
    with practice.stage.engine.store.transaction():
        facts.put(practice.stage.engine.store, practice.client, Detail(START, "next_loads", "ask"), START)
    walked(practice, 0, 5)
    assert minutes_today(practice) == [10]
    walked(practice, 2, 10)
    assert minutes_today(practice) == [10]


@pytest.mark.parametrize("text", ["10 min, 4 km/h", "2 x 10 min, 4.5 km/h"])
def test_a_walk_reads_as_it_was_written(text: str) -> None:
    walk = walks.read(text)
    assert walk is not None
    assert walks.shown(walk) == text


# --- the one question ----------------------------------------------------------------------------------------------
def test_a_close_call_is_asked_about_and_the_answer_is_read(practice: Practice) -> None:
    settled(practice)
    engine = practice.stage.engine
    found = None
    for first in range(33, 46):  # somewhere between "right" and "light" two readings are close
        session = trained(practice, 13 + first - 33, first, now(practice).exercises[0].doing)
        advised = loads.advised(engine, practice.client, session)
        found = loads.question(advised)
        if found is not None:
            break
    assert found is not None
    practice.settle()
    with engine.store.transaction():
        client = people.by_id(engine.store, practice.client)
        assert reading.ask(engine, client, session, advised, practice.stage.clock.now())
    practice.settle()
    text = practice.newest(2001).text
    assert "One question about the goblet squat" in text
    assert all(AS_IF[one] in text for one in found[2])
    practice.types(2001, "3")
    kept = facts.current(engine.store, Answered, practice.client, part="asked:goblet_squat")
    assert [(one.session, one.question) for one in kept] == [(session, found[1].value)]
    assert facts.current(engine.store, LoadMoved, practice.client, session=session)


@pytest.mark.parametrize(("said", "tired"), [("yes", True), ("no", False)])
def test_a_hard_day_before_keeps_a_weak_session_from_moving_the_load(said: str, tired: bool) -> None:
    record = SessionRecord(START.date(), "10 kg", (18, 9, 5))
    answer = Answered(START, "s", "asked:goblet_squat", Question.HOW_WAS_THE_DAY, said)
    assert with_answers(record, [answer]).tired is tired


def test_after_a_movement_the_numbers_are_read_aloud_where_it_is_not_the_load(practice: Practice) -> None:
    settled(practice)
    engine = practice.stage.engine
    session = trained(practice, 13, 33, now(practice).exercises[0].doing)
    for no, reps in ((2, 32), (3, 31)):
        known = facts.current(engine.store, SetDone, practice.client, session=session, set_no=no)[0]
        with engine.store.transaction():
            facts.put(
                engine.store,
                practice.client,
                replace(known, reps=reps, tightness=4),
                practice.stage.clock.now(),
            )
    first = facts.current(engine.store, SetDone, practice.client, session=session, set_no=1)[0]
    with engine.store.transaction():
        facts.put(engine.store, practice.client, replace(first, tightness=4), practice.stage.clock.now())
        advised = loads.advised(engine, practice.client, session)
        assert reading.lines(engine, practice.client, advised) == [
            "Goblet squat: the numbers look as if the bands were loose."
        ]
        client = people.by_id(engine.store, practice.client)
        (line,) = reading.for_coach(engine, client)
    assert line.startswith("Goblet squat, the last numbers: bands loose ")


def test_a_load_that_is_right_needs_no_words(practice: Practice) -> None:
    settled(practice)
    engine = practice.stage.engine
    session = trained(practice, 13, 32, now(practice).exercises[0].doing)
    assert reading.lines(engine, practice.client, loads.advised(engine, practice.client, session)) == []
    practice.types(COACH, "ruta")
    assert "the last numbers" not in practice.newest(COACH).text
