"""The coach makes a plan by chat."""

from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.planning.brief import Brief
from conversations.planning.days import read_days
from conversations.planning.draft import Draft
from conversations.planning.machine import DIALOGUE, plan_of
from conversations.protocol import Cancelled, Corrected, Do, Effect, Opened, Record, Said, Say, WentBack
from conversations.words import adjusting as adjusting_words
from conversations.words import planning as words
from core.calendar.limits import USUAL
from core.calendar.recurrence import Recurrence, Weekday
from core.calendar.stored import when_from_text
from core.cuffs.limbs import Limb, banded, opened
from core.facts import CoachDid, PlanGiven
from core.plan_text import plan_from_text, plan_to_text
from core.plans import Goal, Plan, Scheme, Side
from core.templates import TEMPLATES, build
from core.units import Load

NOW = datetime(2026, 1, 5, 9, tzinfo=UTC)  # a Monday
RUTA = Brief(2001, "Ruta", 1001, zone="Europe/Lisbon", today="2026-01-05")
RACK = tuple(Load(Decimal(number)) for number in (4, 6, 8))


@dataclass
class Chat:
    """The coach's side of one dialogue: what was asked, what came of it."""

    brief: Brief
    state: Any = None
    says: list[Say] = field(default_factory=list)
    effects: list[Effect] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.send(Opened(NOW, self.brief))

    def send(self, event: Any) -> None:
        turn = DIALOGUE.advance(self.state, event, NOW)
        self.state = turn.state
        self.says += turn.replies
        self.effects += turn.effects

    @property
    def asked(self) -> str:
        return (self.says[-1].asks or "").partition(".")[0]

    @property
    def labels(self) -> list[str]:
        return [one.label for one in self.says[-1].choices]

    @property
    def plan(self) -> Plan:
        facts = [one.fact for one in self.effects if isinstance(one, Record)]
        given = next(fact for fact in facts if isinstance(fact, PlanGiven))
        return plan_from_text(given.plan)


def play(brief: Brief, *texts: str) -> Chat:
    chat = Chat(brief)
    for text in texts:
        chat.send(Said(NOW, text))
    return chat


def test_dumbbells_in_six_answers() -> None:
    chat = play(RUTA, "dumbbells", "4, 6, 8 kg", "8 kg", "max 20", "yes", "mon and thu 7pm", "send it")
    squat, curl = chat.plan.exercises
    assert (str(squat.load), str(curl.load), squat.reachable) == ("8 kg", "6 kg", RACK)
    when = when_from_text(chat.plan.when or "")
    assert isinstance(when, Recurrence)
    assert [slot.weekday for slot in when.slots] == [Weekday.MON, Weekday.THU]
    assert when.zone == "Europe/Lisbon"
    assert chat.state is None


def test_the_plan_is_recorded_for_the_client_and_given() -> None:
    chat = play(RUTA, "one dumbbell", "4 kg", "4", "none", "yes")
    plan = PlanGiven(NOW, plan_to_text(chat.plan), 1001)
    did = CoachDid(NOW, 1001, "gave_plan", "one_dumbbell")
    assert chat.effects == [Record(plan, 2001), Record(did, 2001), Do("plan_given", {"client": 2001})]
    assert chat.plan.when is None


def test_nothing_is_recorded_before_the_coach_says_so() -> None:
    chat = play(RUTA, "one dumbbell", "4 kg", "4", "none")
    assert chat.asked == "confirm"
    assert chat.effects == []
    chat.send(Cancelled(NOW))
    assert (chat.effects, chat.state) == ([], None)


def test_the_summary_says_back_loads_sets_days_and_zone() -> None:
    text = play(RUTA, "one dumbbell", "4, 8 kg", "8", "mon and thu 7pm").says[-1].text
    for part in ("Goblet squat", "8 kg", "25-40", "Monday and Thursday at 19:00", "Lisbon time", "5 January"):
        assert part in text
    assert "Note:" not in text


def test_start_again_forgets_everything() -> None:
    chat = play(RUTA, "one dumbbell", "4 kg", "4", "none", "start again")
    assert chat.asked == "template"
    assert chat.effects == []


# --- which templates -------------------------------------------------------------------------------------
@given(st.sets(st.sampled_from(["arms", "legs"]), min_size=1))
def test_only_templates_for_cleared_limbs_are_offered(regions: set[str]) -> None:
    chat = Chat(replace(RUTA, regions=tuple(sorted(regions))))
    offered = {one.value for one in chat.says[-1].choices}
    assert offered == {name for name, template in TEMPLATES.items() if template.regions <= regions}
    assert offered


RIGHT_ARM = replace(RUTA, regions=("right_arm", "legs"))


def test_with_one_arm_closed_the_reason_is_said_and_one_sided_work_is_offered() -> None:
    said = Chat(RIGHT_ARM).says[-1]
    assert "The left arm stays without a band" in said.text
    assert "one-sided work on the right arm only" in said.text
    offered = {one.value for one in said.choices}
    assert {"one_arm", "rehab_one_arm", "one_dumbbell", "gentle"} <= offered
    assert not {"dumbbells", "arms", "rehab_arms", "travel"} & offered


@pytest.mark.parametrize("typed", ["dumbbells", "Arms: curl, floor press", "travel"])
def test_a_template_for_both_arms_is_refused_with_the_reason(typed: str) -> None:
    chat = play(RIGHT_ARM, typed)
    assert chat.asked == "template"
    assert chat.says[-1].text.startswith("Not this one: it would put a band on the left arm.")
    assert "one_arm" in {one.value for one in chat.says[-1].choices}


def test_one_sided_work_goes_to_the_open_arm_without_asking_for_a_side() -> None:
    chat = play(RIGHT_ARM, "one_arm", "4, 6, 8 kg", "6 kg", "4 kg", "none", "yes")
    assert {one.movement: one.sides for one in chat.plan.exercises} == {
        "one_arm_row": (Side.RIGHT,),
        "one_arm_curl": (Side.RIGHT,),
    }


def test_a_draft_from_before_the_arm_was_closed_keeps_to_the_open_side() -> None:
    begun = Draft(
        template="weaker_side", owned="4 kg|6 kg", starts={"one_arm_row": "4 kg"}, side="left,right"
    )
    assert plan_of(RIGHT_ARM, begun).exercises[0].sides == (Side.RIGHT,)


def test_an_own_template_for_both_arms_is_refused_too() -> None:
    plan = build(TEMPLATES["arms"], RACK, dict.fromkeys(TEMPLATES["arms"].loaded, RACK[0]))
    brief = replace(RIGHT_ARM, own=(("push day", plan_to_text(plan)),))
    chat = play(brief, "push day")
    assert "band on the left arm" in chat.says[-1].text
    assert "push day" not in chat.labels


@pytest.mark.parametrize(
    ("region", "closed"), [("arms", "rehab_fixed"), ("legs", "dumbbells"), ("legs", "arms")]
)
def test_a_template_that_was_not_offered_cannot_be_typed(region: str, closed: str) -> None:
    assert play(replace(RUTA, regions=(region,)), closed).asked == "template"


@pytest.mark.parametrize("region", ["arms", "legs"])
def test_there_is_a_rehab_plan_without_failure_for_either_limb(region: str) -> None:
    chat = Chat(replace(RUTA, regions=(region,)))
    goals = [TEMPLATES[one.value].goal for one in chat.says[-1].choices]
    assert Goal.REHAB in goals


def test_a_stored_draft_beyond_the_clearance_makes_no_plan() -> None:
    with pytest.raises(ValueError, match=r"^regions:"):
        plan_of(replace(RUTA, regions=("legs",)), Draft(template="travel"))


def test_a_client_who_is_not_cleared_gets_no_plan() -> None:
    chat = Chat(replace(RUTA, regions=()))
    assert [say.text for say in chat.says] == [words.NOT_CLEARED.format(name="Ruta")]
    assert (chat.effects, chat.state) == ([], None)


# --- loads -----------------------------------------------------------------------------------------------
def test_a_unit_that_was_not_said_is_asked_never_guessed() -> None:
    chat = play(RUTA, "one dumbbell", "2-20 by 2")
    assert (chat.asked, chat.labels) == ("unit", ["Kilograms", "Pounds"])
    chat.send(Said(NOW, "pounds"))
    assert chat.labels[0] == "2 lb"
    chat.send(WentBack(NOW))
    assert chat.asked == "unit"


def test_a_start_that_is_not_owned_is_asked_again() -> None:
    chat = play(RUTA, "one dumbbell", "4, 8 kg", "5")
    assert chat.asked.startswith("start:goblet_squat")
    assert "4 kg, 8 kg" in chat.says[-2].text


def test_loads_above_half_of_a_maximum_are_not_taken_from_it() -> None:
    chat = play(RUTA, "one dumbbell", "8, 12 kg", "max 15")
    assert chat.says[-1].text == words.TOO_HEAVY.format(lightest="8 kg")
    chat.send(Said(NOW, "8"))
    assert chat.asked == "when"


def test_an_edited_list_of_loads_asks_for_the_start_again() -> None:
    chat = Chat(RUTA)
    for number, text in enumerate(("one dumbbell", "4, 8 kg", "8")):
        chat.send(Said(NOW, text, None, number))
    chat.send(Corrected(NOW, "3, 6 kg", 1))
    chat.send(Said(NOW, "none"))
    assert chat.asked.startswith("start:goblet_squat")
    assert chat.labels == ["3 kg", "6 kg"]


def test_body_weight_needs_no_loads() -> None:
    chat = play(RUTA, "travel")
    assert chat.asked == "when"
    chat.send(Said(NOW, "none"))
    chat.send(Said(NOW, "send it"))
    assert [one.load for one in chat.plan.exercises] == [None, None]


@pytest.mark.parametrize(
    ("said", "sides"),
    [
        ("left is weaker", (Side.LEFT, Side.RIGHT)),
        ("right is weaker", (Side.RIGHT, Side.LEFT)),
        ("left only", (Side.LEFT,)),
        ("right only", (Side.RIGHT,)),
    ],
)
def test_the_weaker_side_comes_first(said: str, sides: tuple[Side, ...]) -> None:
    chat = play(RUTA, "weaker_side", "4 kg", "4", said, "none", "send it")
    assert chat.plan.exercises[0].sides == sides


# --- days ------------------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("said", "answer"),
    [
        ("mon and thu", "At what time?"),
        ("twice a week", "On which days?"),
        ("tomorrow 6:30", "That is one date."),
    ],
)
def test_days_that_are_not_clear_are_asked_again_with_what_is_missing(said: str, answer: str) -> None:
    chat = play(RUTA, "travel", said)
    assert chat.asked == "when"
    assert chat.says[-1].text.startswith(answer)
    chat.send(Said(NOW, "mon and thu 7pm"))
    assert chat.asked == "confirm"


def test_days_with_two_readings_are_asked_back_with_their_dates() -> None:
    chat = play(RUTA, "travel", "from 3/4 mon 7pm")
    first, second, _ = chat.labels
    assert "April" in first + second
    assert "March" in first + second
    chat.send(Said(NOW, "2"))
    assert second in chat.says[-1].text
    assert first not in chat.says[-1].text


def test_a_number_that_stands_for_no_reading_picks_none() -> None:
    chat = play(RUTA, "travel", "from 3/4 mon 7pm", "0")
    assert chat.asked == "when"
    assert play(RUTA, "travel", "1").asked == "when"


@pytest.mark.parametrize(
    ("days", "over"),
    [
        ("mon wed fri 7pm", []),
        ("mon and tue 7pm", ["hours_apart"]),
        ("mon 7am and tue 7pm", []),
        ("mon 6am, tue 8pm, thu 6pm, sat 6pm", ["sessions_a_week"]),
        ("mon wed fri sun 7pm", ["sessions_a_week", "hours_apart"]),
        ("mon tue thu fri 7pm", ["sessions_a_week", "hours_apart"]),
        ("every day at 7pm", ["sessions_a_week", "hours_apart"]),
    ],
)
def test_days_over_the_usual_limits_need_one_line_from_the_coach(days: str, over: list[str]) -> None:
    chat = play(RUTA, "travel", days)
    assert [
        limit for limit, line in words.OVER_LIMITS.items() if words.named(line, USUAL) in chat.says[-1].text
    ] == over
    if over:
        chat.send(Said(NOW, "Easy short sessions, agreed with her physio"))
    assert [
        limit for limit, line in words.LIMITS.items() if words.named(line, USUAL) in chat.says[-1].text
    ] == over
    chat.send(Said(NOW, "send it"))
    given = next(
        one.fact for one in chat.effects if isinstance(one, Record) and isinstance(one.fact, PlanGiven)
    )
    reason = "Easy short sessions, agreed with her physio"
    assert given.why == (f"{', '.join(over)}: {reason}" if over else "")


@pytest.mark.parametrize("said", ["yes", "ok", "👍", "3"])
def test_a_bare_yes_is_no_reason(said: str) -> None:
    assert play(RUTA, "travel", "every day 7pm", said).asked == "over"


@pytest.mark.parametrize("said", ["other days", "no"])
def test_instead_of_a_reason_other_days_can_be_given(said: str) -> None:
    chat = play(RUTA, "travel", "every day 7pm", said)
    assert chat.asked == "when"
    chat.send(Said(NOW, "mon and thu 7pm"))
    assert chat.asked == "confirm"


@pytest.mark.parametrize(
    ("first", "second", "kept"),
    [
        ("tuesdays and fridays", "18:30", "Tuesday and Friday at 18:30"),
        ("tuesdays and fridays", "7pm", "Tuesday and Friday at 19:00"),
        ("mon and thu", "7am", "Monday and Thursday at 07:00"),
        ("twice a week at 7pm", "mon and thu", "Monday and Thursday at 19:00"),
    ],
)
def test_what_was_understood_is_kept_until_the_rest_is_said(first: str, second: str, kept: str) -> None:
    chat = play(RUTA, "travel", first, second)
    assert chat.asked == "confirm"
    assert kept in chat.says[-1].text


def test_a_bare_number_completes_the_days_as_one_of_its_readings() -> None:
    chat = play(RUTA, "travel", "mon and thu", "7")
    if chat.asked == "when":
        assert all("Monday and Thursday" in label for label in chat.labels[:2])
        chat.send(Said(NOW, "1"))
    assert chat.asked == "confirm"
    assert "Monday and Thursday" in chat.says[-1].text


def test_every_day_and_a_time_is_every_day() -> None:
    chat = play(RUTA, "travel", "every day", "18:30")
    assert chat.asked == "over"
    assert "Every day at 18:30" in chat.says[-1].text


def test_words_that_complete_nothing_leave_what_was_kept() -> None:
    chat = play(RUTA, "travel", "mon and thu", "hm", "7pm")
    assert chat.asked == "confirm"


# --- a best lift, sides, no sets to failure ----------------------------------------------------------------
def test_the_load_from_a_best_lift_is_shown_before_it_counts() -> None:
    chat = play(RUTA, "one dumbbell", "2-20 by 2 kg", "max 40")
    assert chat.says[-1].text == "Max 40 kg → 12 kg. Right?"
    assert chat.labels == ["Yes, 12 kg", "Another load"]
    chat.send(Said(NOW, "another"))
    assert chat.asked.startswith("start:goblet_squat")
    chat.send(Said(NOW, "10"))
    assert chat.asked == "when"


@pytest.mark.parametrize(
    ("said", "load"), [("yes", "12 kg"), ("12 kg", "12 kg"), ("10", "10 kg"), ("max 30", "8 kg")]
)
def test_the_load_from_a_best_lift_can_be_taken_or_another_typed(said: str, load: str) -> None:
    chat = play(RUTA, "one dumbbell", "2-20 by 2 kg", "max 40", said)
    chat = chat if chat.asked == "when" else play(RUTA, "one dumbbell", "2-20 by 2 kg", "max 40", said, "yes")
    chat.send(Said(NOW, "none"))
    chat.send(Said(NOW, "send it"))
    assert str(chat.plan.exercises[0].load) == load


@pytest.mark.parametrize(
    ("said", "sides", "shown"),
    [
        ("left", (Side.LEFT, Side.RIGHT), "left arm first, then right"),
        ("Right", (Side.RIGHT, Side.LEFT), "right arm first, then left"),
        ("left only", (Side.LEFT,), "left arm only"),
        ("left_only", (Side.LEFT,), "left arm only"),
    ],
)
def test_a_bare_side_is_the_weaker_one_and_the_summary_says_both(
    said: str, sides: tuple[Side, ...], shown: str
) -> None:
    chat = play(RUTA, "weaker_side", "4 kg", "4", said, "none")
    assert shown in chat.says[-1].text
    chat.send(Said(NOW, "send it"))
    assert chat.plan.exercises[0].sides == sides


def test_a_clearance_without_failure_turns_open_sets_into_fixed_ones_and_says_so() -> None:
    chat = play(replace(RUTA, no_failure=True), "one dumbbell", "4 kg", "4", "none")
    assert words.NO_FAILURE in chat.says[-1].text
    chat.send(Said(NOW, "send it"))
    assert {one.scheme for one in chat.plan.exercises} == {Scheme.FIXED}
    fixed = play(replace(RUTA, no_failure=True), "rehab_fixed", "4 kg", "4", "none")
    assert words.NO_FAILURE not in fixed.says[-1].text


def test_a_comma_between_two_numbers_is_asked_about() -> None:
    said = play(RUTA, "one dumbbell", "12,5").says[-2].text
    assert said.startswith("Is that one dumbbell of 12.5, or two, 12 and 5?")


# --- the plan so far as defaults -------------------------------------------------------------------------
def rehab(until: str = "") -> Brief:
    days = read_days(f"mon and thu 7pm{until}", NOW, "Europe/Lisbon").readings[0]
    plan = build(TEMPLATES["rehab_fixed"], RACK, {"goblet_squat": RACK[1]}, when=days)
    return replace(RUTA, current=plan_to_text(plan))


def test_the_plan_so_far_is_one_tap_each() -> None:
    chat = play(rehab(), "rehab_fixed")
    assert chat.labels[0] == "As now: 4 kg to 8 kg"
    chat.send(Said(NOW, chat.says[-1].choices[0].value))
    assert chat.labels[0] == "6 kg"
    chat.send(Said(NOW, "6 kg"))
    assert chat.labels[0].startswith("Every Monday and Thursday at 19:00")
    chat.send(Said(NOW, chat.says[-1].choices[0].value))
    chat.send(Said(NOW, "send it"))
    assert chat.plan == plan_from_text(rehab().current)


def test_as_now_can_be_typed() -> None:
    chat = play(rehab(), "rehab_fixed", "as now", "6 kg", "as now", "send it")
    assert chat.plan == plan_from_text(rehab().current)
    assert play(RUTA, "one dumbbell", "as now").asked == "owned"


def test_days_that_are_over_are_not_offered_again() -> None:
    ended = replace(rehab(" for two weeks"), today="2026-02-01")
    assert play(ended, "rehab_fixed", "4 kg", "4").labels == [*words.USUAL_DAYS, words.WHEN_NONE]
    still_on = replace(ended, today="2026-01-10")
    assert len(play(still_on, "rehab_fixed", "4 kg", "4").labels) == 2


def test_leaving_rehab_for_sets_to_failure_is_noted() -> None:
    assert words.LEAVES_REHAB in play(rehab(), "one dumbbell", "4 kg", "4", "none").says[-1].text
    assert words.LEAVES_REHAB not in play(rehab(), "rehab_fixed", "4 kg", "4", "none").says[-1].text
    assert words.LEAVES_REHAB not in play(RUTA, "one dumbbell", "4 kg", "4", "none").says[-1].text


def test_a_plan_so_far_that_cannot_be_read_is_no_obstacle() -> None:
    assert play(replace(RUTA, current="{"), "one dumbbell").labels == [words.OWNED_DEFAULT]


# --- whatever is said ------------------------------------------------------------------------------------
ANSWERS = st.sampled_from(
    [
        *TEMPLATES,
        "4, 6 kg",
        "2-20 by 2",
        "kilograms",
        "4",
        "max 40",
        "left only",
        "mon 7pm",
        "none",
        "no",
        "as_now",
    ]
) | st.text(max_size=20)


@given(st.sets(st.sampled_from(["arms", "legs", *Limb])), st.lists(ANSWERS | st.none(), max_size=14))
def test_whatever_is_said_a_plan_stays_within_the_clearance(
    regions: set[str], answers: list[str | None]
) -> None:
    chat = Chat(replace(RUTA, regions=tuple(sorted(regions))))
    for answer in answers:
        if chat.state is None:
            break
        chat.send(WentBack(NOW) if answer is None else Said(NOW, answer))
    if any(isinstance(effect, Record) for effect in chat.effects):
        assert all(banded(one) <= opened(regions) for one in chat.plan.exercises)
        to_failure = any(one.scheme is Scheme.OPEN for one in chat.plan.exercises)
        assert not (chat.plan.goal is Goal.REHAB and to_failure)


@given(st.sampled_from(sorted(TEMPLATES)))
def test_every_template_can_be_finished_by_taps_alone(template: str) -> None:
    chat = play(RUTA, template)
    while chat.state is not None:
        chat.send(Said(NOW, chat.says[-1].choices[0].value, chat.says[-1].asks))
    assert chat.plan.name == template.replace("_", " ")


# --- parts changed before it is sent -----------------------------------------------------------------------
DUMBBELLS = ("dumbbells", "4, 6, 8 kg", "8 kg", "6 kg", "mon and thu 7pm")


def test_from_the_summary_each_part_is_on_a_button_between_send_and_again() -> None:
    parts = [label for label, _ in adjusting_words.PARTS]
    assert set(play(RUTA, *DUMBBELLS).labels) <= {words.SEND, *parts, words.AGAIN}
    for usual in (
        "Load",
        "Days",
        "Movements",
        "Sets",
        "Tempo",
        "Pain ceiling",
        "Minutes with bands",
        "Loads owned",
    ):
        assert usual in play(RUTA, *DUMBBELLS).labels


@pytest.mark.parametrize(
    ("said", "line"),
    [
        (("tempo", "curl 6 kg", "3 s up, 3 s down"), "curl: 2 s up, 2 s down → 3 s up, 3 s down."),
        (("load", "Goblet squat 8 kg", "4"), "goblet squat: 8 kg → 4 kg."),
        (("sets", "curl 6 kg", "fixed: 30, 15, 15, 15"), "curl: fixed sets, 30, 15, 15, 15."),
        (("pain ceiling", "2"), "Pain ceiling: 3 → 2."),
        (("minutes with bands", "curl 6 kg", "12"), "curl: 10 → 12 min with bands."),
        (("movements", "curl 6 kg", "take it out"), "Curl goes."),
    ],
)
def test_a_part_is_changed_before_the_plan_goes_out(said: tuple[str, ...], line: str) -> None:
    chat = play(RUTA, *DUMBBELLS, *said)
    assert chat.asked == "confirm"
    assert line in chat.says[-1].text
    assert chat.effects == []
    usual = play(RUTA, *DUMBBELLS, "send it").plan
    chat.send(Said(NOW, "send it"))
    assert chat.plan != usual
    assert chat.plan.when == usual.when


def test_the_summary_says_which_movement_has_which_tempo() -> None:
    said = play(RUTA, *DUMBBELLS, "tempo", "curl 6 kg", "3 s up, 3 s down").says[-1].text
    assert "Goblet squat 2 s up, 2 s down; Curl 3 s up, 3 s down" in said


def test_movements_and_then_their_loads_before_it_goes_out() -> None:
    chat = play(
        RUTA, *DUMBBELLS, "movements", "add one", "floor press", "load", "Floor press 4 kg", "6", "yes"
    )
    done = [(one.movement, one.doing) for one in chat.plan.exercises]
    assert done == [("goblet_squat", "8 kg"), ("curl", "6 kg"), ("floor_press", "6 kg")]


def test_other_days_from_the_summary_are_held_to_the_limits_again() -> None:
    chat = play(RUTA, *DUMBBELLS, "days", "mon, tue and wed 7pm")
    assert chat.asked == "over"
    chat.send(Said(NOW, "other days"))
    assert chat.asked == "when"
    chat.send(Said(NOW, "tue and fri 8pm"))
    assert "Tuesday and Friday at 20:00" in chat.says[-1].text
    chat.send(Said(NOW, "send it"))
    when = when_from_text(chat.plan.when or "")
    assert isinstance(when, Recurrence)
    assert [slot.weekday for slot in when.slots] == [Weekday.TUE, Weekday.FRI]


def test_a_reason_for_days_over_the_limits_does_not_count_for_other_days() -> None:
    chat = play(
        RUTA, *DUMBBELLS[:-1], "every day at 7pm", "she is used to it", "days", "mon, tue and wed 7pm"
    )
    assert chat.asked == "over"


def test_back_undoes_a_change_step_by_step_and_loses_nothing_else() -> None:
    chat = play(RUTA, *DUMBBELLS, "pain ceiling", "2")
    chat.send(WentBack(NOW))
    assert chat.asked.startswith("change_value:0")
    chat.send(WentBack(NOW))
    assert chat.asked == "confirm"
    chat.send(Said(NOW, "send it"))
    assert chat.plan == play(RUTA, *DUMBBELLS, "send it").plan


def test_an_edited_answer_to_a_change_counts() -> None:
    chat = play(RUTA, *DUMBBELLS, "pain ceiling")
    chat.send(Said(NOW, "2", None, 7))
    chat.send(Corrected(NOW, "1", 7))
    chat.send(Said(NOW, "send it"))
    assert chat.plan.pain_ceiling == 1


def test_other_loads_typed_over_the_old_ones_drop_the_changes_that_hung_on_them() -> None:
    chat = play(RUTA, "one dumbbell")
    chat.send(Said(NOW, "4, 6, 8 kg", None, 7))
    for text in ("8 kg", "none", "load", "6"):
        chat.send(Said(NOW, text))
    chat.send(Corrected(NOW, "10, 12 kg", 7))
    assert chat.asked.startswith("start:goblet_squat")
    for text in ("10", "send it"):
        chat.send(Said(NOW, text))
    assert str(chat.plan.exercises[0].load) == "10 kg"


def test_no_sets_to_failure_come_in_by_a_change_where_the_clearance_forbids_them() -> None:
    chat = play(replace(RUTA, no_failure=True), *DUMBBELLS, "sets", "curl 6 kg")
    assert [one.value for one in chat.says[-1].choices] == ["fixed"]


def test_the_days_typed_first_are_kept_where_a_change_of_days_is_left() -> None:
    chat = play(RUTA, *DUMBBELLS, "days")
    chat.send(WentBack(NOW))
    assert "Monday and Thursday at 19:00" in chat.says[-1].text


MOST_FOR_A_CHANGE = 3  # part, movement, value


@pytest.mark.parametrize("template", sorted(TEMPLATES))
def test_any_part_of_any_template_is_changed_in_three_taps(template: str) -> None:
    chat = play(RUTA, template)
    while chat.asked != "confirm":
        chat.send(Said(NOW, chat.says[-1].choices[0].value, chat.says[-1].asks))
    for part in chat.says[-1].choices[1:-1]:
        taps = 1
        chat.send(Said(NOW, part.value, chat.says[-1].asks))
        while chat.asked != "confirm":
            options = chat.says[-1].choices
            chat.send(Said(NOW, options[-1].value if options else "10", chat.says[-1].asks))
            taps += 1
        assert taps <= MOST_FOR_A_CHANGE
    chat.send(Said(NOW, "send"))
    assert chat.state is None
    assert chat.plan.exercises


def test_the_loads_owned_and_the_side_are_changed_from_the_summary_too() -> None:
    chat = play(
        RUTA,
        "weaker_side",
        "4, 6 kg",
        "6",
        "left",
        "none",
        "loads owned",
        "3, 5, 7 kg",
        "weaker side",
        "right",
    )
    chat.send(Said(NOW, "send it"))
    assert (chat.plan.exercises[0].doing, chat.plan.exercises[0].sides) == ("5 kg", (Side.RIGHT, Side.LEFT))


@pytest.mark.parametrize(
    ("said", "asked"),
    [
        ("change the load", "Which movement?"),
        ("other movement", "Which movement?"),
        ("the tempo please", None),  # not read: nothing is guessed
        ("another exercise", "Which movement?"),
        ("equipment", "Which loads does Ruta own?"),
        ("pain", "Pain up to what is fine"),
        ("weaker side", None),  # this plan has no one-sided work
    ],
)
def test_a_part_may_be_typed_in_plain_words(said: str, asked: str | None) -> None:
    chat = play(RUTA, *DUMBBELLS, said)
    assert chat.says[-1].text.startswith(asked) if asked else chat.asked == "confirm"


def test_days_typed_at_the_summary_are_the_change() -> None:
    chat = play(RUTA, *DUMBBELLS, "tue and fri 8pm")
    assert "Tuesday and Friday at 20:00" in chat.says[-1].text
    chat.send(WentBack(NOW))
    assert "Monday and Thursday at 19:00" in chat.says[-1].text
    chat.send(Said(NOW, "every day 7pm"))
    assert chat.asked == "over"


def test_days_with_two_readings_are_asked_back_at_the_summary() -> None:
    chat = play(RUTA, *DUMBBELLS, "from 3/4 mon 7pm")
    assert chat.asked.startswith("change_value:0")
    chat.send(Said(NOW, chat.says[-1].choices[0].value))
    assert chat.asked == "confirm"


def test_a_coach_on_a_twelve_hour_clock_is_asked_which_seven() -> None:
    american = replace(RUTA, clock_face="12", date_order="mm/dd")
    chat = play(american, "travel", "mon and thu 7")
    assert "7:00 am" in chat.labels[0]
    assert "7:00 pm" in chat.labels[1]
    chat.send(Said(NOW, "2"))
    assert "Monday and Thursday at 7:00 pm" in chat.says[-1].text
    chat.send(Said(NOW, "mon and thu 6:30 pm from 3/4"))
    assert "March 4, 2026" in chat.says[-1].text
    for text in ("days", "mon and thu 8"):
        chat.send(Said(NOW, text))
    assert "8:00 pm" in chat.labels[1]


def test_the_summary_keeps_no_line_that_a_later_change_made_untrue() -> None:
    chat = play(
        RUTA,
        "dumbbells",
        "4, 6, 8 kg",
        "8 kg",
        "4 kg",
        "mon and thu 7pm",
        "mon and fri 7pm",
        "tue and fri 7pm",
    )
    assert chat.says[-1].text.count("Days: ") == 1
    assert "Days: Every Tuesday and Friday" in chat.says[-1].text
    for text in (
        "sets",
        "Goblet squat 8 kg",
        "fixed",
        "sets",
        "Goblet squat 8 kg",
        "open",
        "sets",
        "Curl 4 kg",
        "fixed",
    ):
        chat.send(Said(NOW, text))
    assert "goblet squat: fixed" not in chat.says[-1].text
    assert "curl: fixed" in chat.says[-1].text


def test_a_movement_with_a_load_comes_into_a_plan_without_equipment_before_it_goes_out() -> None:
    chat = play(RUTA, "Travel: push-up, chair squat", "none", "A movement with a load", "Add one", "Curl")
    assert chat.asked.startswith("change_loads:0")
    chat.send(Said(NOW, "4, 6 kg"))
    chat.send(WentBack(NOW))
    assert chat.asked.startswith("change_loads:0")
    for said in ("4, 8 kg", "8", "send it"):
        chat.send(Said(NOW, said))
    assert str(chat.plan.exercises[2].load) == "8 kg"


def test_a_part_named_instead_of_the_loads_leaves_that_movement_out() -> None:
    chat = play(RUTA, "Travel: push-up, chair squat", "none", "A movement with a load", "Add one", "Curl")
    for event in (WentBack(NOW), WentBack(NOW), WentBack(NOW)):
        chat.send(event)
    assert chat.asked == "confirm"
    chat.send(Said(NOW, "send it"))
    assert [one.movement for one in chat.plan.exercises] == ["push_up", "chair_squat"]
