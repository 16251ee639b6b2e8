"""What an answer with numbers in it holds: the numbers, the signs between them, and nothing unexplained."""

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from conversations.answers.lexing import (
    LONGEST_TEXT,
    Mark,
    Number,
    Token,
    Word,
    normal,
    phrases,
    tokens,
    vocabulary,
    words,
)
from conversations.answers.numerals import folded
from conversations.answers.unclear import Unclear, Why

# Words around a number that change nothing about it. A word that is not here makes the answer unclear.
FILLERS = vocabulary(
    "a actually again and answer at be clean correction did done get good got i id im it its just made make",
    "managed me mean meant my no now number of oh ok okay only oops out please rep reps repetitions say",
    "set sets should so sorry thank thanks that thats the then this time times today total um uh was well",
    "yes you x",
)
ROUGH_WORDS = vocabulary(
    "about almost approx approximately around circa guess ish maybe nearly or perhaps probably roughly think"
)
BOUND_WORDS = vocabulary("above below fewer least less more most over plus than under")
# Words that change what the next number means once there are two: "3 x 10", "31 or 32", "set 2 16".
LINKS = vocabulary("of or set sets times to x")
LOST = phrases(
    "dont know, i dont know, dunno, idk, no idea, no clue, not sure, im not sure, unsure, lost count",
    "i lost count, lost track, i lost track, forgot, i forgot, cant remember, i cant remember",
    "dont remember, i dont remember",
)
SEPARATORS = frozenset(",/;")
QUIET_MARKS = frozenset("!.,;:()\"'*#…[]-")
ROUGH_MARKS = frozenset("~?")
# ".5" may be a half or a 5, "I2" a 12 or a 2 ("...5" is a 5 after a pause).
HALF_TYPED = re.compile(r"(?<![0-9.])[.,][0-9]|\bi[0-9]")


@dataclass(frozen=True, slots=True)
class Reading:
    """What a text holds besides fillers: `kept` are its numbers and the extra words asked for, in order.

    `marks` are the signs (and linking words) that mean something; the caller says which it can take.
    """

    kept: tuple[Number | Word, ...]
    marks: frozenset[str]
    rough: bool

    @property
    def numbers(self) -> tuple[Number, ...]:
        return tuple(token for token in self.kept if isinstance(token, Number))

    @property
    def extras(self) -> tuple[str, ...]:
        return tuple(token.text for token in self.kept if isinstance(token, Word))


# Before a second number these say that it may be meant instead of the first: "31, maybe 13".
DOUBTS = frozenset("maybe perhaps probably".split())


def read_numbers(text: str, decimal: bool, extra: Collection[str] = ()) -> Reading:
    """Sort the tokens of an answer; `extra` words are kept instead of refused.

    Raises `Unclear` for any word or sign that is not known here, and when there is no number at all.
    """
    if len(text) > LONGEST_TEXT:
        raise Unclear(Why.NOT_A_NUMBER)
    if HALF_TYPED.search(normal(text)):
        raise Unclear(Why.NOT_A_NUMBER)
    if words(text) in LOST:
        raise Unclear(Why.DOES_NOT_KNOW)
    found = folded(_without_ish(tokens(text, decimal)), decimal)
    said = {token.text for token in found if isinstance(token, Word)}
    marks = _marks(found)
    _refuse_the_unknown(said - set(extra), marks)
    kept = tuple(token for token in found if _is_kept(token, extra))
    if not any(isinstance(token, Number) for token in kept):
        raise Unclear(Why.EMPTY)
    rough = bool(ROUGH_WORDS & said or ROUGH_MARKS & marks)
    return Reading(tuple(_only_kept(kept)), marks - ROUGH_MARKS, rough)


def _is_kept(token: Token, extra: Collection[str]) -> bool:
    return isinstance(token, Number) or (isinstance(token, Word) and token.text in extra)


def _only_kept(found: Sequence[Token]) -> list[Number | Word]:
    return [token for token in found if not isinstance(token, Mark)]


def _marks(found: Sequence[Token]) -> frozenset[str]:
    """The signs that mean something: those between two numbers, links, and all others but punctuation."""
    several = sum(isinstance(token, Number) for token in found) > 1
    kept = set()
    for place, token in enumerate(found):
        before, behind = found[place - 1] if place else None, found[place + 1 :]
        between = isinstance(before, Number) and bool(behind) and isinstance(behind[0], Number)
        match token:
            case Mark(text) if between or text not in QUIET_MARKS:
                kept.add(text)
            case Word("or") if several and _number_follows(behind):
                kept.add("or")
            case Word(text) if text in DOUBTS and _number_follows(behind) and _has_number(found[:place]):
                kept.add("or")
            case Word(text) if several and text in LINKS and behind and isinstance(behind[0], Number):
                kept.add(text)
    return frozenset(kept)


def _number_follows(behind: Sequence[Token]) -> bool:
    """Whether a number comes next, after idle words and "about": "or maybe 13"."""
    idle = FILLERS | ROUGH_WORDS
    rest = (token for token in behind if not (isinstance(token, Word) and token.text in idle))
    return isinstance(next(rest, None), Number)


def _has_number(found: Sequence[Token]) -> bool:
    return any(isinstance(token, Number) for token in found)


def _without_ish(found: Sequence[Token]) -> list[Token]:
    """Splits "thirtyish" into "thirty", "ish"."""
    split: list[Token] = []
    for token in found:
        if isinstance(token, Word) and token.text.endswith("ish") and token.text != "ish":
            split += [Word(token.text.removesuffix("ish")), Word("ish")]
        else:
            split.append(token)
    return split


def _refuse_the_unknown(said: Collection[str], marks: Collection[str]) -> None:
    if BOUND_WORDS & set(said) or {"+", ">", "<"} & set(marks):
        raise Unclear(Why.OPEN_ENDED)
    known_marks = SEPARATORS | ROUGH_MARKS | LINKS | {"-", ".", ":"}
    if set(said) - FILLERS - ROUGH_WORDS - LINKS or set(marks) - known_marks:
        raise Unclear(Why.NOT_A_NUMBER)
