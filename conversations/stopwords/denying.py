"""Whether something was denied: "not numb", "no pain or tingling". "Not really numb" is asked about."""

import re

from conversations.stopwords.found import Found
from conversations.stopwords.kinds import Kind, Sense
from conversations.stopwords.lexicon import grammar as words
from conversations.stopwords.script import folded

NEGATORS = frozenset(folded(words.NEGATORS).split())
BETWEEN = frozenset(words.BETWEEN.split())
LISTED = frozenset(words.LISTED.split())
SOFT_NEGATORS = frozenset(words.SOFT_NEGATORS.split())
SOME = frozenset(words.SOME.split())
PERHAPS = frozenset(words.PERHAPS.split())
VERBS = frozenset(words.VERBS.split())
NO_WITHIN = 3  # words
MERE_NOES = frozenset(folded(words.MERE_NOES).split())
REST_OF_NE = frozenset(words.REST_OF_NE.split())


def denied(found: Found) -> Sense | None:
    """A negator before the thing with only harmless words between; or the thing goes on a list of noes."""
    if re.search(words.UNTIL_NOW, found.after) or _as_never_before(found):
        return None
    if re.search(words.PERHAPS_SO, found.before):
        return Sense.PERHAPS
    before = "" if _after_a_mere_no(found) else found.before
    for run in (found.gap.split(), before.split()):
        said = _denied_by(run, found)
        if said is not None:
            return said
    return found.list_of_noes


def _after_a_mere_no(found: Found) -> bool:
    """ "No cant breathe", "no they wont come off": a no to whatever was asked, and a sign that is itself a no."""
    own = NEGATORS & set(found.text.split()[:NO_WITHIN])
    return bool(own) and set(found.before.split()) <= MERE_NOES


def _as_never_before(found: Found) -> bool:
    """ "Never had cramp like it" has it, and worse than ever."""
    never = re.search(words.NEVER_BEFORE, found.before)
    return never is not None and re.search(words.LIKE_THIS, found.after) is not None


def _denied_by(run: list[str], found: Found) -> Sense | None:
    """Walk back from the thing to the next negator."""
    between: set[str] = set()
    for at in range(len(run) - 1, -1, -1):
        word = run[at]
        if word in NEGATORS:
            return _how_far(word, between, run[:at], found)
        if word in SOFT_NEGATORS and found.kind is Kind.HURTS:
            return Sense.DENIED
        if word not in BETWEEN and word not in LISTED:
            return None
        between.add(word)
    return None


def _how_far(negator: str, between: set[str], before: list[str], found: Found) -> Sense | None:
    """What a negator makes of the thing: denied, perhaps, or (None) not denied at all."""
    if before and before[-1] in NEGATORS - {"no", "nope"}:
        return None
    if negator == "ne" and REST_OF_NE & set(found.text.split()[:3]):  # "je ne peux plus respirer" is one no
        return None
    if re.search(words.SAYS_NO, " ".join(before)):
        return None
    if found.kind not in (Kind.HURTS, Kind.TIGHT) and between & SOME:
        return None
    if between & PERHAPS and not between & {"or", "nor"}:
        return Sense.PERHAPS
    if negator == "no" and not between and found.text.split()[0] in VERBS:
        return Sense.DENIED if re.search(words.MORE_NOES, found.after) else Sense.PERHAPS
    return Sense.DENIED
