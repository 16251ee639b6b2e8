"""Words to "How is it now?": better, or not. Whatever leaves a doubt is not better."""

import re

from conversations.answers import Reply, Unclear, Why, yes_no
from conversations.answers.taken_off import Off, taken_off
from conversations.stopwords import read
from conversations.stopwords.kinds import Kind
from conversations.stopwords.unread import worth_asking

BETTER, WORSE = "better", "worse"
_NOT = r"(?:not|isn'?t|aren'?t|hasn'?t|haven'?t|won'?t|doesn'?t|don'?t|didn'?t)\s+(?:\w+\s+){0,2}"
_GOOD = r"(?:better|gone|going|good|fine|ok(?:ay)?|well|changed|normal|over|improv\w+|eas\w+|feel\w*)"
SAYS_WORSE = re.compile(
    rf"\b(?:same|worse|unchanged|still|stays?|no (?:better|change|different|difference|improvement)|{_NOT}{_GOOD})\b",
    re.IGNORECASE,
)

# --- better: nothing but these words ---
# "All over my leg" or "well, I can't move it" have such a word in them, too: any word that is not here leaves a doubt.
WELL = frozenset(
    "better good great fine ok okay well normal improved improving improves eased easing eases alright".split()
)
# Feeling or strength that is gone is no good news; a sign that is gone is.
GONE = frozenset("gone passed disappeared vanished away".split())
SIGNS = frozenset(
    "numb numbness tingling tingle tingles pain ache burning burn cramp cramping dizziness swelling nausea".split()
)
BODY = frozenset(
    "arm arms leg legs foot feet hand hands finger fingers toe toes thigh calf knee head skin colour color".split()
    + "feeling sensation strength".split()
)
BESIDE = frozenset(
    "a the it it's its is are was were has have had been be went going goes getting got all everything i i'm im i've"
    " am feel feels felt my your both whole much very so quite pretty really almost nearly mostly completely totally"
    " entirely lot bit little far again already now today just even also too and in of on at for since after than"
    " before that this they thanks thank you coach yes yeah yep no not none longer more any anymore again quickly"
    " slowly every each minute minutes second seconds band bands off".split()
)
LIKE = (  # in plainer words
    (re.compile(r"pins (?:and|&|n) needles"), "tingling"),
    (re.compile(r"\bback to (?:normal|usual)|\bas (?:usual|always|normal)\b"), "normal"),
    (re.compile(r"(?:\bis|'s|\bits) (?:all )?over(?: now)?(?=\W*$)"), " is gone"),
)
WORD = re.compile(r"[^\W\d_]+(?:'[a-z]+)?")


def says_better(text: str) -> bool:
    """Whether it says so and nothing else."""
    flat = " ".join(text.casefold().replace("\u2019", "'").split())
    for phrase, plain in LIKE:
        flat = phrase.sub(plain, flat)
    said = set(WORD.findall(flat))
    if said - WELL - GONE - SIGNS - BODY - BESIDE:
        return False
    return bool(said & WELL) or (bool(said & GONE) and (bool(said & SIGNS) or not said & BODY))


SAYS_FINE = re.compile(
    r"\b(?:all|im|i'm|i am|everything(?:'s| is)?|feel|feeling)\s+(?:\w+\s+)?(?:good|fine|ok(?:ay)?|well|normal)\b"
    r"|\bnothing(?:'s| is)? wrong\b|^\W*(?:fine|good)\b",
    re.IGNORECASE,
)
# "Fine, but it's spreading": what is fine is not all.
AND_NOT_ALL = re.compile(
    r"\b(?:but|except|apart|aside|although|though|however|can'?t|cannot|couldn'?t|just (?:my|the|a (?:bit|little)))\b",
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


def tells_something_else(text: str) -> bool:
    """Whether words in place of "off" may be a sign that raises no alert of its own: "please help me"."""
    own = read(text).while_training not in (Kind.NONE, Kind.UNSURE)
    return not own and taken_off(text, asked=True) is Off.NOT_ABOUT_IT and worth_asking(text, near=True)


def off_and_fine(text: str) -> bool:
    """ "Bands off now, all normal"."""
    against = SAYS_WORSE.search(text) or AND_NOT_ALL.search(text.replace("\u2019", "'"))
    return tells_off(text) and not against and SAYS_FINE.search(text) is not None


def how_is_it(text: str) -> str:
    """BETTER or WORSE. Raises `Unclear` for words that say neither, such as "bands off now"."""
    if off_and_fine(text):
        return BETTER
    if tells_off(text):
        raise Unclear(Why.NOT_AN_OPTION)
    if SAYS_WORSE.search(text) or read(text).kind is not Kind.NONE:
        return WORSE
    if says_better(text):
        return BETTER
    if yes_no(text) in (Reply.NO, Reply.NOT_SURE):
        return WORSE
    raise Unclear(Why.NOT_AN_OPTION)  # "yes" to "how is it"
