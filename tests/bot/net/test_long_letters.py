"""Messages longer than the transport takes go out in pieces that a reader can follow."""

import pytest
import regex
from hypothesis import given
from hypothesis import strategies as st

from bot.engine.letters import LONGEST, LONGEST_CAPTION, split, units
from tests.practice import CLIENT, COACH, Practice

FAMILY = "👩‍👩‍👧‍👦"  # one sign of seven characters and eleven units
SIGNS = ["a", "é", "💪", "👍🏽", FAMILY, "🇵🇹", "1️⃣", "e\u0301", "नि"]
BLANK = [" ", "\n", "\n\n"]


def plain(text: str) -> str:
    return "".join(text.split())


@pytest.mark.parametrize("length", [0, 1, LONGEST - 1, LONGEST])
def test_what_fits_stays_whole(length: int) -> None:
    assert split("x" * length) == ["x" * length]
    assert split("💪" * (length // 2)) == ["💪" * (length // 2)]


@pytest.mark.parametrize("sign", SIGNS)
def test_one_sign_too_many_makes_two_pieces_and_no_sign_is_torn(sign: str) -> None:
    many = LONGEST // units(sign)
    pieces = split(sign * (many + 1))
    assert pieces == [sign * many, sign]


def test_a_word_is_not_cut_and_a_line_is_kept_where_it_can_be() -> None:
    words = " ".join(f"word{number}" for number in range(1200))
    pieces = split(words)
    assert len(pieces) == 3
    assert " ".join(pieces) == words
    lines = "\n".join("a line of forty characters, more or less" for _ in range(250))
    assert "\n".join(split(lines)) == lines


@given(st.lists(st.sampled_from(SIGNS + BLANK), max_size=60), st.integers(12, 40))
def test_pieces_fit_lose_nothing_and_tear_nothing(parts: list[str], longest: int) -> None:
    text = "".join(parts)
    pieces = split(text, longest)
    assert all(units(piece) <= longest for piece in pieces)
    assert plain("".join(pieces)) == plain(text)
    signs = regex.findall(r"\X", "".join(text.split()))
    assert regex.findall(r"\X", "".join("".join(piece.split()) for piece in pieces)) == signs
    assert sum(len(regex.findall(r"\X", plain(piece))) for piece in pieces) == len(signs)


@given(st.text(max_size=200))
def test_any_text_fits_after_splitting(text: str) -> None:
    pieces = split(text, 20)
    assert all(units(piece) <= 20 for piece in pieces)
    assert plain("".join(pieces)) == plain(text)


def test_a_long_word_of_the_client_reaches_the_coach_in_pieces(practice: Practice) -> None:
    practice.types(CLIENT, "coach " + FAMILY * 400)
    heard = practice.heard(COACH)
    assert len(heard) == 2
    assert "".join(heard).count(FAMILY) == 400


def test_words_under_a_picture_fit_under_it() -> None:
    assert [units(piece) <= LONGEST_CAPTION for piece in split("word " * 400, LONGEST_CAPTION)] == [
        True,
        True,
    ]
