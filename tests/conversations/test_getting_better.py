"""Words to "How is it now?", "Still numb?" and "Is something wrong?": good is only what says so and nothing else."""

from contextlib import suppress
from datetime import UTC, datetime

import pytest

from conversations.answers import Unclear, Why
from conversations.protocol import Alert, Opened, Said
from conversations.training import wrong_or_not
from conversations.training.getting_better import BETTER, how_is_it
from conversations.training.still_numb import DIALOGUE, Brief
from conversations.words import after as words

NOW = datetime(2026, 3, 2, 18, 40, tzinfo=UTC)
IS_BETTER = (
    "better",
    "Much better, thanks!",
    "a bit better",
    "almost gone",
    "it's gone now",
    "gone",
    "has passed",
    "it went away",
    "it's over",
    "its all over now",
    "fine",
    "ok",
    "All good \U0001f44d",
    "no longer numb, all good",
    "the numbness is gone",
    "the pain in my leg is gone",
    "pins and needles are gone",
    "the tingling feeling is gone",
    "feeling back to normal",
    "my foot feels normal again",
    "I\u2019m fine",
    "gone after 2 minutes",
    "it eased",
)
A_DOUBT = (
    "all over my leg now",
    "I feel it all over",
    "fine needles all over",
    "over me",
    "over 10 minutes now",
    "it moved over to the other foot",
    "it's going over to my hand",
    "it passed up my leg",
    "it has gone up",
    "gone to sleep",
    "it is well above the knee",
    "well I can't move it",
    "I can't feel it well",
    "okay it spread to my hand",
    "bands off now, all fine except my foot",
    "ok but weird",
    "ok not ok really",
    "fine so far but dead",
    "my leg feels normal size but grey",
    "feeling gone",
    "all feeling is gone",
    "strength is gone",
    "sensation gone",
    "colour gone",
    "my leg is gone",
    "good question",
    "well done",
    "I'm good at ignoring it",
    "<i onwheel=alert(1)> Scroll over me </i>",
)


ALL_FINE = ("I'm fine", "all good", "no I'm fine", "everything's fine, just a question", "fine thanks")
NOT_ALL = (
    "everything is fine except my foot",
    "fine, but it's spreading",
    "feel good but strange",
    "good thing you ask, I can\u2019t see properly",
    "I'm fine it's just my vision",
    "all ok just a bit out of it",
)


@pytest.mark.parametrize("text", ALL_FINE)
def test_who_is_fine_and_says_no_more_is_fine(text: str) -> None:
    assert wrong_or_not.answer(text, "Otto") == "no"


@pytest.mark.parametrize("text", NOT_ALL)
def test_who_is_fine_but_for_something_is_asked_again(text: str) -> None:
    with pytest.raises(Unclear):
        wrong_or_not.answer(text, "Otto")


@pytest.mark.parametrize("text", IS_BETTER)
def test_what_says_that_it_is_better_is_taken(text: str) -> None:
    assert how_is_it(text) == BETTER


@pytest.mark.parametrize("text", A_DOUBT)
def test_a_word_that_leaves_a_doubt_is_not_better(text: str) -> None:
    """ "All over my leg" was taken for "it is over", and "well, I can't move it" for "it is well"."""
    with suppress(Unclear):
        assert how_is_it(text) != BETTER


@pytest.mark.parametrize("text", A_DOUBT)
def test_nor_does_it_say_that_nothing_is_numb_any_more(text: str) -> None:
    opened = DIALOGUE.advance(None, Opened(NOW, Brief("7-1", "112")), NOW)
    turn = DIALOGUE.advance(opened.state, Said(NOW, text), NOW)
    assert turn.state is not None or any(isinstance(effect, Alert) for effect in turn.effects)
    assert all(say.text != words.NOT_NUMB for say in turn.replies)


@pytest.mark.parametrize(
    "text",
    [
        "no just tired",
        "No, it's just hard work",
        "no, only a bit shaky",
        "no my legs are just tired and shaky",
        "no they're shaking that's all",
    ],
)
def test_no_and_only_tired_is_a_no(text: str) -> None:
    assert wrong_or_not.answer(text, "") == "no"


@pytest.mark.parametrize("text", ["no just weak", "just tired", "no just tired of it"])
def test_anything_else_is_asked_again_about_the_two_buttons(text: str) -> None:
    with pytest.raises(Unclear) as problem:
        wrong_or_not.answer(text, "")
    assert problem.value.reason is Why.MERE_OK


@pytest.mark.parametrize(
    "text", ["no just dizzy", "no but my foot is odd", "no just tired but my foot is odd"]
)
def test_a_no_with_a_sign_of_harm_is_no_no(text: str) -> None:
    assert wrong_or_not.answer(text, "") == "yes"
