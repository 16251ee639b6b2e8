"""The program was away in the middle of a session: one message, bands first, and nothing that contradicts it."""

from datetime import timedelta

import pytest

from core.facts import BandsOff, SessionEnded
from core.store import facts
from tests.practice import CLIENT, Practice


def away(practice: Practice, minutes: float) -> list[str]:
    """What the client hears of a program that comes back."""
    said = len(practice.heard(CLIENT))
    clock = practice.stage.clock
    clock.skip_to(clock.now() + timedelta(minutes=minutes))
    practice.stage.engine.resume()
    practice.settle()
    return practice.heard(CLIENT)[said:]


@pytest.mark.parametrize("reps", ["", "31", "31 16"], ids=["in a set", "in the rest", "bands to come off"])
def test_after_twenty_minutes_there_is_one_message_and_it_is_about_the_bands(
    practice: Practice, reps: str
) -> None:
    practice.in_a_set()
    if reps:
        practice.types(CLIENT, reps)
    assert away(practice, 20) == ["I was away. If bands are still on, take them off now, and tap."]
    said = len(practice.heard(CLIENT))
    practice.taps(CLIENT, "Bands are off")
    heard = practice.heard(CLIENT)[said:]
    assert heard[0] == "Good. Bands are off."
    assert not [text for text in heard if "off now" in text]
    store = practice.stage.engine.store
    assert len(facts.current(store, BandsOff, practice.client)) == 1
    assert len(facts.current(store, SessionEnded, practice.client)) == 1


def test_after_a_minute_the_open_question_comes_with_the_words_about_the_bands(practice: Practice) -> None:
    practice.in_a_set()
    heard = away(practice, 1)
    assert len(heard) == 1
    assert heard[0].startswith("I was away for a moment. If your bands are on")
    assert "Set 1 of 2" in heard[0]
    practice.taps(CLIENT, "Set done")
    assert "how many clean reps" in practice.newest(CLIENT).text.lower()


def test_a_rest_that_ran_out_meanwhile_goes_on_by_itself(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31")
    heard = away(practice, 1)
    assert heard[0].startswith("I was away for a moment. If your bands are on")
    assert "bands" in heard[1]
    assert len(heard) <= 3
