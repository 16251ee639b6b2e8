"""Exercise bands as equipment: typed easiest first, never mixed up with the bands around a limb."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import Unclear, Why
from conversations.equipment.exercise_bands import bands_from_text, listed, read_bands, to_text
from conversations.protocol import Said, WentBack
from conversations.words.plan import exercise_text, plan_text
from core.cuffs.limbs import ALL
from core.plan_changes import with_movement
from core.plan_text import plan_to_text
from core.plans import Rung
from core.templates import TEMPLATES, build
from core.units import Load
from tests.conversations.test_planning import NOW, RACK, RUTA, play

BANDS = (Rung("yellow band"), Rung("red band"), Rung("black band"))


@pytest.mark.parametrize(
    "text",
    [
        "bands: yellow, red, black",
        "Bands yellow, red and black.",
        "elastic bands: yellow, red, black",
        "exercise bands, easiest first: yellow < red < black",
        "bands yellow red black",
        "bands - the yellow band, red band, black band",
        "yellow, red, black bands",
        "bands: yellow / red / black",
    ],
)
def test_bands_are_read_in_the_order_told(text: str) -> None:
    assert read_bands(text) == ("yellow band", "red band", "black band")


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("bands: light green, dark green", ("light green band", "dark green band")),
        ("band: red", ("red band",)),
        ("bands: level 1, level 2", ("level 1 band", "level 2 band")),
        ("bands: gelb, rot, weiß", ("gelb band", "rot band", "weiss band")),
    ],
)
def test_any_name_will_do(text: str, names: tuple[str, ...]) -> None:
    assert read_bands(text) == names


@pytest.mark.parametrize("text", ["4, 6, 8 kg", "2-20 by 2 kg", "bar 10 kg, plates 2x1.25", "", "as now"])
def test_loads_are_no_bands(text: str) -> None:
    assert read_bands(text) is None


@pytest.mark.parametrize(
    "text",
    ["bands: red, red", "bands: A, B", "bands: 1, 2", "bands: 5, 10", "bands: ,", "bands " + "x" * 99],
)
def test_bands_that_cannot_be_told_apart_are_asked_again(text: str) -> None:
    """A single letter names a restriction band."""
    with pytest.raises(Unclear) as problem:
        read_bands(text)
    assert problem.value.reason is Why.NOT_BANDS


@given(st.lists(st.from_regex(r"[a-z]{2,9}", fullmatch=True), min_size=1, max_size=10, unique=True))
def test_what_is_kept_is_read_back(names: list[str]) -> None:
    shown = [f"{name} band" for name in names if name not in ("band", "bands", "and", "then", "the")]
    if shown:
        assert [rung.name for rung in bands_from_text(to_text(shown))] == shown


@given(st.text(max_size=60))
def test_any_text_is_read_or_asked_again(text: str) -> None:
    for typed in (text, f"bands: {text}"):
        try:
            found = read_bands(typed)
        except Unclear:
            continue
        assert found is None or len(set(found)) == len(found) > 0


# --- in the plan builder -------------------------------------------------------------------------------------
def test_a_coach_plans_with_bands_in_six_answers() -> None:
    chat = play(RUTA, "arms", "bands: yellow, red, black", "red", "black band", "mon and thu 7pm", "send it")
    curl, press = chat.plan.exercises
    assert (curl.rung, press.rung) == ("red band", "black band")
    assert curl.rungs == press.rungs == BANDS
    assert (curl.load, curl.reachable) == (None, ())


def test_the_start_is_asked_by_band_and_no_maximum_is_offered() -> None:
    chat = play(replace(RUTA, may_test=True), "one dumbbell", "bands: yellow, red, black")
    assert chat.says[-1].text == "Start goblet squat with which exercise band?"
    assert chat.labels == ["yellow band", "red band", "black band"]
    for typed in ("max 40", "12 kg", "test", "green"):
        chat.send(Said(NOW, typed))
        assert chat.asked == "start:goblet_squat"


def test_the_summary_tells_the_two_kinds_of_band_apart() -> None:
    text = play(RUTA, "one dumbbell", "bands: yellow, red", "red", "none").says[-1].text
    assert "Goblet squat, bands on the legs, against the red band: 25-40" in text
    assert "The red band is an exercise band: it is moved against, and never goes around the limb." in text


def test_going_back_asks_for_what_is_owned_again() -> None:
    chat = play(RUTA, "one dumbbell", "bands: yellow, red")
    chat.send(WentBack(NOW))
    assert chat.asked == "owned"
    chat.send(Said(NOW, "4, 6, 8 kg"))
    chat.send(Said(NOW, "6 kg"))
    assert chat.asked == "when"


def test_a_later_plan_offers_the_bands_as_now() -> None:
    plan = build(TEMPLATES["one_dumbbell"], BANDS, {"goblet_squat": "red band"})
    chat = play(replace(RUTA, current=plan_to_text(plan)), "one dumbbell")
    assert chat.labels[0] == "As now: yellow band to black band"
    chat.send(Said(NOW, "as now"))
    assert chat.labels == ["yellow band", "red band", "black band"]


def test_listed_bands_are_typed_bands() -> None:
    assert read_bands(listed(BANDS)) == tuple(rung.name for rung in BANDS)


def test_a_plan_with_loads_says_nothing_of_exercise_bands() -> None:
    plan = build(TEMPLATES["one_dumbbell"], RACK, {"goblet_squat": RACK[0]})
    assert "exercise band" not in plan_text(plan)
    assert "4 kg" in exercise_text(plan.exercises[0])


@pytest.mark.parametrize("start", ["green band", "red", RACK[0]])
def test_a_band_that_is_not_owned_starts_nothing(start: Load | str) -> None:
    with pytest.raises(ValueError, match=r"^start:"):
        build(TEMPLATES["one_dumbbell"], BANDS, {"goblet_squat": start})


def test_a_movement_that_comes_in_begins_with_the_easiest_band() -> None:
    plan = build(TEMPLATES["one_dumbbell"], BANDS, {"goblet_squat": "red band"})
    added = with_movement(plan, "curl", ALL).exercises[1]
    assert (added.rung, added.rungs) == ("yellow band", BANDS)
