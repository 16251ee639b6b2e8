"""Slips of the thumb, mended only towards the words that matter and never away from a real word."""

import re
from collections.abc import Iterator
from functools import cache, lru_cache

from conversations.stopwords import classes, phrases
from conversations.stopwords.lexicon import grammar
from conversations.stopwords.lexicon.classes import PARTS
from conversations.stopwords.lexicon.groups import MENDED, MISSPELT
from conversations.stopwords.lexicon.harmless import HARMLESS
from conversations.stopwords.lexicon.signs import SIGNS
from conversations.stopwords.lookalikes import REAL_WORDS
from conversations.stopwords.script import folded

SHORTEST_PARTED = 6  # letters of words run together
MOST_PIECES = 5  # words run together
RUN_TOGETHER = """my is are was im i so very not no dont cant wont in the and has have its feel feels feeling
    breathe move see talk help stop off band bands"""
SHORTEST = 4  # letters; shorter words have too many neighbours
TWO_SLIPS_FROM = 8  # letters


@cache
def known() -> frozenset[str]:
    """Words that the phrases are made of."""
    lines = [line for text in phrases.TEXTS.values() for line in phrases.phrase_lines(text)]
    harmless = [line.partition(" > ")[0] for line in phrases.phrase_lines(HARMLESS)]
    listed = f"{folded(grammar.NEGATORS)} {grammar.BETWEEN} {grammar.LISTED} {grammar.OTHERS} {grammar.SMALL}"
    return frozenset(phrases.words_of((*lines, *harmless)) | set(listed.split()) | classes.words_of_classes())


@cache
def _index() -> dict[str, tuple[str, ...]]:
    """Each word to mend towards, under itself and under every form with a letter dropped."""
    index: dict[str, list[str]] = {}
    for word in sorted(MENDED.split()):
        for form in _forms(word):
            index.setdefault(form, []).append(word)
    return {form: tuple(found) for form, found in index.items()}


@lru_cache(maxsize=4096)
def corrected(word: str) -> str:
    """The known word this one was meant to be, or the word itself."""
    word = MISSPELT.get(word, word)
    if word in known():
        return word
    if word.endswith("ish") and word[:-3] in known():
        return word[:-3]
    for other in _shorter(word):
        if other in known() or other in MISSPELT:
            return MISSPELT.get(other, other)
    if word in REAL_WORDS or len(word) < SHORTEST - 1:
        return word
    return _nearest(word)


@lru_cache(maxsize=4096)
def parted(word: str) -> tuple[str, ...]:
    """ "chestpain" -> "chest", "pain": an unknown word that is nothing but known ones, one of which names a sign."""
    if len(word) < SHORTEST_PARTED or word in known() or word in REAL_WORDS:
        return (word,)
    pieces = _pieces(word, MOST_PIECES)
    return pieces if pieces is not None and set(pieces) & _telling() else (word,)


@cache
def _telling() -> frozenset[str]:
    """The words that make a run of words worth taking apart."""
    return _singles(SIGNS, "hurt numb unwell swollen faintly") | {"cant", "wont", "racing", "blue"}


@cache
def _joining() -> frozenset[str]:
    """What may stand run together: parts, signs, and the small words between them."""
    parts = _singles(PARTS, "chest heart breath face head limb trunk throat sight")
    return parts | _telling() | frozenset(RUN_TOGETHER.split())


def _singles(of: dict[str, str], names: str) -> frozenset[str]:
    entries = (entry for name in names.split() for entry in classes.entries(of[name]))
    return frozenset(entry[0] for entry in entries if len(entry) == 1 and len(entry[0]) >= SHORTEST - 1)


def _pieces(word: str, most: int) -> tuple[str, ...] | None:
    """The word in as few known words as it takes, at most so many; None: it is not made of them."""
    if word in _joining():
        return (word,)
    if most == 1:
        return None
    for at in range(len(word) - 1, 0, -1):
        if word[:at] in _joining() and (rest := _pieces(word[at:], most - 1)) is not None:
            return (word[:at], *rest)
    return None


def _shorter(word: str) -> tuple[str, ...]:
    """ "nuuumb" -> "numb", "dizzzy" -> "dizzy"."""
    twice, once = re.sub(r"(.)\1{2,}", r"\1\1", word), re.sub(r"(.)\1{2,}", r"\1", word)
    return twice, once


def _nearest(word: str) -> str:
    """The known word with fewest slips, the first in the alphabet of equals; else the word itself."""
    near = {found for form in _forms(word) for found in _index().get(form, ())}
    scored = sorted((slips(word, other), other) for other in near)
    for distance, other in scored:
        if distance <= (2 if len(other) >= TWO_SLIPS_FROM else 1):
            return other
    return word


def _forms(word: str) -> Iterator[str]:
    """The word, and the word with one letter dropped (of long words two)."""
    yield word
    once = {word[:at] + word[at + 1 :] for at in range(len(word))}
    yield from once
    if len(word) >= TWO_SLIPS_FROM:
        yield from {form[:at] + form[at + 1 :] for form in once for at in range(len(form))}


def slips(one: str, other: str) -> int:
    """Letters dropped, added, changed or swapped with their neighbour (optimal string alignment)."""
    before: list[int] = []
    row = list(range(len(other) + 1))
    for i, letter in enumerate(one, 1):
        last, before, row = before, row, [i]
        for j, wanted in enumerate(other, 1):
            cost = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (letter != wanted))
            if i > 1 and j > 1 and letter == other[j - 2] and one[i - 2] == wanted:
                cost = min(cost, last[j - 2] + 1)
            row.append(cost)
    return row[-1]
