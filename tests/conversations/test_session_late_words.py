"""Words that come when something else is asked: a count during the look at the bands, "off" in a set."""

import pytest

from conversations.session.state import Brief
from conversations.words import session as words
from tests.conversations.test_session import SQUAT, Played, played


def looks_again() -> Played:
    """Set 1 done, no count, and the look at the bands that the first sessions have."""
    p = Played(Brief("1-1", 2, (SQUAT,))).fits().types("done", 90).waits()
    assert p.heard.endswith(words.TIGHTNESS)
    return p


def test_a_count_that_comes_only_while_the_bands_are_looked_at_is_that_sets_count() -> None:
    p = looks_again().types("31", 5)
    assert p.sets() == {1: 31}
    assert p.heard.endswith(words.TIGHTNESS)
    assert p.types("6").heard.startswith("Left leg")


def test_a_rating_is_still_a_rating_and_a_second_count_no_third_one() -> None:
    p = looks_again().types("7", 5)
    assert p.sets() == {}
    assert p.heard.startswith("Left leg")
    assert looks_again().types("31", 5).types("12", 5).sets() == {1: 31}


@pytest.mark.parametrize("text", ["off", "Off!", "all off now"])
def test_off_alone_in_a_set_is_about_the_bands(text: str) -> None:
    p = played().fits().types(text, 30)
    assert p.heard == words.OFF_ALREADY


def late_in_set_2() -> Played:
    """Set 1 is done without a count, and its count comes just after Go, said "28" once."""
    return played().fits().types("done", 90).waits().types("28", 7)


@pytest.mark.parametrize("after_s", [1, 5])
def test_a_late_count_sent_twice_does_not_end_the_set_under_way(after_s: float) -> None:
    p = late_in_set_2().types("28", after_s)
    assert p.heard == words.ALREADY.format(reps=28)
    assert p.sets() == {1: 28}


@pytest.mark.parametrize(("text", "after_s"), [("28", 6), ("12", 1)])
def test_a_later_or_another_count_is_the_one_of_the_set_under_way(text: str, after_s: float) -> None:
    assert late_in_set_2().types(text, after_s).sets() == {1: 28, 2: int(text)}
