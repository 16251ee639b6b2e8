"""What clients say is read as it must be: no red flag missed, hardly a stop for nothing.

The confusion matrix: python -m tests.conversations.stopwords
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.stopwords import Kind, Sense, read
from conversations.stopwords.kinds import NOTHING
from conversations.stopwords.lookalikes import REAL_WORDS
from conversations.stopwords.spelling import corrected, known
from tests.conversations.stopwords.table import STOPS, Line, lines, score

TABLE = lines()
HELD_OUT = lines(held_out=True)
RED = [line for line in TABLE if line.wanted in STOPS]
EVERYDAY = [line for line in TABLE if line.wanted is Kind.NONE and line.file == "everyday"]


@pytest.mark.parametrize("line", TABLE + HELD_OUT, ids=lambda line: f"{line.wanted}-{line.text}")
def test_each_phrase_gets_its_reading(line: Line) -> None:
    assert read(line.text).kind is line.wanted, read(line.text)


def test_the_table_is_large_varied_and_said_once() -> None:
    texts = [line.text for line in TABLE + HELD_OUT]
    assert len(TABLE) >= 300
    assert len(HELD_OUT) >= 80
    assert len(texts) == len(set(texts))
    assert {line.wanted for line in TABLE} == set(Kind)


def test_no_red_flag_is_missed_and_false_stops_stay_under_two_in_a_hundred() -> None:
    found = score(TABLE + HELD_OUT)
    assert found.missed == ()
    assert found.weaker == ()
    assert found.false_percent <= 2


@given(st.sampled_from(RED), st.sampled_from(EVERYDAY), st.sampled_from([". ", "! ", "\n", " but "]))
def test_no_small_talk_before_or_after_hides_a_red_flag(red: Line, talk: Line, between: str) -> None:
    assert read(f"{talk.text}{between}{red.text}").kind.rank >= red.wanted.rank
    assert read(f"{red.text}. {talk.text}").kind.rank >= red.wanted.rank


@given(
    st.sampled_from(TABLE), st.sampled_from([str.upper, str.title, str.swapcase, lambda text: f"  {text}  "])
)
def test_capitals_and_spaces_change_nothing(line: Line, change: object) -> None:
    assert callable(change)
    assert read(change(line.text)).kind is line.wanted


SLIPS = ["tingling", "tingles", "numbness", "dizzy", "headache", "swollen", "nauseous", "breathless"]


@pytest.mark.parametrize("word", SLIPS)
def test_one_letter_dropped_doubled_or_swapped_is_still_read(word: str) -> None:
    for at in range(len(word)):
        dropped, doubled = word[:at] + word[at + 1 :], word[: at + 1] + word[at:]
        swapped = word[:at] + word[at : at + 2][::-1] + word[at + 2 :]
        for slip in {dropped, doubled, swapped} - REAL_WORDS:
            assert read(f"my {slip}").kind is read(f"my {word}").kind is not Kind.NONE, slip


@given(st.text(max_size=300))
def test_any_text_has_a_reading(text: str) -> None:
    assert isinstance(read(text).kind, Kind)


@given(st.text(alphabet="!.?, \n*…-", max_size=8), st.text(alphabet="!.?, \n*…-", max_size=8))
def test_stop_alone_always_stops_whatever_marks_stand_around_it(before: str, after: str) -> None:
    assert read(f"{before}stop{after}").kind is Kind.STOP


@given(st.sampled_from(sorted(REAL_WORDS)))
def test_a_real_word_is_never_mended_into_one_that_matters(word: str) -> None:
    assert corrected(word) == word
    assert word not in known()


@pytest.mark.parametrize(
    "word", ["painting", "numbers", "stopwatch", "coldplay", "stopper", "hurtling", "whitewash"]
)
def test_a_part_of_a_word_is_not_the_word(word: str) -> None:
    assert read(f"my {word} today") == NOTHING


def test_what_was_denied_or_over_is_still_told() -> None:
    heard = read("the tingling is gone, not numb").heard
    assert [(one.kind, one.words, one.sense) for one in heard] == [
        (Kind.NERVE, "tingling", Sense.OVER),
        (Kind.NERVE, "numb", Sense.DENIED),
    ]


def test_the_words_that_decided_are_told() -> None:
    assert read("31 done, fingres tingle and my hand is blue").words == ("tingle",)
    assert read("31").words == ()


def test_the_strictest_of_several_wins() -> None:
    assert read("stop, it hurts, my hand is numb and my chest hurts").kind is Kind.EMERGENCY
    assert read("stop, it hurts").kind is Kind.STOP


@pytest.mark.parametrize(
    ("score", "kind"), [(0, Kind.NONE), (3, Kind.NONE), (4, Kind.HURTS), (10, Kind.HURTS)]
)
def test_a_pain_rating_up_to_three_is_an_answer(score: int, kind: Kind) -> None:
    assert read(f"pain {score}").kind is kind
    assert read(f"{score}/10 pain").kind is kind
