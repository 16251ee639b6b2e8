"""What a client reads again while an alert is open: no more of bands that are off, nor of a silence that is over."""

import pytest

from conversations.words import safety
from core.safety.causes import NOW, Cause
from tests.practice import CLIENT, COACH, Practice


def test_bands_that_are_off_are_not_called_for_again(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.types(CLIENT, "menu")
    assert practice.newest(CLIENT).text.startswith("Bands off now. Move the fingers")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "Better")
    practice.types(CLIENT, "menu")
    assert practice.newest(CLIENT).text.startswith("Move the fingers or toes")
    assert "Your coach is being told" not in practice.newest(CLIENT).text
    assert "Your coach was told on Mon 18:00" in practice.newest(CLIENT).text


def test_bands_that_came_off_long_before_say_nothing_about_now(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "stop")
    practice.taps(CLIENT, "Bands are off")
    practice.later(hours=1, minutes=1)
    practice.types(CLIENT, "my foot is numb")
    practice.types(CLIENT, "menu")
    assert practice.newest(CLIENT).text.startswith("Bands off now.")


def test_whoever_writes_again_is_no_longer_asked_for_a_word(practice: Practice) -> None:
    practice.types(CLIENT, "help me")
    practice.later(minutes=11)
    assert "a word to me" in practice.newest(CLIENT).text
    practice.types(CLIENT, "sorry, was in the shower")
    assert not any("a word to me" in text for text in practice.heard(CLIENT)[-2:])
    practice.types(CLIENT, "no")
    practice.types(CLIENT, "menu")
    assert practice.newest(CLIENT).text.startswith(
        "I asked whether something is wrong and had no answer then."
    )


def test_the_coach_reads_in_the_next_repeat_that_all_is_well(practice: Practice) -> None:
    practice.types(CLIENT, "help me")
    practice.later(minutes=11)
    practice.types(CLIENT, "sorry, was in the shower")
    practice.taps(CLIENT, "No, all fine")
    practice.later(minutes=5)
    assert 'Since then: 18:11 "No, all fine"' in practice.newest(COACH).text


def test_the_gravest_is_told_again_though_something_milder_came_later(practice: Practice) -> None:
    practice.types(CLIENT, "my chest hurts")
    practice.types(CLIENT, "better")
    practice.types(CLIENT, "my hand is numb")
    practice.types(CLIENT, "better")
    practice.types(CLIENT, "menu")
    assert "Call your local emergency number now" in practice.newest(CLIENT).text


@pytest.mark.parametrize("cause", sorted(NOW))
def test_what_holds_since_speaks_of_no_bands_to_take_off_and_is_a_whole_sentence(cause: Cause) -> None:
    text = safety.told_since(cause, "112")
    assert "bands off" not in text.lower()
    assert "a word to me" not in text
    assert "are they off" not in text.lower()
    assert text[0].isupper()
    assert text.endswith((".", "?"))
