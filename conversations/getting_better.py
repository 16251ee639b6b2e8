"""Words to "How is it now?": better, or not. Whatever leaves a doubt is not better."""

import re

from conversations.answers import Reply, Unclear, Why, yes_no
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


def how_is_it(text: str) -> str:
    """BETTER or WORSE. Raises `Unclear` for words that say neither."""
    if SAYS_WORSE.search(text) or read(text).kind is not Kind.NONE:
        return WORSE
    if SAYS_BETTER.search(text):
        return BETTER
    if yes_no(text) in (Reply.NO, Reply.NOT_SURE):
        return WORSE
    raise Unclear(Why.NOT_AN_OPTION)  # "yes" to "how is it"
