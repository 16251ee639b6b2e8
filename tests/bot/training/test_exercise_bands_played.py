"""Exercise bands from the coach's plan to the client's next session."""

from core.facts import LoadMoved, PlanGiven, SetDone
from core.plan_text import plan_from_text
from core.store import facts
from tests.bot.training.test_loads_today import now, trained
from tests.practice import CLIENT, COACH, Practice


def with_bands(practice: Practice) -> None:
    """The coach types the bands the client owns."""
    practice.types(COACH, "ruta")
    practice.taps(COACH, "The plan")
    practice.taps(COACH, "The plan")
    practice.taps(COACH, "New plan")
    for answer in ("one dumbbell", "bands: yellow, red, black", "red", "none", "send it"):
        practice.types(COACH, answer)


def test_the_coach_types_bands_and_the_session_says_the_red_one(practice: Practice) -> None:
    with_bands(practice)
    plan = facts.latest(practice.stage.engine.store, PlanGiven, practice.client)
    assert plan is not None
    assert [one.name for one in plan_from_text(plan.plan).exercises[0].rungs] == [
        "yellow band",
        "red band",
        "black band",
    ]
    assert any("against the red band" in text for text in practice.heard(CLIENT))
    practice.in_a_set()
    assert "Goblet squat · against the red band" in practice.newest(CLIENT).text


def test_what_is_done_is_kept_with_its_band(practice: Practice) -> None:
    with_bands(practice)
    practice.in_a_set()
    practice.later(seconds=60)
    practice.taps(CLIENT, "Set done")
    practice.types(CLIENT, "27")
    kept = facts.current(practice.stage.engine.store, SetDone, practice.client)
    assert [(one.doing, one.reps) for one in kept] == [("red band", 27)]


def test_progress_goes_along_the_bands_and_back(practice: Practice) -> None:
    with_bands(practice)
    for day, (band, first) in enumerate([("red band", 32), ("red band", 34), ("red band", 55)]):
        trained(practice, 3 * day + 1, first, band)
    assert now(practice).exercises[0].doing == "black band"
    trained(practice, 13, 14, "black band")
    assert now(practice).exercises[0].doing == "red band"
    moves = facts.current(practice.stage.engine.store, LoadMoved, practice.client)
    assert [(one.was, one.use) for one in moves if one.was != one.use and one.action != "start"] == [
        ("red band", "black band"),
        ("black band", "red band"),
    ]


def test_the_coach_changes_the_band_of_a_plan(practice: Practice) -> None:
    with_bands(practice)
    practice.types(COACH, "ruta")
    practice.taps(COACH, "Change the plan")
    practice.taps(COACH, "Load")
    practice.types(COACH, "black")
    practice.types(COACH, "she is stronger now")
    assert now(practice).exercises[0].doing == "black band"
