""" "Delete me", as a played script."""

from datetime import UTC, datetime, timedelta

import pytest

from conversations.client.leaving import DIALOGUE, Brief
from conversations.protocol import Cancelled, Do, Opened, Said, Turn, WentBack, Woke
from conversations.words import leaving as words

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)


def played(*lines: str, years: int = 0) -> list[Turn[object]]:
    """The turns of a talk in which the client says these lines."""
    turns = [DIALOGUE.advance(None, Opened(NOW, Brief(years, "2036-03-02" if years else "")), NOW)]
    for line in lines:
        event = {"back": WentBack(NOW), "cancel": Cancelled(NOW)}.get(line, Said(NOW, line))
        turns.append(DIALOGUE.advance(turns[-1].state, event, NOW))
    return turns


def last_words(turns: list[Turn[object]]) -> str:
    return turns[-1].replies[-1].text


def test_yes_and_then_the_word_delete_erases() -> None:
    turns = played("yes", "delete")
    assert last_words(turns[:2]) == words.SURE
    assert turns[-1].effects == (Do("leave"),)
    assert turns[-1].state is None


@pytest.mark.parametrize("word", ["Delete", "DELETE", " delete. "])
def test_the_word_may_be_written_in_any_case(word: str) -> None:
    assert played("yes", word)[-1].effects == (Do("leave"),)


@pytest.mark.parametrize(
    "lines", [("no",), ("yes", "no"), ("yes", "No, keep it"), ("cancel",), ("yes", "cancel")]
)
def test_a_no_at_any_time_keeps_everything(lines: tuple[str, ...]) -> None:
    turns = played(*lines)
    assert turns[-1].state is None
    assert turns[-1].effects == ()
    assert last_words(turns) == words.NOTHING_DELETED


@pytest.mark.parametrize("line", ["yes", "y", "ok", "delete it all?", "deleted", "31"])
def test_a_second_yes_is_not_enough(line: str) -> None:
    turns = played("yes", line)
    assert turns[-1].effects == ()
    assert turns[-1].state is not None
    assert last_words(turns) == words.SURE


def test_going_back_asks_the_first_question_again() -> None:
    assert "Delete everything" in last_words(played("yes", "back"))


def test_silence_keeps_everything() -> None:
    opened = played()[-1]
    later = NOW + timedelta(hours=12)
    turn = DIALOGUE.advance(opened.state, Woke(later), later)
    assert (turn.state, turn.effects) == (None, ())


def test_without_a_duty_to_keep_nothing_is_kept_back() -> None:
    assert words.NOTHING_KEPT in last_words(played())


def test_what_the_practice_must_keep_is_said_with_years_and_date() -> None:
    text = last_words(played(years=10))
    assert "10 years" in text
    assert "2036-03-02" in text
