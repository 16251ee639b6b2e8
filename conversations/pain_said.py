"""Pain from 0 to 10 as people say it: "2 in the elbow", "just tired", "a little in the knee"."""

import re

from conversations.answers import Unclear, Why, whole_number
from conversations.answers.lexing import normal

HIGHEST = 10
NO_PAIN = ("none", "no", "no pain", "nothing", "not at all")
_PART = (
    r"(?:knees?|elbows?|shoulders?|hips?|wrists?|ankles?|backs?|neck|joints?|arms?|legs?|thighs?|muscles?|quads?|calf|calves"
    r"|biceps|triceps|heels?|fingers?|thumbs?)"
)
PLACE = re.compile(
    rf"\b(?:(?:in|at|around|on|inside|behind|for) )?(?:(?:the|my|a|one|both|left|right|lower|upper|front|inner|outer) )*{_PART}\b"
)
# A tired muscle is no pain here, as the question says.
TIRED = re.compile(
    r"(?:(?:no(?:ne)?|0|nothing)[ ,.]*)?(?:(?:but|just|only|i'?m|muscles?|are|very|a bit|a little|pretty|quite|so) )*tired\W*"
)
SOME = re.compile(
    r"(?:(?:yes|just|only|still|maybe|there is|there'?s|i have|i feel|it'?s|very|some|a|the) |,)*"
    r"(?:little|bit|slight(?:ly)?|mild(?:ly)?|some|tiny|same as (?:always|usual|before|ever)|as (?:always|usual)|usual)"
    r"(?: (?:bit|pain|of pain|sore|stiff|there|only|now|still|today))*\W*"
)


def score(text: str) -> int:
    """A rating from 0 to 10. Raises `Unclear`."""
    try:
        return whole_number(text, 0, HIGHEST, zero=NO_PAIN)
    except Unclear as problem:
        if problem.low is not None or problem.options:
            raise
        raise Unclear(problem.reason, 0, HIGHEST) from None


def pain_score(text: str) -> int:
    """The same of a pain, wherever it is said to be. Raises `Unclear`; `HOW_MUCH` where only its number is missing."""
    flat = normal(text)
    if TIRED.fullmatch(flat):
        return 0
    without = " ".join(PLACE.sub(" ", flat).split())
    try:
        return score(without)
    except Unclear as problem:
        if SOME.fullmatch(without):
            raise Unclear(Why.HOW_MUCH, 0, HIGHEST) from None
        raise problem from None


def says_only_pain(text: str) -> bool:
    """Whether all of it is an answer to how much pain there is, so that nothing beside it needs to be asked about."""
    try:
        pain_score(text)
    except Unclear as problem:
        return problem.reason is Why.HOW_MUCH
    return True
