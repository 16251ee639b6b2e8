"""Whether words that answer no question are asked about: around training all but a closed set of harmless things.

Asking is the safe side: "Is something wrong right now?" costs a tap, a sign of harm that nobody answers may cost a
limb. Away from training only words that touch the body, or sound of alarm, are asked about.
"""

import re
from functools import cache

from conversations.stopwords.classes import entries, touches, words_of_classes
from conversations.stopwords.clauses import sentences
from conversations.stopwords.denying import BETWEEN, LISTED, NEGATORS
from conversations.stopwords.kinds import Kind, Reading
from conversations.stopwords.lexicon import small_talk
from conversations.stopwords.lexicon.classes import PARTS
from conversations.stopwords.reader import read, without_harmless
from conversations.stopwords.script import folded
from conversations.stopwords.spelling import known, slips

SHORTEST_MENDED = 5  # letters of a harmless word in which one slip is forgiven
SIDED = frozenset("left right l r and each both side sides arm arms leg legs hand hands".split())


@cache
def _beside_denied() -> frozenset[str]:
    """What may stand beside a sign that was denied, over or only asked about."""
    parts = frozenset(word for line in PARTS.values() for entry in entries(line) for word in entry)
    return NEGATORS | BETWEEN | LISTED | frozenset(small_talk.OVER.split()) | parts


@cache
def _harmless() -> frozenset[str]:
    return frozenset(folded(small_talk.WORDS).split())


@cache
def _phrases() -> re.Pattern[str]:
    found = sorted((" ".join(entry) for entry in entries(small_talk.PHRASES)), key=len, reverse=True)
    return re.compile(rf" (?:{'|'.join(found)})(?= )")


@cache
def _parts_that_are_well() -> re.Pattern[str]:
    words = (" ".join(entry) for line in PARTS.values() for entry in entries(line))
    parts = "|".join(sorted(words, key=len, reverse=True))
    verbs, beside, well = (
        "|".join(line.split()) for line in (small_talk.VERBS, small_talk.BESIDE, small_talk.WELL)
    )
    well_first = rf" (?:{well}|better|stronger) in (?:my|the|both) (?:{parts})"
    return re.compile(rf"(?: (?:{parts})(?: (?:{verbs}))?(?: (?:{beside}))* (?:{well})|{well_first})(?= )")


def worth_asking(text: str, *, near: bool) -> bool:
    """Whether words that nobody could read may tell of harm. `near`: bands may be on, or were of late."""
    reading = read(text)
    if reading.kind is not Kind.NONE:
        return True
    left = left_over(text, reading)
    if _counts_of_sides(left):
        return False
    return touches(left, parts=not reading.heard) or (near and not _all_harmless(left))


def left_over(text: str, reading: Reading) -> list[str]:
    """The words of a message, spelling corrected, without what was heard as denied, over or only supposed."""
    clauses = [clause.text for sentence in sentences(text) for clause in sentence.clauses]
    said = " . ".join(without_harmless(clause) for clause in clauses)
    for heard in sorted(reading.heard, key=lambda one: -len(one.words)):
        said = said.replace(f" {heard.words} ", " ", 1)
    words = _phrases().sub(" ", _parts_that_are_well().sub(" ", f" {said} ")).split()
    return [word for word in words if word not in _beside_denied()] if reading.heard else words


def _counts_of_sides(words: list[str]) -> bool:
    """ "left leg 20 right leg 18"."""
    spelt = [word for word in words if word[0].isalpha()]
    return set(spelt) <= SIDED and any(word[0].isdigit() for word in words)


def _all_harmless(words: list[str]) -> bool:
    spelt = [word for word in words if word[0].isalpha()]
    return spelt == ["back"] or all(word in _harmless() or _slip_of_harmless(word) for word in spelt)


def _slip_of_harmless(word: str) -> bool:
    """ "thrity"; a word that the lexicon knows is no slip."""
    if len(word) < SHORTEST_MENDED or word in known() or word in words_of_classes():
        return False
    near = (one for one in _harmless() if len(one) >= SHORTEST_MENDED and abs(len(one) - len(word)) < 2)
    return any(slips(word, one) == 1 for one in near)
