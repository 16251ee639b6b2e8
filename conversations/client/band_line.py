"""A band in one line, "A legs 10 cm third hole", and words that one is gone."""

import re
from dataclasses import dataclass

from conversations.answers import Unclear, Why, centimetres
from core.plans import Region

WIDTHS_CM = (2, 25)
LONGEST_MARK = 60  # characters
LETTER = re.compile(
    r"^(?:(?:my|the)\s+)?(?:band\s+)?(?P<letter>[a-z])\b[\s:,.–-]*(?P<rest>.*)$", re.IGNORECASE | re.DOTALL
)
WIDTH = re.compile(r"\d+(?:[.,]\d+)?\s*(?:cm|mm|centimet\w+|in(?:ch\w*)?\b)?", re.IGNORECASE)
MM = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm", re.IGNORECASE)
REGIONS = {
    Region.ARMS: re.compile(r"\b(?:upper[ -])?(?:arms?|biceps)\b", re.IGNORECASE),
    Region.LEGS: re.compile(r"\b(?:upper[ -])?(?:legs?|thighs?)\b", re.IGNORECASE),
}
BESIDE = frozenset("for the my is it its on and wide width closes closed at both goes".split())
GONE = re.compile(
    r"\b(?:remove|delete|lost|gone|broken?|tore|torn|snapped|threw|thrown|no longer|don'?t have|off the list)\b",
    re.IGNORECASE,
)
WHICH_GONE = re.compile(
    r"\bband ([a-z])\b|\b(?:remove|delete|lost) ([a-z])\b(?!\s+\w)|^([b-hj-z])\b", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Line:
    """What was read of one band; None: not said."""

    letter: str
    region: Region | None = None
    width: float | None = None
    mark: str | None = None


def says_gone(text: str) -> str | None:
    """Which band is lost, broken or to be taken off the list: its letter, "" when none is named; None: no such words."""
    if GONE.search(text) is None:
        return None
    named = WHICH_GONE.search(text)
    if named is not None:
        return next(letter for letter in named.groups() if letter).upper()
    capital = re.search(r"\b[A-HJ-Z]\b", text[1:])
    return capital[0] if capital is not None else ""


def read_line(text: str) -> Line:
    """A letter, and what else was said of the band at once. Raises `Unclear`."""
    found = LETTER.match(text.strip())
    if found is None or not found["letter"].isascii():
        raise _no_letter()
    rest = found["rest"]
    region = next((one for one, words in REGIONS.items() if words.search(rest)), None)
    width = WIDTH.search(rest)
    cm = None if width is None else float(centimetres(_in_cm(width[0]), *WIDTHS_CM))
    mark = _left(rest)
    if mark and (region is None or cm is None):
        raise _no_letter()
    return Line(found["letter"].upper(), region, cm, mark or None)


def _in_cm(width: str) -> str:
    mm = MM.fullmatch(width.strip())
    return width if mm is None else f"{float(mm[1].replace(',', '.')) / 10:g} cm"


def _left(rest: str) -> str:
    """What is neither place nor width: where it closes."""
    for words in REGIONS.values():
        rest = words.sub(" ", rest)
    said = [
        word for word in WIDTH.sub(" ", rest, count=1).split() if word.strip(",.;:").lower() not in BESIDE
    ]
    return " ".join(word for word in said if any(sign.isalnum() for sign in word)).strip(" ,.;:")[
        :LONGEST_MARK
    ]


def _no_letter() -> Unclear:
    return Unclear(Why.NOT_AN_OPTION, options=("A", "B", "C"))
