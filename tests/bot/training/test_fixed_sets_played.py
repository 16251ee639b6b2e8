"""Fixed sets 30/15/15/15 over weeks in the chat: two whole sessions with reps to spare raise the load."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from bot.engine import status
from bot.engine.training import loads
from core.facts import PlanGiven, SetDone
from core.plan_text import plan_to_text
from core.plans import FIXED_AIMS, FIXED_OPEN_AIMS, Aim, Exercise, Plan, Region, Scheme
from core.store import facts, people
from core.units import Load
from tests.practice import CLIENT, Practice

LOADS = tuple(Load(Decimal(each)) for each in ("8", "8.5", "9", "9.5"))
SQUATS = Exercise("goblet_squat", Region.LEGS, Scheme.FIXED, FIXED_AIMS, LOADS[0], LOADS)
FINE = ("No", "0", "Off in under 10 seconds", "Heard it", "Done", "Bands are on", "6", "Under 2 seconds")
FINE += ("Fine", "All fine", "Bands are off", "5")
LEFT = "One thing: after set {set}, how many more clean reps could you have done?"


def fixed(practice: Practice, aims: tuple[Aim, ...] = FIXED_AIMS) -> None:
    """The client's plan: fixed sets of one movement."""
    store = practice.stage.engine.store
    coach = people.coaches(store)[0].id
    with store.transaction():
        plan = PlanGiven(
            practice.stage.clock.now(), plan_to_text(Plan("fixed", (replace(SQUATS, aims=aims),))), coach
        )
        facts.put(store, practice.client, plan, practice.stage.clock.now())


def trains(practice: Practice, counts: tuple[int, ...], left: str, pain: str = "0") -> list[str]:
    """One session from "start" to the recap, three days after the one before; what the client read."""
    heard = len(practice.heard(CLIENT))
    reps = iter(counts)
    practice.types(CLIENT, "start")
    for _ in range(80):
        newest = practice.newest(CLIENT)
        if newest.text.startswith("Next time") or "Next time, goblet squat" in newest.text:
            said = practice.heard(CLIENT)[heard:]
            rests(practice)
            return said
        _answers(practice, newest.text, reps, left, pain)
    raise AssertionError(practice.heard(CLIENT)[-4:])


def _answers(practice: Practice, text: str, reps: Iterator[int], left: str, pain: str) -> None:
    match text:
        case _ if "how many more clean reps" in text:
            practice.types(CLIENT, left)
        case _ if text.startswith(("Set 1 of", "Go ·")):
            practice.later(seconds=80)
            practice.types(CLIENT, str(next(reps)))
        case _ if text.startswith("Any pain now"):
            practice.types(CLIENT, pain)
        case "Where?":
            practice.taps(CLIENT, "A joint")
        case _ if practice.newest(CLIENT).buttons:
            _taps(practice)
        case _:
            practice.later(seconds=30)


def _taps(practice: Practice) -> None:
    labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
    practice.taps(CLIENT, next((label for label in FINE if label in labels), labels[0]))


def rests(practice: Practice) -> None:
    """Three days, with the questions after training answered."""
    for _ in range(9):
        practice.later(hours=8)
        while practice.newest(CLIENT).buttons:
            _taps(practice)


def at(practice: Practice) -> str:
    """The load of now."""
    engine = practice.stage.engine
    return loads.exercises(engine, practice.client, status.plan_of(engine, practice.client))[0].doing


GENTLE, WHOLE = (27, 12), (30, 15, 15, 15)


def test_two_whole_sessions_with_reps_to_spare_raise_fixed_sets_by_the_smallest_step(
    practice: Practice,
) -> None:
    fixed(practice)
    loads_after, asked = [], []
    for counts in (GENTLE, GENTLE, WHOLE, WHOLE, WHOLE, WHOLE):
        said = trains(practice, counts, "4")
        loads_after.append(at(practice))
        asked.append([no for no in (1, 2, 3, 4) if LEFT.format(set=no) in said])
    assert loads_after == ["8 kg", "8 kg", "8 kg", "8.5 kg", "8.5 kg", "9 kg"]
    assert asked == [[1], [1], [4], [4], [4], [4]]
    done = facts.current(practice.stage.engine.store, SetDone, practice.client)
    assert [one.reps_left for one in done[-4:]] == [None, None, None, 4]


def test_without_reps_to_spare_fixed_sets_hold_and_say_what_is_missing(practice: Practice) -> None:
    fixed(practice)
    for counts in (GENTLE, GENTLE, WHOLE, WHOLE):
        said = trains(practice, counts, "2")
    assert at(practice) == "8 kg"
    assert (
        "Next time, goblet squat: all 75 clean. With 3 more in you after set 4, twice in a row, we go up; for now 8 kg."
        in said[-1]
    )


def test_pain_that_has_not_settled_holds_fixed_sets(practice: Practice) -> None:
    fixed(practice)
    for counts, pain in ((GENTLE, "0"), (GENTLE, "1"), (WHOLE, "2"), (WHOLE, "3")):
        trains(practice, counts, "4", pain)
    assert at(practice) == "8 kg"


def test_a_last_set_below_its_number_is_not_asked_about(practice: Practice) -> None:
    fixed(practice)
    for counts in (GENTLE, GENTLE, (30, 15, 14, 11)):
        said = trains(practice, counts, "4")
    assert not any("how many more" in text for text in said)


def test_more_than_fifteen_in_a_last_set_that_the_coach_left_open_raises_at_once(practice: Practice) -> None:
    fixed(practice, FIXED_OPEN_AIMS)
    for counts in (GENTLE, GENTLE, (30, 15, 15, 18)):
        said = trains(practice, counts, "4")
    assert not any("how many more" in text for text in said)
    assert at(practice) == "8.5 kg"
