"""Numbers in a session that are none, or two of which one is meant: asked again, and no alarm about a bug of ours."""

import pytest

from core.facts import CuffChecked
from core.store import duties, facts
from tests.practice import CLIENT, Practice


def up_to(practice: Practice, question: str) -> None:
    """Into the look at the bands, as far as this question."""
    practice.types(CLIENT, "start")
    wanted = ("No", "0", "Off in under 10 seconds", "Heard it", "Done", "Bands are on", "6")
    for _ in range(40):
        if question in practice.newest(CLIENT).text:
            return
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        practice.taps(CLIENT, next((label for label in wanted if label in labels), labels[0]))
    raise AssertionError(practice.newest(CLIENT).text)


@pytest.mark.parametrize("text", ["2²", "⁰⁴⁵", "⑦", "9" * 4000])
def test_a_figure_that_is_no_number_is_asked_again(practice: Practice, text: str) -> None:
    up_to(practice, "press")
    practice.types(CLIENT, text)
    store = practice.stage.engine.store
    assert store.rows("SELECT 1 FROM inbox WHERE failed IS NOT NULL") == []
    assert duties.open_alerts(store, practice.client) == []
    assert practice.newest(CLIENT).buttons[0][0][0] == "Under 2 seconds"


@pytest.mark.parametrize(
    ("text", "taken"),
    [("6-7", 7), ("7-6", 7), ("6 or 7", 7), ("7", 7), ("3-4 before, now 8-9", None), ("5-6-7", None)],
)
def test_of_two_tightnesses_the_higher_counts_and_of_more_none(
    practice: Practice, text: str, taken: int | None
) -> None:
    up_to(practice, "How tight")
    practice.types(CLIENT, text)
    if taken is None:
        assert "press" not in practice.newest(CLIENT).text
        return
    for label in ("Under 2 seconds", "Under 2 seconds", "Fine"):
        practice.taps(CLIENT, label)
    checked = facts.current(practice.stage.engine.store, CuffChecked, practice.client)
    assert {one.tightness for one in checked} == {taken}


def test_one_count_or_maybe_another_is_no_second_set(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 or maybe 13")
    assert practice.sets() == {}
    practice.types(CLIENT, "31")
    assert practice.sets() == {1: 31}
