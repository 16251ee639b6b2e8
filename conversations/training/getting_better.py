"""Words to "How is it now?": better, or not. Whatever leaves a doubt is not better."""

import re

from conversations.answers import Reply, Unclear, Why, yes_no
from conversations.answers.taken_off import Off, taken_off
from conversations.stopwords import read
from conversations.stopwords.kinds import Kind

BETTER, WORSE = "better", "worse"
_NOT = r"(?:not|isn'?t|aren'?t|hasn'?t|haven'?t|won'?t|doesn'?t|don'?t|didn'?t)\s+(?:\w+\s+){0,2}"
_GOOD = r"(?:better|gone|going|good|fine|ok(?:ay)?|well|changed|normal|over|improv\w+|eas\w+|feel\w*)"
SAYS_WORSE = re.compile(
    rf"\b(?:same|worse|unchanged|still|stays?|no (?:better|change|different|difference|improvement)|{_NOT}{_GOOD})\b",
    re.IGNORECASE,
)
SAYS_BETTER = re.compile(
    r"\b(?:better|gone|good|fine|ok(?:ay)?|well|normal|over|passed|improv\w+|eas(?:ed|ing))\b", re.IGNORECASE
)


SAYS_FINE = re.compile(
    r"\b(?:all|im|i'm|i am|everything(?:'s| is)?|feel|feeling)\s+(?:\w+\s+)?(?:good|fine|ok(?:ay)?|well|normal)\b"
    r"|\bnothing(?:'s| is)? wrong\b|^\W*(?:fine|good)\b",
    re.IGNORECASE,
)
MERE_OK = frozenset(
    "ok okay okey k kk oki alright right sure understood got it i see will do noted thanks thank you dear coach".split()
)


def is_mere_ok(text: str) -> bool:
    """Whether all that is said is "ok": it may mean "I have read it"."""
    said = re.findall(r"\w+|👍", text.casefold())
    return bool(said) and all(word in MERE_OK or word == "👍" for word in said)


def says_fine(text: str) -> bool:
    """ "I'm fine", "all good", "nothing is wrong", with nothing said against it."""
    against = SAYS_WORSE.search(text) or read(text).kind is not Kind.NONE
    return not against and SAYS_FINE.search(text) is not None


def tells_off(text: str) -> bool:
    """ "Bands off now": where none is known to be on, no cry but news. False where anything else is wrong as well."""
    heard = [one for one in read(text).heard if one.counts_as is not Kind.NONE]
    return taken_off(text, asked=False) is Off.BOTH and all("off" in one.words for one in heard)


def off_and_fine(text: str) -> bool:
    """ "Bands off now, all normal"."""
    return tells_off(text) and not SAYS_WORSE.search(text) and SAYS_FINE.search(text) is not None


def how_is_it(text: str) -> str:
    """BETTER or WORSE. Raises `Unclear` for words that say neither, such as "bands off now"."""
    if off_and_fine(text):
        return BETTER
    if tells_off(text):
        raise Unclear(Why.NOT_AN_OPTION)
    if SAYS_WORSE.search(text) or read(text).kind is not Kind.NONE:
        return WORSE
    if SAYS_BETTER.search(text):
        return BETTER
    if yes_no(text) in (Reply.NO, Reply.NOT_SURE):
        return WORSE
    raise Unclear(Why.NOT_AN_OPTION)  # "yes" to "how is it"
