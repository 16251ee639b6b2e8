"""A count that was never told: said after the session lapsed, it is taken, asked about, and changes no other session."""

from datetime import timedelta

import pytest

from core.facts import SetDone
from core.plans import Side
from core.store import facts
from tests.practice import CLIENT, START, Practice

ONWARD = ("No", "0", "Off in under 10 seconds", "Heard it", "Done", "Bands are on")


def lapsed_without(practice: Practice, counts: tuple[str, ...]) -> None:
    """Two sets, told as far as `counts` go; bands off, and no word any more."""
    practice.in_a_set()
    for count in (*counts, *[None] * (2 - len(counts))):
        practice.taps(CLIENT, "Set done")
        if count is not None:
            practice.types(CLIENT, count)
        practice.later(seconds=31)
        for label in ("6", "Under 2 seconds", "Under 2 seconds", "Fine"):
            if any(label == one for row in practice.newest(CLIENT).buttons for one, _ in row):
                practice.taps(CLIENT, label)
    practice.taps(CLIENT, "Bands are off")
    practice.later(hours=2, minutes=1)


def test_the_lapse_says_which_set_has_no_count(practice: Practice) -> None:
    lapsed_without(practice, ("31",))
    first, second = practice.heard(CLIENT)[-3:-1]
    assert first.startswith("We leave it there for today.")
    assert second.startswith("Set 2 has no count yet.")


@pytest.mark.parametrize("counts", [(), ("31",)])
def test_a_named_set_is_taken(practice: Practice, counts: tuple[str, ...]) -> None:
    lapsed_without(practice, counts)
    practice.types(CLIENT, "set 2 was 14")
    assert practice.heard(CLIENT)[-2].startswith("Goblet squat, set 2: 14, noted.")
    assert practice.sets()[2] == 14
    (told,) = facts.current(practice.stage.engine.store, SetDone, practice.client, set_no=2)
    assert (told.tightness, told.loose, told.rough) == (6, False, False)
    assert practice.stage.clock.now() - told.done_at > timedelta(hours=2)
    practice.types(CLIENT, "set 2 was 15")
    assert practice.sets()[2] == 15


def test_a_number_alone_is_asked_about(practice: Practice) -> None:
    lapsed_without(practice, ("31",))
    practice.types(CLIENT, "14")
    assert practice.newest(CLIENT).text == "14: of which set? Tap, else just go on."
    assert practice.sets() == {1: 31}
    practice.taps(CLIENT, "Goblet squat: set 2 is 14")
    assert practice.sets() == {1: 31, 2: 14}
    assert "anything out of the ordinary" in practice.newest(CLIENT).text
    practice.types(CLIENT, "15")
    assert practice.heard(CLIENT)[-1] != "15: of which set? Tap, else just go on."


def test_a_set_that_the_plan_has_not_is_not_invented(practice: Practice) -> None:
    lapsed_without(practice, ("31",))
    practice.types(CLIENT, "set 3 was 14")
    assert practice.sets() == {1: 31}
    assert any("no set 3" in text for text in practice.heard(CLIENT)[-2:])


def test_no_set_is_counted_where_no_check_was_passed(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    while not practice.newest(CLIENT).text.startswith("How tight"):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        practice.taps(CLIENT, next(label for label in ONWARD if label in labels))
    assert practice.newest(CLIENT).text.startswith("How tight")
    practice.types(CLIENT, "stop")
    practice.taps(CLIENT, "Bands are off")
    practice.types(CLIENT, "set 1 was 28")
    assert practice.sets() == {}


def test_another_session_keeps_its_counts(practice: Practice) -> None:
    store, before = practice.stage.engine.store, START - timedelta(hours=30)
    done = SetDone(before, "s0", 1, "goblet_squat", 1, Side.BOTH, "10 kg", 31, False, before, None, 6, False)
    with store.transaction():
        facts.put(store, practice.client, done, before)
    lapsed_without(practice, ())
    practice.types(CLIENT, "set 1 was 25")
    rows = facts.current(store, SetDone, practice.client, set_no=1)
    assert sorted(one.reps for one in rows) == [25, 31]


def test_after_two_days_a_number_is_about_something_else(practice: Practice) -> None:
    lapsed_without(practice, ())
    practice.later(hours=49)
    practice.types(CLIENT, "set 2 was 14")
    assert practice.sets() == {}


def stopped_before_the_last_count(practice: Practice) -> None:
    """Set 1 has 31; set 2 is done, and its count is asked for when an emergency ends the session."""
    practice.in_a_set()
    practice.taps(CLIENT, "Set done")
    practice.types(CLIENT, "31")
    practice.later(seconds=31)
    for label in ("6", "Under 2 seconds", "Under 2 seconds", "Fine", "Set done"):
        practice.taps(CLIENT, label)
    practice.types(CLIENT, "chest pain")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "Better")


def test_a_correction_after_a_session_cut_short_changes_no_count_unasked(practice: Practice) -> None:
    stopped_before_the_last_count(practice)
    practice.types(CLIENT, "9")
    practice.types(CLIENT, "no, 10")
    assert practice.sets() == {1: 31}
    assert practice.newest(CLIENT).text == "10: of which set? Tap, else just go on."
    labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
    assert labels[:2] == ["Goblet squat: set 1 is 10", "Goblet squat: set 2 is 10"]
    practice.taps(CLIENT, "Goblet squat: set 2 is 10")
    assert practice.sets() == {1: 31, 2: 10}


def test_a_named_set_is_changed_at_once_also_after_a_session_cut_short(practice: Practice) -> None:
    stopped_before_the_last_count(practice)
    practice.types(CLIENT, "no, set 1 was 30")
    assert practice.sets() == {1: 30}
