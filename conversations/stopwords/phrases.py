"""The phrases of the lexicon as patterns over a clause of plain words.

A pattern is compiled when a clause first holds a word that its phrase begins with: all of them at once would hold
up the first message after a start by a fifth of the whole start.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from conversations.stopwords.kinds import Kind
from conversations.stopwords.lexicon import foreign, lesser, red_flags
from conversations.stopwords.lexicon.groups import GROUPS
from conversations.stopwords.lexicon.harmless import HARMLESS
from conversations.stopwords.script import folded

GAP = r"((?: [^ ]+){0,4}?)"  # "..": up to four words, kept for the negation in them

ENGLISH = {
    Kind.EMERGENCY: red_flags.EMERGENCY,
    Kind.STUCK: red_flags.STUCK,
    Kind.WEAK: red_flags.WEAK,
    Kind.LIMP: red_flags.LIMP,
    Kind.FAINT: red_flags.FAINT,
    Kind.NERVE: red_flags.NERVE,
    Kind.CIRCULATION: red_flags.CIRCULATION,
    Kind.URINE: red_flags.URINE,
    Kind.SWELLING: red_flags.SWELLING,
    Kind.INJURY: red_flags.INJURY,
    Kind.STOP: lesser.STOP,
    Kind.TIGHT: lesser.TIGHT,
    Kind.HURTS: lesser.HURTS,
    Kind.FEVER: lesser.FEVER,
    Kind.SORE: lesser.SORE,
    Kind.UNSURE: lesser.UNSURE,
}
FOREIGN = {
    Kind.EMERGENCY: foreign.EMERGENCY,
    Kind.LIMP: foreign.LIMP,
    Kind.FAINT: foreign.FAINT,
    Kind.NERVE: foreign.NERVE,
    Kind.CIRCULATION: foreign.CIRCULATION,
    Kind.URINE: foreign.URINE,
    Kind.STOP: foreign.STOP,
    Kind.TIGHT: foreign.TIGHT,
    Kind.HURTS: foreign.HURTS,
    Kind.FEVER: foreign.FEVER,
    Kind.UNSURE: foreign.UNSURE,
}
TEXTS = {kind: f"{text}\n{folded(FOREIGN.get(kind, ''))}" for kind, text in ENGLISH.items()}


@dataclass(frozen=True, slots=True)
class Phrase:
    """One phrase, as in the lexicon; `whole`: it must be the whole clause, small words apart."""

    kind: Kind
    words: str
    whole: bool

    @property
    def pattern(self) -> re.Pattern[str]:
        """What finds it in a clause."""
        return compiled(self.words)


@dataclass(frozen=True, slots=True)
class Harmless:
    """A wording to take out, and what is left in its place. `order`: earlier ones go first."""

    order: int
    words: str
    leaves: str

    @property
    def pattern(self) -> re.Pattern[str]:
        """What finds it in a clause."""
        return compiled(self.words)


def phrase_lines(text: str) -> list[str]:
    """The phrases of a text of the lexicon."""
    return [phrase.strip() for line in text.splitlines() for phrase in line.split(";") if phrase.strip()]


def alternatives(element: str) -> list[str]:
    """The words one element of a phrase stands for: "a|{limb}" -> ["a", "hand", ...]."""
    found: list[str] = []
    for part in element.split("|"):
        found += GROUPS[part[1:-1]].split() if part.startswith("{") else [part]
    return found


@cache  # one for each phrase of the lexicon, no more
def compiled(phrase: str) -> re.Pattern[str]:
    """A phrase as a pattern over a clause that has one space between and around its words."""
    text = ""
    for element in phrase.split():
        text += GAP if element == ".." else f" (?:{'|'.join(alternatives(element))})"
    return re.compile(text + "(?= )")


def words_of(phrases: Iterable[str]) -> set[str]:
    """Every single word that these phrases can be made of."""
    elements = (element for phrase in phrases for element in phrase.removeprefix("= ").split())
    return {word for element in elements if element != ".." for word in alternatives(element)}


@cache
def by_first_word() -> dict[str, tuple[Phrase, ...]]:
    """Every phrase under each word it can begin with, so that a clause only tries those it may hold."""
    found: dict[str, list[Phrase]] = {}
    for kind, text in TEXTS.items():
        for line in phrase_lines(text):
            bare = line.removeprefix("= ")
            phrase = Phrase(kind, bare, line != bare)
            for word in alternatives(bare.split()[0]):
                found.setdefault(word, []).append(phrase)
    return {word: tuple(phrases) for word, phrases in found.items()}


@cache
def harmless_by_first_word() -> dict[str, tuple[Harmless, ...]]:
    """Every harmless wording under each word it can begin with."""
    found: dict[str, list[Harmless]] = {}
    for order, line in enumerate(phrase_lines(folded(HARMLESS))):
        before, _, after = line.partition(" > ")
        one = Harmless(order, before, after or "_")
        for word in alternatives(before.split()[0]):
            found.setdefault(word, []).append(one)
    return {word: tuple(wordings) for word, wordings in found.items()}
