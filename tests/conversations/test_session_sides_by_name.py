"""A count that names its side goes to that side, in whatever words and whenever it comes."""

import pytest

from conversations.session.state import Phase
from conversations.words import session as words
from core.facts import SetDone
from core.plans import Side
from tests.conversations.test_session import ROW, Played, played


def counted() -> Played:
    """Set 1 has both sides, each said by itself: left 15, right 13."""
    return played(ROW).fits().types("done", 90).types("15", 5).types("13", 4)


def stored(p: Played) -> dict[tuple[int, Side], int]:
    """Reps by set and side, the latest of each."""
    return {(one.set_no, one.side): one.reps for one in p.facts(SetDone)}  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    "text",
    ["no, left 16", "no, 16 left", "sorry, left 16", "left 16", "L16", "set 1 left 16", "set 1 was left 16"],
)
def test_the_side_said_first_is_changed_by_its_name(text: str) -> None:
    p = counted().types(text, 2)
    assert stored(p) == {(1, Side.LEFT): 16, (1, Side.RIGHT): 13}
    assert p.heard == words.CHANGED.format(n=1, reps="16 and 13")


@pytest.mark.parametrize("text", ["no, 16", "no, right 16", "right 16", "set 1 right 16"])
def test_the_side_said_last_is_changed_with_its_name_or_without(text: str) -> None:
    assert stored(counted().types(text, 2)) == {(1, Side.LEFT): 15, (1, Side.RIGHT): 16}


def test_both_sides_said_in_one_message_can_be_changed_one_by_one() -> None:
    p = played(ROW).fits().types("done", 90).types("15 left 13 right", 5).types("no, left 16", 2)
    assert stored(p) == {(1, Side.LEFT): 16, (1, Side.RIGHT): 13}


def test_a_correction_by_name_while_the_other_side_is_asked_for() -> None:
    p = played(ROW).fits().types("done", 90).types("15", 5)
    assert stored(p.types("no, left 16", 2)) == {(1, Side.LEFT): 16}
    assert stored(p.types("no, right 13", 2)) == {(1, Side.LEFT): 16, (1, Side.RIGHT): 13}


def test_the_second_side_said_in_a_set_under_way_is_not_taken_for_the_first() -> None:
    p = counted().waits().types("right 12", 60)
    assert stored(p) == {(1, Side.LEFT): 15, (1, Side.RIGHT): 13}
    assert words.REPS_FIRST_SIDE.format(rest=30, side="Left") in p.heard
    assert p.state is not None
    assert p.state.phase is Phase.REST


def test_the_first_side_said_in_a_set_under_way_is_its_count() -> None:
    p = counted().waits().types("left 12", 60)
    assert stored(p) == {(1, Side.LEFT): 15, (1, Side.RIGHT): 13, (2, Side.LEFT): 12}


def test_left_of_the_set_before_can_still_be_changed_in_the_set_after() -> None:
    p = counted().waits().types("no, left 16", 20)
    assert stored(p) == {(1, Side.LEFT): 16, (1, Side.RIGHT): 13}
    assert p.state is not None
    assert p.state.phase is Phase.SET
