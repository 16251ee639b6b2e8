"""A band in one line, "A legs 10 cm third hole", and words that one is gone."""

import re
import unicodedata
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
OF_A_LETTER = re.compile(
    r"\W*(?:(?:lost|remove|delete) (?P<first>[a-z])|(?P<last>[a-hj-z]) (?:is |was |got )?(?:lost|gone|missing|broken?|torn))\W*",
    re.IGNORECASE,
)
# The whole of a line out of the blue: "the feeling under my band is gone" is something else.
PLAINLY_GONE = re.compile(
    r"\W*(?:(?:i(?:['’]ve| have)? )?(?:lost|remove|delete|no longer have|don['’]?t have)(?: the| my| a)? (?:band|cuff|strap)"
    r"(?: (?P<first>[a-z]))?|(?:my |the )?(?:band|cuff|strap) (?:(?P<last>[a-z]) )?(?:is|was|got|went) (?:lost|gone|missing))"
    r"(?: any ?more)?\W*",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Line:
    """What was read of one band; None: not said."""

    letter: str
    region: Region | None = None
    width: float | None = None
    mark: str | None = None


def says_gone(text: str) -> str | None:
    """Which band is lost or to be taken off the list: its letter, "" when none is named; None: the line says more, or less."""
    found = PLAINLY_GONE.fullmatch(text) or OF_A_LETTER.fullmatch(text)
    return None if found is None else (found["first"] or found["last"] or "").upper()


def plainly_gone(text: str) -> bool:
    """Whether a line says this and nothing else."""
    return PLAINLY_GONE.fullmatch(text) is not None


def read_line(text: str) -> Line:
    """A letter, and what else was said of the band at once. Raises `Unclear`."""
    said = text.strip()
    found = LETTER.match(said)
    if found is None or not found["letter"].isascii() or unicodedata.combining(said[1:2] or " "):
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
