"""Counts, decimals and lists as people type them."""

import sys
import unicodedata
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import (
    Count,
    Unclear,
    Why,
    count,
    decimal_number,
    several_numbers,
    whole_number,
)
from conversations.answers.lexing import DIGITS
from conversations.answers.numerals import TENS, UNITS
from tests.conversations.answers.table import outcome

EXACT = [
    ("31", 31),
    (" 31\n", 31),
    ("31!", 31),
    ("31.", 31),
    ("(31)", 31),
    ('"31"', 31),
    ("'31", 31),
    ("- 31", 31),
    ("31.0", 31),
    ("08", 8),
    ("31 reps", 31),
    ("31 clean reps", 31),
    ("I did 31", 31),
    ("got 31 this time, thanks", 31),
    ("no, 31", 31),
    ("sorry I mean 31", 31),
    ("31x", 31),
    ("x31", 31),
    ("31 💪", 31),
    ("31 👍", 31),
    ("3️⃣", 3),
    ("🔟", 10),
    ("none", 0),
    ("zero", 0),
    ("thirty one", 31),
    ("Thirty-One", 31),
    ("thirtyone", 31),
    ("fourty", 40),
    ("twelve", 12),
    ("a hundred", 100),
    ("one hundred and five", 105),
    ("two hundred", 200),
    ("１５", 15),
    ("٣١", 31),
    ("۳۱", 31),
    ("३१", 31),
    ("๓๑", 31),
    ("\u200e31\u200f", 31),
]
ROUGH = [
    "about 30",
    "30ish",
    "30-ish",
    "thirtyish",
    "~30",
    "≈30",
    "30?",
    "30 or so",
    "maybe 30",
    "I think 30",
]
REFUSED = [
    ("", Why.EMPTY),
    ("  ", Why.EMPTY),
    ("💪", Why.EMPTY),
    ("no", Why.EMPTY),
    ("NaN", Why.NOT_A_NUMBER),
    ("inf", Why.NOT_A_NUMBER),
    ("-inf", Why.NOT_A_NUMBER),
    ("1e3", Why.NOT_A_NUMBER),
    ("0x1F", Why.NOT_A_NUMBER),
    ("1_000", Why.NOT_A_NUMBER),
    ("²", Why.NOT_A_NUMBER),
    ("3²", Why.NOT_A_NUMBER),
    ("①", Why.NOT_A_NUMBER),
    ("❶", Why.NOT_A_NUMBER),
    ("Ⅻ", Why.NOT_A_NUMBER),
    ("𝟛𝟙", Why.NOT_A_NUMBER),
    ("𐒡", Why.NOT_A_NUMBER),
    ("卅", Why.NOT_A_NUMBER),
    ("hundred", Why.NOT_A_NUMBER),
    ("31 kg", Why.NOT_A_NUMBER),
    ("31%", Why.NOT_A_NUMBER),
    ("$31", Why.NOT_A_NUMBER),
    ("007", Why.NOT_A_NUMBER),
    ("99999999999999999999", Why.NOT_A_NUMBER),
    ("9" * 5000, Why.NOT_A_NUMBER),
    ("hurts", Why.NOT_A_NUMBER),
    ("31 hurts", Why.NOT_A_NUMBER),
    ("not 31", Why.NOT_A_NUMBER),
    ("not 31, 30", Why.NOT_A_NUMBER),
    ("/31", Why.NOT_A_NUMBER),
    ("-5", Why.TOO_LOW),
    ("−5", Why.TOO_LOW),
    ("201", Why.TOO_HIGH),
    ("31.5", Why.NOT_WHOLE),
    ("31,5", Why.SEVERAL),
    ("½", Why.SEVERAL),
    ("1,000", Why.SEVERAL),
    ("1 000", Why.SEVERAL),
    ("25-30", Why.SEVERAL),
    ("25–30", Why.SEVERAL),
    ("25 to 30", Why.SEVERAL),
    ("31 or 32", Why.SEVERAL),
    ("31 16 8", Why.SEVERAL),
    ("31:16", Why.SEVERAL),
    ("31/16", Why.SEVERAL),
    ("6/10", Why.SEVERAL),
    ("3x10", Why.SEVERAL),
    ("3 × 10", Why.SEVERAL),
    ("set 1 31", Why.SEVERAL),
    ("one two", Why.SEVERAL),
    ("30+", Why.OPEN_ENDED),
    (">30", Why.OPEN_ENDED),
    ("over 30", Why.OPEN_ENDED),
    ("at least 30", Why.OPEN_ENDED),
    ("+49 170 1234567", Why.OPEN_ENDED),
    ("lost count", Why.DOES_NOT_KNOW),
    ("I don't know", Why.DOES_NOT_KNOW),
    ("no idea", Why.DOES_NOT_KNOW),
]


@pytest.mark.parametrize(("text", "value"), EXACT)
def test_a_count_is_read_however_it_is_typed(text: str, value: int) -> None:
    assert outcome(count, text, 0, 200) == Count(value)


@pytest.mark.parametrize("text", ROUGH)
def test_an_unsure_count_is_taken_and_marked_rough(text: str) -> None:
    assert outcome(count, text, 0, 200) == Count(30, rough=True)


@pytest.mark.parametrize(("text", "why"), REFUSED)
def test_what_is_no_single_count_is_refused_by_name(text: str, why: Why) -> None:
    assert outcome(count, text, 0, 200) is why


@pytest.mark.parametrize(("text", "value"), [("5", 5), ("10", 10), ("4", Why.TOO_LOW), ("11", Why.TOO_HIGH)])
def test_both_bounds_belong_to_the_range(text: str, value: object) -> None:
    assert outcome(whole_number, text, 5, 10) == value


@pytest.mark.parametrize("text", ["6/10", "6 out of 10", "six out of ten", "6 of 10", "six/ten"])
def test_a_rating_may_name_its_scale(text: str) -> None:
    assert whole_number(text, 0, 10) == 6


@pytest.mark.parametrize("text", ["6 10", "6-10", "6/9", "6/10/10"])
def test_two_numbers_are_no_rating_unless_the_scale_is_named(text: str) -> None:
    assert outcome(whole_number, text, 0, 10) is Why.SEVERAL


def test_a_dialogue_may_allow_its_own_words_and_its_own_nothing() -> None:
    assert whole_number("2 left", 0, 10, also=("left",)) == 2
    assert whole_number("3 more", 0, 10, also=("more",)) == 3
    assert whole_number("No pain!", 0, 10, zero=("no pain",)) == 0
    assert outcome(whole_number, "2 left", 0, 10) is Why.NOT_A_NUMBER
    assert outcome(whole_number, "no pain", 1, 10, zero=("no pain",)) is Why.TOO_LOW


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12", "12"),
        ("12.5", "12.5"),
        ("12,5", "12.5"),
        ("12½", "12.5"),
        ("12 ½", "12.5"),
        ("12 1/2", "12.5"),
        ("½", "0.5"),
        ("3/4", "0.75"),
        ("two and a half", "2.5"),
        ("half", "0.5"),
        ("0.125", "0.125"),
        ("٢٫٥", "2.5"),
    ],
)
def test_a_decimal_is_read_with_comma_point_or_fraction(text: str, value: str) -> None:
    assert decimal_number(text, 0, 100) == Decimal(value)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("1,250", Why.NOT_A_NUMBER),  # one and a quarter, or one thousand and some
        ("1.2.3", Why.SEVERAL),
        ("28/31", Why.SEVERAL),
        ("1e2", Why.NOT_A_NUMBER),
        ("nan", Why.NOT_A_NUMBER),
        ("infinity", Why.NOT_A_NUMBER),
        ("12-13", Why.SEVERAL),
        ("-1", Why.TOO_LOW),
        ("100.1", Why.TOO_HIGH),
        ("⅓", Why.NOT_A_NUMBER),
    ],
)
def test_a_decimal_that_could_be_two_things_is_refused(text: str, why: Why) -> None:
    assert outcome(decimal_number, text, 0, 100) is why


@pytest.mark.parametrize(
    "text",
    [
        "31 16 8",
        "31, 16, 8",
        "31,16,8",
        "31/16/8",
        "31-16-8",
        "31;16;8",
        "31. 16. 8.",
        "31\n16\n8",
        "31 and 16 and 8",
        "31, then 16, then 8",
        "thirty one sixteen eight",
        "３１　１６　８",
    ],
)
def test_several_sets_in_one_message_are_taken_in_order(text: str) -> None:
    assert several_numbers(text) == (Count(31), Count(16), Count(8))


def test_one_about_makes_every_set_of_the_message_rough() -> None:
    assert several_numbers("31, about 16") == (Count(31, True), Count(16, True))


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("25-30", Why.SEVERAL),
        ("31 or 32", Why.SEVERAL),
        ("3x10", Why.SEVERAL),
        ("3 sets of 10", Why.SEVERAL),
        ("set 1 31 set 2 16", Why.SEVERAL),
        ("31.16.8", Why.NOT_WHOLE),
        ("31 16 hurts", Why.NOT_A_NUMBER),
        ("31 16 500", Why.TOO_HIGH),
        ("", Why.EMPTY),
    ],
)
def test_a_list_that_could_mean_something_else_is_refused(text: str, why: Why) -> None:
    assert outcome(several_numbers, text, 0, 200) is why


@given(st.integers(0, 200))
def test_every_count_reads_back_in_every_script_of_the_table(value: int) -> None:
    rows = {code - int(digit) for code, digit in DIGITS.items()}
    for zero in rows:
        assert whole_number("".join(chr(zero + int(digit)) for digit in str(value)), 0, 200) == value


def test_the_digit_table_agrees_with_unicode() -> None:
    assert DIGITS
    assert all(unicodedata.decimal(chr(code)) == int(digit) for code, digit in DIGITS.items())


def test_no_other_character_of_unicode_passes_for_a_number() -> None:
    known = {chr(code) for code in DIGITS} | set("0123456789🔟")
    other = [chr(code) for code in range(sys.maxunicode + 1) if unicodedata.category(chr(code))[0] == "N"]
    assert len(other) > 1000
    for sign in set(other) - known - set("½¼¾⅛"):
        assert isinstance(outcome(count, sign, 0, 200), Why), hex(ord(sign))


@given(st.sampled_from(sorted(TENS)), st.sampled_from(sorted(UNITS)))
def test_number_words_read_the_same_with_space_hyphen_or_nothing(tens: str, unit: str) -> None:
    wanted = TENS[tens] + UNITS[unit]
    assert {whole_number(f"{tens}{gap}{unit}", 0, 200) for gap in (" ", "-", "")} == {wanted}


@given(st.text(max_size=30))
def test_any_text_gives_a_count_within_bounds_or_an_unclear(text: str) -> None:
    result = outcome(count, text, 3, 40)
    assert isinstance(result, Why) or 3 <= result.value <= 40


@given(
    st.lists(st.integers(0, 200), min_size=1, max_size=5), st.sampled_from([" ", ", ", ",", "/", "; ", "\n"])
)
def test_a_list_reads_back_with_any_separator(values: list[int], gap: str) -> None:
    assert [found.value for found in several_numbers(gap.join(map(str, values)), 0, 200)] == values


@given(st.decimals(0, 200, places=2))
def test_comma_and_point_mean_the_same(value: Decimal) -> None:
    text = f"{value:f}"
    assert decimal_number(text, 0, 200) == decimal_number(text.replace(".", ","), 0, 200) == value


def test_the_refusal_carries_the_bounds_for_the_words() -> None:
    with pytest.raises(Unclear) as caught:
        whole_number("11", 0, 10)
    assert (caught.value.low, caught.value.high) == (0, 10)


@pytest.mark.parametrize(
    "text",
    ["31 or maybe 13", "31, maybe 13", "31 perhaps 13", "31 or about 13", "31 or, hm, 13", "31 probably 13"],
)
def test_two_numbers_of_which_one_is_meant_are_not_two_sets(text: str) -> None:
    with pytest.raises(Unclear):
        several_numbers(text, 0, 100)


@pytest.mark.parametrize("text", ["maybe 31, 13", "31, 13 maybe", "31, about 13", "probably 31 and 13"])
def test_doubt_about_both_makes_both_rough(text: str) -> None:
    assert several_numbers(text, 0, 100) == (Count(31, rough=True), Count(13, rough=True))
