"""Counts of the left and the right limb."""

from dataclasses import dataclass

from conversations.answers.lexing import Word
from conversations.answers.numbers import HIGHEST, Count, whole
from conversations.answers.reading import SEPARATORS, Reading, read_numbers
from conversations.answers.unclear import Unclear, Why
from core.plans import Side

SIDE_WORDS = {
    "left": Side.LEFT,
    "l": Side.LEFT,
    "lt": Side.LEFT,
    "letf": Side.LEFT,
    "lft": Side.LEFT,
    "lef": Side.LEFT,
    "right": Side.RIGHT,
    "r": Side.RIGHT,
    "rt": Side.RIGHT,
    "rigth": Side.RIGHT,
    "rihgt": Side.RIGHT,
    "rght": Side.RIGHT,
}
BOTH_WORDS = frozenset({"each", "both"})
LIMB_WORDS = frozenset(["arm", "arms", "hand", "hands", "leg", "legs", "side", "sides"])


@dataclass(frozen=True, slots=True)
class Sided:
    """Counts by side; None: that side was not said."""

    left: Count | None
    right: Count | None


def side_numbers(text: str, low: int = 0, high: int = HIGHEST) -> Sided:
    """Counts with their side: "28 left 31 right", "L28 R31", "30 each", "28 left". Raises `Unclear`.

    Two numbers without sides are `Why.WHICH_SIDE`: the dialogue knows the order it asked in, or asks.
    """
    found = read_numbers(text, decimal=False, extra=SIDE_WORDS.keys() | BOTH_WORDS | LIMB_WORDS)
    if found.marks - SEPARATORS:
        raise Unclear(Why.WHICH_SIDE, low, high)
    counts = [Count(whole(number, low, high), found.rough) for number in found.numbers]
    sides = [SIDE_WORDS[word] for word in found.extras if word in SIDE_WORDS]
    if len(counts) == 1 and not sides and BOTH_WORDS & set(found.extras):
        return Sided(counts[0], counts[0])
    if not _paired(found) or len(set(sides)) != len(sides):
        raise Unclear(Why.WHICH_SIDE, low, high)
    by_side = dict(zip(sides, counts, strict=True))
    return Sided(by_side.get(Side.LEFT), by_side.get(Side.RIGHT))


def _paired(found: Reading) -> bool:
    """Whether each number has its side next to it, taken two by two; either may come first."""
    kinds = [_is_side(token) for token in found.kept if not _says_nothing(token)]
    pairs = [kinds[at : at + 2] for at in range(0, len(kinds), 2)]
    return all(sorted(pair) == [False, True] for pair in pairs)


def _is_side(token: object) -> bool:
    return isinstance(token, Word) and token.text in SIDE_WORDS


def _says_nothing(token: object) -> bool:
    return isinstance(token, Word) and token.text in LIMB_WORDS
