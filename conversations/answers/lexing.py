"""From what a tired thumb types to plain tokens: numbers, words and marks.

Python's own `int` and `float` take "１５", "1_000", "NaN", "inf" and "1e3"; here each script and each sign
that counts is written down, and anything else stays visible as a word or a mark.
"""

import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal

LONGEST_TEXT = 200  # characters; a longer text is no answer to a question with a number
LONGEST_DIGITS = 7  # digits in a row; more is a phone number or a slip

# First code point of each decimal digit row (Unicode Standard, code charts, general category Nd).
DIGIT_ZEROS = {
    "arabic-indic": 0x0660,
    "extended arabic-indic": 0x06F0,
    "devanagari": 0x0966,
    "bengali": 0x09E6,
    "gurmukhi": 0x0A66,
    "gujarati": 0x0AE6,
    "tamil": 0x0BE6,
    "telugu": 0x0C66,
    "kannada": 0x0CE6,
    "malayalam": 0x0D66,
    "thai": 0x0E50,
    "lao": 0x0ED0,
    "myanmar": 0x1040,
    "khmer": 0x17E0,
    "fullwidth": 0xFF10,
}
DIGITS = {zero + value: str(value) for zero in DIGIT_ZEROS.values() for value in range(10)}
SIGNS = {
    "٫": ".",  # Arabic decimal separator
    "．": ".",
    "，": ",",
    "、": ",",
    "／": "/",
    "：": ":",
    "⁄": "/",
    "‐": "-",
    "‑": "-",
    "–": "-",
    "—": "-",
    "−": "-",
    "’": "'",
    "‘": "'",
    "′": "'",
    "“": '"',
    "”": '"',
    "″": '"',
    "×": "x",
    "≈": "~",
    "≥": ">",
    "≤": "<",
    "½": " 1/2",
    "¼": " 1/4",
    "¾": " 3/4",
    "⅛": " 1/8",
    "🔟": " 10 ",
    "👍": " yes ",
    "👎": " no ",
    "✅": " yes ",
    "❌": " no ",
}
# What is crossed out was taken back, and what is turned round reads otherwise than it is stored: neither is an answer.
SIGNS |= dict.fromkeys("\u0334\u0335\u0336\u0337\u0338", " crossedout ")
SIGNS |= dict.fromkeys("\u202d\u202e", " turnedround ")
# Marks that carry no meaning: directions, joiners, skin tones, keycap frames, variation selectors.
INVISIBLE = re.compile(
    "[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\ufe0e\ufe0f\u20e3\U0001f3fb-\U0001f3ff]"
)
EMOJI = re.compile("[\u2600-\u27bf\U0001f300-\U0001faff]")

# Only 0-9, never \d: a script that is not in the table above stays a mark and is refused.
# A minus belongs to the number only when glued to it and to nothing before it.
TOKEN = re.compile(
    r"(?P<number>(?:(?<![\w.,/])-)?[0-9]+(?:[.,][0-9]+)?)|(?P<word>[^\W\d_]+(?:'[^\W\d_]+)*)|(?P<mark>\S)"
)
COUNTED = re.compile(TOKEN.pattern.replace("[.,]", "[.]"))


@dataclass(frozen=True, slots=True)
class Number:
    """A number in figures; `digits` as typed, for what the value forgets (leading zeros, places)."""

    value: Decimal
    digits: str


@dataclass(frozen=True, slots=True)
class Word:
    """A run of letters, in lower case, without apostrophes."""

    text: str


@dataclass(frozen=True, slots=True)
class Mark:
    """Any other single sign."""

    text: str


Token = Number | Word | Mark


def normal(text: str) -> str:
    """Lower case, figures 0-9, one kind of dash and quote, no emoji, single spaces."""
    text = "".join(SIGNS.get(sign, sign) for sign in text.translate(DIGITS))
    text = EMOJI.sub(_without_pictures, INVISIBLE.sub("", text))
    return " ".join(text.casefold().split())


def tokens(text: str, decimal: bool = True) -> tuple[Token, ...]:
    """The tokens of a text. Unless `decimal`, "31,16" is two numbers with a comma between."""
    plain = re.sub(r"(?<=[a-z])-(?=[a-z])", " ", normal(text))
    pattern = TOKEN if decimal else COUNTED
    return tuple(_token(found) for found in pattern.finditer(plain))


def words(text: str) -> str:
    """Only the words and figures of a text, single-spaced: "Yes, I don't!" -> "yes i dont"."""
    return " ".join(re.findall(r"[\w.]+", normal(text).replace("'", "")))


def vocabulary(*lines: str) -> frozenset[str]:
    """The words of these lines as a set."""
    return frozenset(word for line in lines for word in line.split())


def phrases(*lines: str) -> frozenset[str]:
    """The comma-separated phrases of these lines as a set."""
    return frozenset(phrase.strip() for line in lines for phrase in line.split(",") if phrase.strip())


def _token(found: re.Match[str]) -> Token:
    if found["number"]:
        return Number(Decimal(found["number"].replace(",", ".")), found["number"])
    return Word(found["word"].replace("'", "")) if found["word"] else Mark(found["mark"])


def _without_pictures(found: re.Match[str]) -> str:
    """Pictures go; circled figures and the like stay, so that they are refused and not swallowed."""
    return " " if unicodedata.category(found[0]) == "So" else found[0]
