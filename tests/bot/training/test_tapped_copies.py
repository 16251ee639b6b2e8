"""A question that was put twice is one question: a tap under either copy answers it, the next tap is noted already."""

from collections.abc import Iterator

import pytest

from bot.local.messages import ChatMessage
from conversations.words import common
from conversations.words import engine as words
from core.store import threads
from tests.practice import CLIENT, Practice


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


def tap(practice: Practice, message: ChatMessage, label: str) -> None:
    practice.stage.phones[CLIENT].taps(message.id, label)
    practice.settle()


@pytest.fixture
def copies(practice: Practice) -> tuple[ChatMessage, ChatMessage]:
    """The first question before a session, and the same once more."""
    practice.types(CLIENT, "start")
    first = practice.newest(CLIENT)
    practice.types(CLIENT, "12")
    again = practice.newest(CLIENT)
    assert first.text == again.text
    assert first.id != again.id
    return first, again


def test_a_tap_under_the_first_copy_is_the_answer(
    practice: Practice, copies: tuple[ChatMessage, ChatMessage]
) -> None:
    first, _ = copies
    tap(practice, first, "No")
    assert "Already noted." not in practice.heard(CLIENT)
    assert practice.newest(CLIENT).text != first.text


def test_after_the_answer_a_tap_under_the_other_copy_changes_nothing(
    practice: Practice, copies: tuple[ChatMessage, ChatMessage]
) -> None:
    first, again = copies
    tap(practice, again, "No")
    following = practice.newest(CLIENT)
    tap(practice, first, "No")
    assert practice.newest(CLIENT).text == "Already noted."
    practice.taps(CLIENT, "No")
    assert following.text not in practice.heard(CLIENT)[-1]


def test_better_under_the_first_how_is_it_now_is_heard(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    asked = practice.newest(CLIENT)
    assert "How is it now?" in asked.text
    practice.types(CLIENT, "bands are off")
    tap(practice, asked, "Better")
    assert "Already noted." not in practice.heard(CLIENT)
    practice.later(minutes=5)
    assert not [text for text in practice.heard(CLIENT) if "Still here when you are" in text]


def test_another_answer_under_a_question_that_is_answered_is_not_called_noted(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    first = practice.newest(CLIENT)
    tap(practice, first, "No")
    following = practice.newest(CLIENT)
    tap(practice, first, "Yes")
    assert practice.heard(CLIENT)[-2] == common.TOO_LATE
    assert practice.newest(CLIENT).text == following.text
    practice.types(CLIENT, "back")
    assert practice.newest(CLIENT).text == first.text


def test_a_button_of_a_talk_that_is_over_is_answered_and_not_obeyed(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    asked = practice.newest(CLIENT)
    practice.types(CLIENT, "cancel")
    store = practice.stage.engine.store
    before = len(practice.heard(CLIENT))
    for label in {label for row in asked.buttons for label, _ in row} - {"Stop"}:
        practice.stage.phones[CLIENT].taps(asked.id, label)
    practice.settle()
    assert set(practice.heard(CLIENT)[before:]) == {words.FINISHED}
    assert threads.floor(store, practice.client) is None
    assert store.rows("SELECT failed FROM inbox WHERE failed IS NOT NULL") == []
