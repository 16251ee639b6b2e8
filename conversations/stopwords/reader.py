"""Reads one message. Every message passes here before anything else looks at it."""

import re
from dataclasses import replace
from functools import lru_cache

from conversations.stopwords import classes
from conversations.stopwords.clauses import BEGINS, JOINS, Clause, Sentence, sentences
from conversations.stopwords.denying import BETWEEN, LISTED, NEGATORS
from conversations.stopwords.found import Found
from conversations.stopwords.kinds import NOTHING, Heard, Kind, Reading, Sense
from conversations.stopwords.lexicon import grammar
from conversations.stopwords.phrases import Phrase, by_first_word, harmless_by_first_word
from conversations.stopwords.senses import sense

SMALL = frozenset(grammar.SMALL.split())
GOES_ON = frozenset(grammar.GOES_ON.split())


@lru_cache(maxsize=16)  # the same message is read by whoever might have to do with it: three times or so
def read(text: str) -> Reading:
    """What the message says, the strictest kind first to be acted on. Any text; never raises."""
    heard = [one for sentence in sentences(text) for one in _heard(sentence)]
    if not heard:
        return NOTHING
    heard = [_taken_back(one, text) for one in heard]
    kind = max((one.counts_as for one in heard), key=lambda kind: kind.rank)
    return Reading(kind, tuple(heard))


def _heard(sentence: Sentence) -> list[Heard]:
    clauses = [replace(clause, text=without_harmless(clause.text)) for clause in sentence.clauses]
    return [
        Heard(found.kind, found.text.strip(), sense(found))
        for at in range(len(clauses))
        for found in _found(clauses, at, sentence.question)
    ]


def _found(clauses: list[Clause], at: int, question: bool) -> list[Found]:
    """Every phrase in one clause, and every pair of classes that says more, each with what stands around it."""
    place = _Place(clauses, at, question)
    phrases = _phrases(clauses[at].text, place)
    named = {found.kind for found in phrases}
    run, carried = clauses[at].text.split(), _carried(clauses, at)
    own = [place.pair(pair, run) for pair in classes.pairs(run) if pair.kind not in named]
    if not carried:
        return phrases + own
    across = [pair for pair in classes.pairs(carried + run) if pair.start < len(carried) < pair.end]
    return phrases + own + [place.pair(pair, carried + run) for pair in across if pair.kind not in named]


def _carried(clauses: list[Clause], at: int) -> list[str]:
    """The words of the clause before, where this one goes on about the same: "to the loo and it was red", "hot, swollen"."""
    first = next((word for word in clauses[at].text.split() if word not in JOINS), "")
    goes_on = at > 0 and not clauses[at].fresh and (first in GOES_ON or first in classes.first_of_signs())
    return clauses[at - 1].text.split() if goes_on else []


def _phrases(clause: str, place: "_Place") -> list[Found]:
    phrases = _possible(clause)
    if not phrases:
        return []
    core = f" {' '.join(word for word in clause.split() if word not in SMALL)} "
    return [
        place.found(phrase, text, match)
        for phrase in phrases
        for text in (core if phrase.whole else clause,)
        for match in _matches(phrase, text)
    ]


def _possible(clause: str) -> list[Phrase]:
    """The phrases that begin with a word of the clause."""
    index = by_first_word()
    return list(dict.fromkeys(phrase for word in clause.split() for phrase in index.get(word, ())))


class _Place:
    """Where in its sentence a clause stands."""

    def __init__(self, clauses: list[Clause], at: int, question: bool) -> None:
        first = max((i for i in range(at + 1) if clauses[i].fresh), default=0)
        self.earlier = "".join(one.text.rstrip() for one in clauses[first:at])
        own = clauses[at].comma and clauses[at].text.split()[0] in BEGINS
        self.condition = "" if own else self.earlier
        self.later = "".join(one.text for one in clauses[at + 1 :])
        self.question = question
        self.noes = _list_of_noes(clauses, at)

    def found(self, phrase: Phrase, text: str, match: re.Match[str]) -> Found:
        """The phrase with what stands around it."""
        gap = "".join(gap for gap in match.groups() if gap)
        before, after = f"{text[: match.start()]} ", text[match.end() :]
        earlier = self.earlier if phrase.kind is Kind.STOP else self.condition
        return Found(phrase.kind, match[0], gap, before, after, earlier, self.later, self.question, self.noes)

    def pair(self, pair: classes.Pair, run: list[str]) -> Found:
        """A pair of classes with what stands around it."""
        before, text, after = run[: pair.start], run[pair.start : pair.end], run[pair.end :]
        gap = "".join(f" {word}" for word in pair.gap)
        return Found(
            pair.kind,
            f" {' '.join(text)}",
            gap,
            f" {' '.join(before)} " if before else " ",
            f" {' '.join(after)} " if after else " ",
            self.condition,
            self.later,
            self.question,
            self.noes,
        )


def _matches(phrase: Phrase, text: str) -> list[re.Match[str]]:
    if not phrase.whole:
        return list(phrase.pattern.finditer(text))
    match = phrase.pattern.match(text)
    return [match] if match and match.end() == len(text) - 1 else []


def without_harmless(text: str) -> str:
    """A clause without the wordings that sound of harm and are none."""
    index = harmless_by_first_word()
    wordings = {one for word in text.split() for one in index.get(word, ())}
    for one in sorted(wordings, key=lambda one: one.order):
        text = one.pattern.sub(f" {one.leaves}", text)
    return text


def _list_of_noes(clauses: list[Clause], at: int) -> Sense | None:
    """ "no pain, tingling or numbness": denied. "no pain, tingling": perhaps."""
    run = clauses[at].text.split()
    if not clauses[at].comma or at == 0 or not set(run) <= BETWEEN | LISTED:
        return None
    first = at - 1
    while first and clauses[first].comma and set(clauses[first].text.split()) <= BETWEEN | LISTED:
        first -= 1
    if clauses[first].text.split()[0] not in NEGATORS:
        return None
    if {word for clause in clauses[at:] for word in clause.text.split()} & {"or", "nor"}:
        return Sense.DENIED
    return None if clauses[first].text.startswith(" not ") else Sense.PERHAPS


def _taken_back(one: Heard, text: str) -> Heard:
    """ "the tingling was gone but it's back", "is numb normal? mine is"."""
    taken_back = {
        Sense.OVER: grammar.CAME_BACK,
        Sense.PERHAPS: grammar.MINE_IS,
        Sense.SUPPOSED: grammar.MINE_IS,
    }.get(one.sense)
    if taken_back is None:
        return one
    said = " ".join(clause.text for sentence in sentences(text) for clause in sentence.clauses)
    return replace(one, sense=Sense.NOW) if re.search(taken_back, said) else one
