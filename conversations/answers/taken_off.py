"""Whether words say that the bands are off. There are two: one off is not off, and "ok" is no word about either."""

import re
from enum import Enum, auto


class Off(Enum):
    """What was said about the bands coming off."""

    BOTH = auto()  # "off", "they're off", "they were never on"
    PERHAPS = auto()  # "ok", a thumb: ask whether both are
    ONE = auto()  # "left is off": ask about the other
    NOT_YET = auto()  # "wait", "taking them off"
    STAYS_ON = auto()  # "still on", "one is off, one on": told off, and it is not
    NOT_ABOUT_IT = auto()


NEVER_MIND = r"(?! (?:the|my|a) (?:table|desk|floor|bed|bench|chair|sofa|couch|shelf|hook)\b)"  # lying on it
STAYS_ON = re.compile(
    r"\bstill on\b|\b(?:one|left|right|other|bands?|cuffs?|both|they|they're|it|it's)(?: is| are)?(?: still)? on\b"
    + NEVER_MIND,
    re.IGNORECASE,
)
NOT_ON = re.compile(
    r"\b(?:not|never|weren't|aren't|wasn't|isn't) (?:even |yet |put )*on\b|\bnever put\b|\bnot wearing\b",
    re.IGNORECASE,
)
NEVER_ON = re.compile(
    r"\b(?:never|didn't|did not) (?:even |really |actually )?(?:put|had|have|wore|wear|got|get|start|begin|began)"
    r"|\b(?:not|never|weren't|aren't|wasn't|isn't) (?:even |yet |put |actually )*on\b|\bnot wearing\b",
)
ANY_MORE = re.compile(r"\b(?:any ?more|any longer|now|took|taken|off)\b")
SAYS_OFF = re.compile(r"\b(?:off|removed|undone|unstrapped)\b", re.IGNORECASE)
# Who dozed off with bands on has not taken them off: "off" of people, of things, and from where somebody sits.
OTHER_OFF = re.compile(
    r"\b(?:dozed?|dozing|nodd?(?:ed|ing)?|drift(?:ed|ing)?|dropp?(?:ed|ing)?|switch(?:ed)?|turn(?:ed)?|shut|showing"
    r"|kicking|goes?|going|went|gone|ran|rang|far|better|badly|well|day|(?:was|got) cut) off\b"
    r"|\b(?:phone|screen|sound|volume|alarm|lights?|tv|telly|radio|heating|line|wifi|power|form|count|i am|i'm|im)"
    r"(?: is| was| went)? off\b"
    r"|\boff (?:to|work|balance|(?:of )?(?:the|my|a) (?:sofa|couch|chair|bed|phone|bench|stool|floor|seat|toilet))\b"
)
DOUBTS = re.compile(
    r"\b(?:not|no|can'?t|cannot|won'?t|isn'?t|aren'?t|doesn'?t|don'?t|didn'?t|wait|later|almost|nearly|soon|half"
    r"|trying|tak(?:e|ing)|gett?(?:ing)?|pull(?:ing)?|should|will|i'?ll|going|how|when|where|what|hold on)\b|\?",
    re.IGNORECASE,
)
ONE = re.compile(r"\b(?:one|1|left|right|first)\b", re.IGNORECASE)
ALL = re.compile(r"\b(?:both|all|too|also|other|and|everything|two)\b", re.IGNORECASE)
AGREES = re.compile(
    r"(?:yes|yep|yeah|yup|ya|y|ok(?:ay)?|okey|k|done|all done|did it|sure|ready|both|👍.?|👌.?|✅|✔.?)[\s.!]*"
)
SAYS_YES = re.compile(r"(?:yes|yep|yeah|yup|y|both|done|all done|both done)[\s.!]*")
NAMED_OFF = re.compile(
    r"\b(?:they|they're|bands?|cuffs?|straps?|both|all)(?: are| is| came)? (?:all |both |now |already )*off\b"
    r"|\b(?:took|taken) (?:them|it|both|the bands?|everything) off\b|\b(?:slipped|fell|came|snapped) off\b"
)
PLAIN_OFF = re.compile(r"\W*(?:all |both |now )*off(?: now)?\W*")
DIGIT = re.compile(r"\d{2,}|\b[02-9]\b")


def taken_off(text: str, *, asked: bool) -> Off:
    """What words say about bands that are to come off. `asked`: they answer "are both off?", so a yes is an off."""
    said = text.strip().casefold().replace("’", "'")
    if STAYS_ON.search(said):
        return Off.STAYS_ON
    if NOT_ON.search(said):
        return Off.BOTH
    if asked and SAYS_YES.fullmatch(said):
        return Off.BOTH
    if AGREES.fullmatch(said):
        return Off.PERHAPS
    if DIGIT.search(said):  # a count, or a correction of one
        return Off.NOT_ABOUT_IT
    return _about_off(said)


def off_unasked(text: str) -> bool:
    """Whether words that nobody asked for name bands that came off ("my form was off" does not)."""
    said = text.strip().casefold().replace("’", "'")
    return NAMED_OFF.search(said) is not None and taken_off(text, asked=False) in (Off.BOTH, Off.ONE)


def says_never_on(text: str) -> bool:
    """Whether the words say that bands that may be on never were; "not on any more" says that they had been."""
    said = text.casefold().replace("’", "'")
    return NEVER_ON.search(said) is not None and ANY_MORE.search(said) is None


def plainly_off(text: str) -> bool:
    """Whether the words are nothing but "off": in the middle of a set that is about the bands."""
    return PLAIN_OFF.fullmatch(text.casefold()) is not None


def _about_off(said: str) -> Off:
    said = OTHER_OFF.sub(" ", said)
    if DOUBTS.search(said):
        return Off.NOT_YET
    if not SAYS_OFF.search(said):
        return Off.NOT_ABOUT_IT
    one_of_them = ONE.search(said) and not ALL.search(said) and len(SAYS_OFF.findall(said)) == 1
    return Off.ONE if one_of_them else Off.BOTH
