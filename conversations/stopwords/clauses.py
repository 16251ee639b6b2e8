"""From a message to sentences of clauses of plain words: small letters, one script, no marks."""

import re
from dataclasses import dataclass

from conversations.answers.lexing import DIGITS, INVISIBLE
from conversations.stopwords.lexicon.groups import PICTURES
from conversations.stopwords.script import folded
from conversations.stopwords.spelling import corrected, parted

LONGEST = 4096  # characters of one message (Telegram Bot API); more cannot come

QUOTES = str.maketrans("’‘′`´ʼ", "''''''")
SPELT_OUT = re.compile(r"(?<![a-z0-9'])(?:[a-z][ .\-]){2,}[a-z](?![a-z'])")  # "s t o p"
TOKEN = re.compile(r"[0-9]+(?:[.,/:][0-9]+)*|[^\W\d_]+(?:'[^\W\d_]+)*|\.{2,}|…|[.!?;,\n]+")
ARTICLE = re.compile(r"^(?:l|d|dell|nell|sull|all)'(?=\w{3})")
NOT = {
    "can": "cant", "could": "couldnt", "do": "dont", "does": "doesnt", "did": "didnt", "is": "isnt",
    "are": "arent", "was": "wasnt", "were": "werent", "will": "wont", "would": "wouldnt", "has": "hasnt",
    "have": "havent", "had": "hadnt", "should": "shouldnt",
}  # fmt: skip
BREAKS = frozenset("but however although though except because cause cos".split())
# These go on with what stood before a comma.
TAILS = frozenset("worst suddenly sudden severe terrible badly".split())
KEEP_S = frozenset("it that what there he she who here let".split())
JOINS = frozenset("and or so then while as that since plus".split())
BEGINS = frozenset("my i im ive it its they theyre their the this he she we you".split())


@dataclass(frozen=True, slots=True)
class Clause:
    """Words with one space between and around them.

    `comma`: a comma stands before them. `fresh`: "but" or the like does, so nothing said before governs them.
    """

    text: str
    comma: bool
    fresh: bool = False


@dataclass(frozen=True, slots=True)
class Sentence:
    """Clauses up to a full stop; `question`: it ends in a question mark."""

    clauses: tuple[Clause, ...]
    question: bool


def sentences(text: str) -> tuple[Sentence, ...]:
    """The sentences of a message, spelling corrected."""
    found: list[Sentence] = []
    clauses: list[Clause] = []
    run: list[str] = []
    comma = False
    for token in [*_without_idle_commas(_tokens(text)), "."]:
        if token[0].isalnum():
            run.append(token)
        else:
            clauses += _clauses(run, comma)
            run, comma = [], token == ","
            if token != ",":
                if clauses:
                    found.append(Sentence(tuple(clauses), "?" in token))
                clauses = []
    return tuple(found)


def _without_idle_commas(tokens: list[str]) -> list[str]:
    """ "headache, the worst ever" and "wait, 31 not 30" are one clause each."""
    kept: list[str] = []
    for at, token in enumerate(tokens):
        after = [word for word in tokens[at + 1 : at + 3] if word != "the"]
        tail = after and after[0] in TAILS
        correction = kept[-1:] == ["wait"] and after and after[0].isdigit()
        if token != "," or not (tail or correction):
            kept.append(token)
    return kept


def plain(text: str) -> str:
    """Lower case, Latin letters and 0-9 only where there was a look-alike, pictures as words."""
    text = text[:LONGEST].translate(DIGITS)
    for picture, word in PICTURES.items():
        if picture in text:
            text = text.replace(picture, f" . {word} . ")
    text = folded(INVISIBLE.sub("", text)).translate(QUOTES)
    text = text.replace("-ish", "ish")
    return SPELT_OUT.sub(lambda found: re.sub(r"[ .\-]", "", found[0]), text)


def _tokens(text: str) -> list[str]:
    """Words, numbers and marks. "can not" becomes "cant"; "..." is no full stop."""
    found: list[str] = []
    for token in TOKEN.findall(plain(text)):
        if token.startswith(("..", "…")):
            found += ["."] if found[-1:] == ["stop"] else []
            continue
        word = _word(token) if token[0].isalpha() else token
        if word == "not" and found and found[-1] in NOT:
            found[-1] = NOT[found[-1]]
        else:
            found += parted(word)
    return found


def _word(token: str) -> str:
    """Without apostrophes: "it's" -> "its", "head's" -> "head", "l'urine" -> "urine"."""
    base = ARTICLE.sub("", token).removesuffix("'s")
    return corrected((token if base in KEEP_S else base).replace("'", ""))


def _clauses(run: list[str], comma: bool) -> list[Clause]:
    """A run of words without marks, cut before "but" and before "and my", "so it", ..."""
    cut: list[tuple[list[str], bool]] = [([], False)]
    for at, word in enumerate(run):
        joins = word in JOINS and run[at + 1 : at + 2] and run[at + 1] in BEGINS
        if word in BREAKS or (joins and cut[-1][0]):
            cut.append(([], word in BREAKS))
        if word not in BREAKS:
            cut[-1][0].append(word)
    parts = [(f" {' '.join(part)} ", fresh) for part, fresh in cut if part]
    return [Clause(text, comma and at == 0, fresh) for at, (text, fresh) in enumerate(parts)]
