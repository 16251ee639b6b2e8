"""A count corrected when the session is over: the set changes, and the client hears what that changes."""

from datetime import timedelta

import pytest

from core.facts import LoadMoved, SetDone
from core.plans import Side
from core.store import facts
from tests.bot.safety.test_hurt_quietly import finish
from tests.practice import CLIENT, Practice


def ended(practice: Practice) -> None:
    """A session with 31 and 16, and all questions after it answered."""
    practice.in_a_set()
    finish(practice)
    for _ in range(8):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        if not labels or "Start a session" in labels or "tomorrow morning" in practice.newest(CLIENT).text:
            return
        practice.taps(CLIENT, "No" if "No" in labels else labels[0])


@pytest.mark.parametrize(
    ("text", "sets"),
    [
        ("set 1 was 30", {1: 30, 2: 16}),
        ("set 1 was 30 not 31", {1: 30, 2: 16}),
        ("set 2 was 12", {1: 31, 2: 12}),
        ("no, 12", {1: 31, 2: 12}),
        ("sorry set 2: 14", {1: 31, 2: 14}),
    ],
)
def test_a_typed_correction_after_the_session_changes_the_set(
    practice: Practice, text: str, sets: dict[int, int]
) -> None:
    ended(practice)
    practice.types(CLIENT, text)
    assert practice.sets() == sets
    said = practice.newest(CLIENT).text
    assert said.startswith("Goblet squat, set ")
    assert "next" in said.splitlines()[-1].lower()


def test_a_correction_that_changes_the_next_load_says_so(practice: Practice) -> None:
    ended(practice)
    practice.types(CLIENT, "set 1 was 60")
    moved = facts.latest(practice.stage.engine.store, LoadMoved, practice.client)
    assert moved is not None
    assert moved.use == "12 kg"
    assert "next time, goblet squat: 12 kg" in practice.newest(CLIENT).text
    practice.types(CLIENT, "no, set 1 was 31")
    assert "next time, goblet squat: 10 kg" in practice.newest(CLIENT).text
    practice.types(CLIENT, "set 1 was 30")
    assert "The next load stays as it was." in practice.newest(CLIENT).text


@pytest.mark.parametrize("text", ["set 5 was 12"])
def test_a_set_that_was_not_done_is_not_invented(practice: Practice, text: str) -> None:
    ended(practice)
    practice.types(CLIENT, text)
    assert practice.sets() == {1: 31, 2: 16}
    assert "no set 5" in practice.newest(CLIENT).text


@pytest.mark.parametrize(
    "text", ["no", "hello", "sorry, thursday at 7 instead", "no more than 3 days please"]
)
def test_other_words_correct_nothing(practice: Practice, text: str) -> None:
    ended(practice)
    practice.types(CLIENT, text)
    assert practice.sets() == {1: 31, 2: 16}


def test_two_days_later_a_number_is_about_something_else(practice: Practice) -> None:
    ended(practice)
    practice.later(hours=49)
    practice.types(CLIENT, "set 1 was 30")
    assert practice.sets() == {1: 31, 2: 16}


def put_a_second_movement(practice: Practice) -> None:
    store = practice.stage.engine.store
    first = facts.current(store, SetDone, practice.client)[0]
    at = first.at + timedelta(minutes=9)
    for no, (side, reps) in enumerate([(Side.LEFT, 28), (Side.RIGHT, 31)]):
        one = SetDone(
            at + timedelta(seconds=no),
            first.session,
            2,
            "one_arm_row",
            1,
            side,
            "6 kg",
            reps,
            False,
            at,
            None,
            6,
            False,
        )
        with store.transaction():
            facts.put(store, practice.client, one, at)


def test_where_the_movement_is_unclear_it_is_asked(practice: Practice) -> None:
    ended(practice)
    put_a_second_movement(practice)
    practice.types(CLIENT, "set 1 was 30")
    assert practice.newest(CLIENT).text == "Of which movement?"
    practice.taps(CLIENT, "Goblet squat: set 1, 31")
    current = facts.current(practice.stage.engine.store, SetDone, practice.client)
    assert {(one.movement, one.set_no, one.side): one.reps for one in current} == {
        ("goblet_squat", 1, Side.BOTH): 30,
        ("goblet_squat", 2, Side.BOTH): 16,
        ("one_arm_row", 1, Side.LEFT): 28,
        ("one_arm_row", 1, Side.RIGHT): 31,
    }


def test_a_named_movement_is_not_asked_about_and_a_side_must_be_said(practice: Practice) -> None:
    ended(practice)
    put_a_second_movement(practice)
    practice.types(CLIENT, "one arm row set 1 was 30")
    assert "28 left 31 right" in practice.newest(CLIENT).text
    practice.types(CLIENT, "one arm row set 1 was 30 right")
    current = facts.current(practice.stage.engine.store, SetDone, practice.client, movement="one_arm_row")
    assert {one.side: one.reps for one in current} == {Side.LEFT: 28, Side.RIGHT: 30}


def test_the_side_may_be_named_before_the_set_and_is_said_back(practice: Practice) -> None:
    ended(practice)
    put_a_second_movement(practice)
    practice.types(CLIENT, "left one arm row set 1 was 27")
    assert "set 1, left: 27 now, not 28." in "\n".join(practice.heard(CLIENT))
    current = facts.current(practice.stage.engine.store, SetDone, practice.client, movement="one_arm_row")
    assert {one.side: one.reps for one in current} == {Side.LEFT: 27, Side.RIGHT: 31}
