"""The coach changes one part of a plan and says why."""

from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.adjusting import DIALOGUE, Brief
from conversations.protocol import Do, Effect, Opened, Record, Said, Say, WentBack
from core.facts import CoachDid, PlanGiven
from core.plan_text import plan_from_text, plan_to_text
from core.plans import FIXED_AIMS, OPEN_AIMS, Goal, Plan, Rung, Scheme, Side
from core.templates import TEMPLATES, build
from core.units import Load

NOW = datetime(2026, 1, 5, 9, tzinfo=UTC)  # a Monday
RACK = tuple(Load(Decimal(number)) for number in range(2, 22, 2))
BOTH = build(TEMPLATES["dumbbells"], RACK, {"goblet_squat": RACK[4], "curl": RACK[1]})
REHAB = build(TEMPLATES["rehab_fixed"], RACK, {"goblet_squat": RACK[4]})
GENTLE = build(TEMPLATES["gentle"], (), {})


@dataclass
class Chat:
    """The coach's side of one dialogue."""

    plan: Plan | None
    state: Any = None
    says: list[Say] = field(default_factory=list)
    effects: list[Effect] = field(default_factory=list)

    def __post_init__(self) -> None:
        text = plan_to_text(self.plan) if self.plan is not None else ""
        self.send(Opened(NOW, Brief(5, "Ruta", 1, text, "Europe/Lisbon")))

    def send(self, event: Any) -> None:
        turn = DIALOGUE.advance(self.state, event, NOW)
        self.state = turn.state
        self.says += turn.replies
        self.effects += turn.effects

    @property
    def labels(self) -> list[str]:
        return [one.label for one in self.says[-1].choices]

    def fact(self, kind: type[Any]) -> Any:
        return next(
            one.fact for one in self.effects if isinstance(one, Record) and isinstance(one.fact, kind)
        )

    @property
    def given(self) -> Plan:
        return plan_from_text(self.fact(PlanGiven).plan)


def play(plan: Plan | None, *texts: str) -> Chat:
    chat = Chat(plan)
    for text in texts:
        chat.send(Said(NOW, text))
    return chat


def test_a_load_in_four_answers_with_the_line_that_both_sides_read() -> None:
    chat = play(BOTH, "load", "Goblet squat 10 kg")
    assert chat.labels == ["2 kg", "4 kg", "6 kg", "8 kg", "12 kg", "14 kg", "16 kg", "18 kg"]
    chat.send(Said(NOW, "12"))
    assert chat.says[-1].text == "goblet squat: 10 kg → 12 kg.\nWhy? One line; Ruta reads it."
    chat.send(Said(NOW, "Going well"))
    squat, curl = chat.given.exercises
    assert (str(squat.load), str(curl.load)) == ("12 kg", "4 kg")
    assert chat.fact(PlanGiven).why == "It goes well."
    assert chat.fact(CoachDid).note == "goblet squat: 10 kg → 12 kg. It goes well."
    told = {
        "client": 5,
        "line": "goblet squat: 10 kg → 12 kg.",
        "why": "It goes well.",
        "movements": ["goblet_squat"],
        "begun_on": "",
    }
    assert Do("plan_changed", told) in chat.effects


def test_with_one_movement_nobody_is_asked_which() -> None:
    chat = play(REHAB, "load", "8 kg", "easier for now")
    assert str(chat.given.exercises[0].load) == "8 kg"


def test_a_load_that_is_not_owned_is_asked_again() -> None:
    chat = play(REHAB, "load", "11")
    assert chat.labels
    assert "One of these" in chat.says[-2].text


def test_a_rung_is_changed_like_a_load() -> None:
    chat = play(
        build(TEMPLATES["travel"], (), {}), "load", "Chair squat sit to stand, high chair", "squat", "strong"
    )
    assert chat.given.exercises[1].rung == "squat"


def test_days_are_said_back_with_a_note_where_they_break_a_limit() -> None:
    chat = play(BOTH, "days", "mon, tue and wed 7pm")
    assert "less than 36 h" in chat.says[-1].text
    chat.send(Said(NOW, "so she can travel"))
    assert '"weekday":"tue"' in (chat.given.when or "")
    assert chat.given.exercises == BOTH.exercises


def test_days_can_be_taken_away() -> None:
    assert play(BOTH, "days", "none", "later").given.when is None


def test_sets_change_their_scheme_and_aims() -> None:
    chat = play(BOTH, "sets", "1", "fixed", "tidier")
    assert (chat.given.exercises[1].scheme, chat.given.exercises[1].aims) == (Scheme.FIXED, FIXED_AIMS)
    assert chat.given.exercises[0].aims == OPEN_AIMS


def test_the_last_fixed_set_can_be_left_open() -> None:
    chat = play(BOTH, "sets", "1", "fixed_open", "going well")
    assert chat.given.exercises[1].open_last
    assert [str(aim) for aim in chat.given.exercises[1].aims] == ["30", "15", "15", "15-30"]


def test_rehab_is_never_offered_sets_to_failure() -> None:
    assert "Sets" not in play(REHAB).labels
    assert "Sets" in play(BOTH).labels


@pytest.mark.parametrize(("said", "taken"), [("0", True), ("5", True), ("6", False), ("-1", False)])
def test_the_pain_ceiling_goes_from_0_to_5(said: str, taken: bool) -> None:
    chat = play(BOTH, "pain ceiling", said)
    assert chat.says[-1].text.startswith("Pain ceiling: 3 →") is taken


@pytest.mark.parametrize(("said", "taken"), [("2", False), ("3", True), ("18", True), ("19", False)])
def test_minutes_with_bands_stay_within_what_the_limb_allows(said: str, taken: bool) -> None:
    chat = play(REHAB, "minutes with bands", said)
    assert ("Why?" in chat.says[-1].text) is taken


def test_a_longer_walk_takes_its_limit_along() -> None:
    chat = play(GENTLE, "minutes with bands", "0", "16", "stronger now")
    walk = chat.given.exercises[0]
    assert (walk.walk_min, walk.limit_min) == (16, 16)


def test_without_a_plan_there_is_nothing_to_change() -> None:
    chat = play(None)
    assert chat.state is None
    assert "no plan to change" in chat.says[-1].text


# --- tempo ---
@pytest.mark.parametrize("seconds", [3, 4, 6])
def test_a_tempo_is_chosen_by_how_long_a_rep_goes_up_and_down(seconds: int) -> None:
    label = f"{seconds / 2:g} s up, {seconds / 2:g} s down"
    chat = play(REHAB, "tempo", label)
    assert chat.says[-1].text.startswith(f"goblet squat: 2 s up, 2 s down → {label}.")
    chat.send(Said(NOW, "going well"))
    assert chat.given.exercises[0].tempo_s == seconds


# --- movements ---
def test_a_movement_comes_in_with_the_lightest_load_and_the_plans_own_sets() -> None:
    chat = play(BOTH, "movements", "add one", "floor press")
    assert "New: Floor press, bands on the arms, 2 kg: 25-40, 10-20, 5-10." in chat.says[-1].text
    chat.send(Said(NOW, "going well"))
    assert [(one.movement, one.doing) for one in chat.given.exercises] == [
        ("goblet_squat", "10 kg"),
        ("curl", "4 kg"),
        ("floor_press", "2 kg"),
    ]
    assert [one.details["movements"] for one in chat.effects if isinstance(one, Do)] == [["floor_press"]]


def test_in_the_place_of_a_movement_only_one_of_its_pattern_is_offered() -> None:
    chat = play(BOTH, "movements", "Goblet squat 10 kg")
    assert chat.labels == ["Take it out", "Split squat", "Chair squat", "Split squat, no weight"]
    chat.send(Said(NOW, "chair squat"))
    chat.send(Said(NOW, "easier for now"))
    assert [one.movement for one in chat.given.exercises] == ["chair_squat", "curl"]
    assert chat.given.exercises[0].rung == "sit to stand, high chair"


def test_a_movement_goes_unless_it_is_the_only_one() -> None:
    chat = play(BOTH, "movements", "Curl 4 kg", "take it out", "easier for now")
    assert chat.given.exercises == BOTH.exercises[:1]
    assert chat.fact(CoachDid).note == "Curl goes. Easier for now."
    assert "Take it out" not in play(REHAB, "movements", "Goblet squat 10 kg").labels


def test_in_rehab_a_movement_comes_in_with_fixed_sets() -> None:
    chat = play(REHAB, "movements", "add one", "curl", "going well")
    assert chat.given.exercises[1].aims == FIXED_AIMS


def test_nobody_is_offered_a_movement_for_a_closed_limb() -> None:
    brief = Brief(5, "Ruta", 1, plan_to_text(GENTLE), "Europe/Lisbon", regions=("right_arm", "legs"))
    chat = Chat(GENTLE)
    chat.state = None
    for event in (Opened(NOW, brief), Said(NOW, "movements"), Said(NOW, "add one")):
        chat.send(event)
    offered = {one.value for one in chat.says[-1].choices}
    assert {"one_arm_towel_curl", "hip_bridge"} <= offered
    assert not offered & {"towel_curl", "push_up", "curl"}
    chat.send(Said(NOW, "one-arm towel curl"))
    chat.send(Said(NOW, "going well"))
    assert chat.given.exercises[-1].sides == (Side.RIGHT,)


def test_a_movement_that_breaks_a_limit_on_the_plans_days_is_noted() -> None:
    daily = replace(REHAB, when=play(REHAB, "days", "mon, tue and wed 7pm", "so").given.when)
    assert "less than 36 h" in play(daily, "movements", "add one", "curl").says[-1].text


@given(st.sampled_from(["load", "days", "sets", "pain ceiling"]), st.sampled_from([*map(str, RACK)]))
def test_what_is_not_named_stays_as_it_was(part: str, load: str) -> None:
    values = {"load": load, "days": "mon and thu 7pm", "sets": "fixed", "pain ceiling": "4"}
    movement = ["0"] if part in ("load", "sets") else []
    chat = play(BOTH, part, *movement, values[part], "because")
    made = chat.given
    assert made.exercises[1] == BOTH.exercises[1]
    assert (made.name, made.goal, made.weeks) == (BOTH.name, Goal.STRENGTH, BOTH.weeks)
    assert all(one.sides == (Side.BOTH,) for one in made.exercises)
    if part != "days":
        assert made.when == BOTH.when
    if part != "pain ceiling":
        assert made.pain_ceiling == BOTH.pain_ceiling


# --- loads owned, weaker side ---
@pytest.mark.parametrize(
    ("typed", "squat", "curl"),
    [
        ("4, 9, 11 kg", "9 kg", "4 kg"),  # the heaviest not above the load of now
        ("10, 20 kg", "10 kg", "10 kg"),  # nothing as light for the curl: the lightest
        ("3, 12", "3 kg", "3 kg"),  # a unit that is not said is the one of now
        ("bands: yellow, red", "yellow band", "yellow band"),
    ],
)
def test_other_loads_at_hand_leave_each_movement_at_the_nearest_that_is_no_heavier(
    typed: str, squat: str, curl: str
) -> None:
    chat = play(BOTH, "loads owned", typed)
    assert f"goblet squat: 10 kg → {squat}." in chat.says[-1].text.lower() or squat == "10 kg"
    chat.send(Said(NOW, "fits your week"))
    assert [one.doing for one in chat.given.exercises] == [squat, curl]
    moved = [
        name for name, was, now in (("goblet_squat", "10 kg", squat), ("curl", "4 kg", curl)) if was != now
    ]
    assert [one.details["movements"] for one in chat.effects if isinstance(one, Do)] == [moved]


def test_an_exercise_band_that_is_still_there_stays() -> None:
    bands = build(
        TEMPLATES["one_dumbbell"], (Rung("red band"), Rung("black band")), {"goblet_squat": "red band"}
    )
    chat = play(bands, "loads owned", "bands: yellow, red, black", "going well")
    assert chat.given.exercises[0].doing == "red band"
    assert [rung.name for rung in chat.given.exercises[0].rungs] == ["yellow band", "red band", "black band"]


def test_loads_that_cannot_be_read_are_asked_for_again() -> None:
    chat = play(BOTH, "loads owned", "some")
    assert "Now: 2, 4, 6, 8, 10, 12, 14, 16, 18, 20 kg." in chat.says[-1].text


def test_without_loads_there_are_none_to_change() -> None:
    assert "Loads owned" not in play(GENTLE).labels


ONE_ARM = build(TEMPLATES["weaker_side"], RACK, {"one_arm_row": RACK[1]}, (Side.LEFT, Side.RIGHT))


def test_the_weaker_side_is_changed_later_on() -> None:
    chat = play(ONE_ARM, "weaker side", "right")
    assert "right arm first, then left" in chat.says[-1].text
    chat.send(Said(NOW, "She has told me so."))
    assert chat.given.exercises[0].sides == (Side.RIGHT, Side.LEFT)
    assert "Weaker side" not in play(BOTH).labels


def test_a_closed_arm_is_never_offered_as_a_side() -> None:
    brief = Brief(5, "Ruta", 1, plan_to_text(ONE_ARM), "Europe/Lisbon", regions=("right_arm",))
    chat = Chat(ONE_ARM)
    chat.state = None
    for event in (Opened(NOW, brief), Said(NOW, "weaker side")):
        chat.send(event)
    assert chat.labels == ["Right only"]
    chat.send(Said(NOW, "left"))
    assert "One of these" in chat.says[-2].text


def test_a_part_may_be_typed_in_plain_words_later_on_too() -> None:
    assert play(BOTH, "change the weight").says[-1].text == "Which movement?"
    assert play(BOTH, "other").labels == play(BOTH).labels


# --- a plan without equipment gets a load ---------------------------------------------------------------
TRAVEL = build(TEMPLATES["travel"], (), {})


def test_a_body_weight_movement_gives_way_to_one_with_a_load_of_those_owned() -> None:
    chat = play(TRAVEL, "A movement with a load", "Chair squat", "Goblet squat")
    assert chat.says[-1].text.startswith("Which loads does Ruta own?")
    for said in ("4, 6, 8 kg", "6", "Going well"):
        chat.send(Said(NOW, said))
    push_up, squat = chat.given.exercises
    assert push_up == TRAVEL.exercises[0]
    assert (squat.movement, str(squat.load), [str(one) for one in squat.reachable]) == (
        "goblet_squat",
        "6 kg",
        ["4 kg", "6 kg", "8 kg"],
    )
    (told,) = [one for one in chat.effects if isinstance(one, Do)]
    assert told.details["movements"] == ["goblet_squat"]
    assert told.details["line"].startswith("Chair squat goes; new: Goblet squat, bands on the legs, 6 kg")
    assert told.details["line"].endswith("To train with: 4, 6, 8 kg.")
    again = play(chat.given, "load", "Goblet squat 6 kg", "8 kg", "Going well")
    assert str(again.given.exercises[1].load) == "8 kg"


@pytest.mark.parametrize("typed", ["equipment", "dumbbells", "loads owned"])
def test_a_plan_without_equipment_understands_the_usual_words_for_it(typed: str) -> None:
    assert play(TRAVEL, typed).labels[-1] == "Add one"


def test_exercise_bands_do_as_well_and_a_maximum_gives_the_load() -> None:
    bands = play(TRAVEL, "movements", "Add one", "Curl", "bands: yellow, red", "red", "Going well")
    assert bands.given.exercises[2].rung == "red band"
    best = play(TRAVEL, "movements", "Add one", "Curl", "4-12 by 2 kg", "max 30", "Going well")
    assert str(best.given.exercises[2].load) == "8 kg"


@pytest.mark.parametrize(
    ("typed", "again"),
    [
        (("4, 6",), "Kilograms or pounds?"),
        (("4, 6 kg", "5"), "One of these, please: 4 kg, 6 kg."),
        (("x",), "number"),
    ],
)
def test_first_loads_that_cannot_be_read_are_asked_for_again(typed: tuple[str, ...], again: str) -> None:
    chat = play(TRAVEL, "movements", "Add one", "Curl", *typed)
    assert again in chat.says[-2].text


def test_back_asks_for_what_is_owned_once_more() -> None:
    chat = play(TRAVEL, "movements", "Add one", "Curl", "4, 6 kg")
    chat.send(WentBack(NOW))
    assert chat.says[-1].text.startswith("Which loads does Ruta own?")
    for said in ("8, 10 kg", "10", "Going well"):
        chat.send(Said(NOW, said))
    assert str(chat.given.exercises[2].load) == "10 kg"
