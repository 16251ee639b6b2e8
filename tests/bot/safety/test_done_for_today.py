""" "I'm done for today" with bands on: off with them, as after any stop; without them it is no stop."""

import pytest

from conversations.stopwords.finished import says_finished
from core.facts import SessionEnded
from core.store import duties, facts
from tests.practice import CLIENT, Practice


@pytest.mark.parametrize(
    "text",
    [
        "im done for today",
        "I'm finished for today",
        "ok that's it for today",
        "no more today please",
        "no more sets tonight",
        "let's stop here",
        "I want to stop here",
        "that's all for today thanks",
    ],
)
def test_said_in_many_words(text: str) -> None:
    assert says_finished(text)


@pytest.mark.parametrize(
    "text", ["done", "that's it", "finished", "no more pain today", "done for today, my foot is numb"]
)
def test_a_set_that_is_done_and_anything_beside_it_are_something_else(text: str) -> None:
    assert not says_finished(text)


def test_in_a_set_the_bands_come_off_and_the_session_ends(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "im done for today")
    assert any(text.startswith("Bands off now. We stop here") for text in practice.heard(CLIENT)[-2:])
    practice.types(CLIENT, "off")
    store = practice.stage.engine.store
    assert [one.why for one in facts.current(store, SessionEnded, practice.client)] == ["said_stop"]


def test_with_no_band_on_it_stops_nothing(practice: Practice) -> None:
    practice.types(CLIENT, "im done for today")
    assert duties.open_alerts(practice.stage.engine.store, practice.client) == []
    assert not any("Bands off" in text for text in practice.heard(CLIENT))
