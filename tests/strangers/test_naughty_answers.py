"""A sample of strange strings as the answer to every question of every dialogue; the bench has them all."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.engine.updates import sound
from conversations.answers import Unclear, decimal_number, seconds, whole_number, yes_no
from conversations.catalogue import CATALOGUE
from conversations.day_spans import read_texts
from conversations.equipment.loads import read_owned
from tests.conversations.every_question import Question
from tests.conversations.stored_states import stored_questions
from tests.conversations.test_every_dialogue import START
from tests.strangers.naughty import HERE, MEANT, STRINGS, is_fair, made, wrong

A_SAMPLE = 151  # every so many-th string, another offset for each question


def test_both_lists_are_there_in_full() -> None:
    blns, own = (json.loads((HERE / f"{name}.json").read_text()) for name in ("blns", "own"))
    assert len(blns) == 485
    assert len(own) >= 200
    assert len(STRINGS) > 700


@pytest.mark.parametrize("dialogue", sorted(CATALOGUE))
def test_no_strange_string_becomes_a_number_a_yes_or_a_date(dialogue: str) -> None:
    asked = stored_questions(CATALOGUE[dialogue])
    assert asked
    for place, question in enumerate(asked, start=len(dialogue)):
        for text in STRINGS[place % A_SAMPLE :: A_SAMPLE]:
            assert wrong(question, text) == [], (question.step, text)


PIECES = "no|not|yes|31|0|-1|½|1e9|left|right|set 1|kg|lb|cm|tomorrow|mon|3/4|at 7|every|until|can't|done|lost|,|:|."
ANY = st.lists(st.sampled_from(PIECES.split("|")) | st.text(max_size=3), max_size=6).map(" ".join) | st.text()


@pytest.mark.parametrize("dialogue", sorted(CATALOGUE))
def test_whatever_is_typed_to_any_question_or_as_a_reply_to_it_gets_a_turn(dialogue: str) -> None:
    asked = stored_questions(CATALOGUE[dialogue])

    @settings(max_examples=settings().max_examples // 4)
    @given(question=st.sampled_from(asked), text=ANY)
    def typed(question: Question, text: str) -> None:
        made(question, sound(text))
        made(question, sound(text), question.asks)

    typed()


def asking(step: str) -> Question:
    """A question of the screening."""
    return next(one for one in stored_questions(CATALOGUE["screening"]) if one.step.startswith(step))


def test_this_check_can_fail() -> None:
    age = asking("age")
    assert made(age, "34") != []
    assert is_fair(age, "34")
    assert not is_fair(age, "thirty-one-two")
    assert not is_fair(asking("any_signs"), "ja")
    assert set(MEANT) <= set(STRINGS)


@pytest.mark.parametrize(
    "text", [".5", ",5", ".5.", "I2", "i2", "l2", "\u202e13", "3\u03361\u0336", "3\u03381"]
)
def test_what_may_be_read_in_two_ways_is_asked_again(text: str) -> None:
    with pytest.raises(Unclear):
        decimal_number(text, 0, 100)
    with pytest.raises(Unclear):
        whole_number(text, 0, 100)
    with pytest.raises(Unclear):
        seconds(text, 100)


@pytest.mark.parametrize(
    ("text", "value"), [("...5", 5), ("0.5", 0.5), ("5.", 5), ("5!", 5), ("31\u200b", 31)]
)
def test_what_reads_in_one_way_is_taken(text: str, value: float) -> None:
    assert float(decimal_number(text, 0, 100)) == value


@pytest.mark.parametrize("text", ["½", "12½ kg", ".5, 1", "1, 2, ½"])
def test_a_fraction_in_a_list_of_loads_is_asked_again(text: str) -> None:
    with pytest.raises(Unclear):
        read_owned(text)


@pytest.mark.parametrize("text", ["", ".", "no yes", "A:", "=1+1", ",12", "\u200b", "now then"])
def test_without_a_day_named_no_days_are_read(text: str) -> None:
    for hour in (0, 9, 12, 18, 23):
        assert read_texts(text, START.replace(hour=hour, minute=30), "Europe/Lisbon") == ()


@pytest.mark.parametrize("text", ["tomorrow", "friday", "saturday", "two weeks", "12 march", "until sunday"])
def test_with_a_day_named_days_are_read(text: str) -> None:
    for hour in (0, 9, 12, 18, 23):
        assert len(read_texts(text, START.replace(hour=hour, minute=30), "Europe/Lisbon")) == 1


@pytest.mark.parametrize("text", ["y\u0338es\u0338", "n\u0336o\u0336"])
def test_what_is_crossed_out_was_taken_back(text: str) -> None:
    with pytest.raises(Unclear):
        yes_no(text)
