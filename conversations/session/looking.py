"""The look at one limb: the spot, a fingernail where skin hides it, else warmth and feeling. Never guessed."""

import re

from conversations.answers import Unclear, Why, choice, pick, seconds
from conversations.answers.lexing import normal
from conversations.protocol import Choice, Say
from conversations.session.state import Phase, State, banded_limbs, choices, say
from conversations.words import session as words
from conversations.words import session_typed
from core.cuffs import Refill
from core.plans import Region

ABOUT = re.compile(r"\b(?:abt|about|approx\w*|around|roughly|maybe)\b\.?|~", re.IGNORECASE)
UNDER_2 = re.compile(r"(?:und\w{1,3}|less than|below|<)\s*(?:2s?|two)\b(?![.,]\d)", re.IGNORECASE)
QUICK = re.compile(
    r"\W*(?:very |really |so )?(?:quick(?:ly)?|fast|instant(?:ly)?|immediate(?:ly)?|(?:straight|right) away|at once)\W*"
)
SLOW = re.compile(
    r"\W*(?:(?:very|too|quite|rather|a bit) )?slow(?:ly)?\W*"
    r"|\W*(?:more than|over|above|longer than|>) ?(?:3|three) ?(?:s|secs?|seconds?)?\W*"
)
BETWEEN = re.compile(
    r"(\d+(?:[.,]\d+)?) ?s?(?:ec\w*)? ?(?:-|to|or|maybe) ?(\d+(?:[.,]\d+)?)(?: ?s(?:ec\w*)?)?"
)
UNSEEN = re.compile(
    r"\b(?:can'?t|cannot|can not|couldn'?t|could not|don'?t|do not|unable to|hard to|nothing to) "
    r"(?:really |even |quite )?(?:see|tell|find|make)\b"
    r"|\bno (?:pale |white )?spot\b|\b(?:not|isn'?t|in) ?visible\b|\bsee nothing\b|^nothing\b|\btoo dark\b"
    r"|\b(?:dark|black|brown) skin\b|\bskin is (?:\w+ )?(?:dark|black|brown)\b"
    r"|\b(?:painted|polish(?:ed)?|varnish(?:ed)?|gel nails?|fake nails?)\b"
)
# A band that no longer sits where it was closed, and nothing else said with it.
_WHICH = (
    r"(?:(?:sorry|oh|oops|hey|hm+|wait|so|and|ok)[ ,]+)*(?:(?:i think|looks like) )?"
    r"(?:(?:the|my|a|one|this|that|left|right|both|of|arm|leg) )*(?:bands?|cuffs?|straps?|one|it|they)"
)
_JUST = r"(?: (?:just|has|have|is|are|was|again|now|a bit|a little|slightly|keeps?))*"
_LOOSE = r"(?:came|got|gotten|come|is|are|feels?|went|gone)(?: too| a bit| a little| all)? loose|loosened"
_MOVED = rf"slid|slides?|sliding|slipped|slips?|slipping|creeping|crept|rolled|moved down|dropped|{_LOOSE}"
_LIMB = r"on (?:the |my )?(?:left|right)(?: (?:arm|leg|side))?"
_WHERE_TO = rf"down|off|lower|a bit|a little|slightly|too low|out of place|again|now|already|{_LIMB}|in the middle|mid set|by itself"
MOVED = re.compile(rf"{_WHICH}{_JUST} (?:{_MOVED})(?: (?:{_WHERE_TO}))*\W*")
REFILLS = tuple(Choice(label, value.value) for value, label in words.REFILL_LABELS.items())
NAILS = (*REFILLS[:3], Choice(words.CANT_SEE_NAIL, Refill.CANT_SEE.value))
WARM = choices(words.WARM_LABELS)
WARM_TYPED = choices(session_typed.WARM_TYPED)
DIFFERENT = re.compile(
    r"\b(?:no|not|cool\w*|cold\w*|chill\w*|odd\w*|strange\w*|different|weird|less|isn'?t|doesn'?t)\b"
)


def ask(state: State) -> Say:
    """Where to look at the limb whose turn it is."""
    limb, region = words.LIMBS[banded_limbs(state)[state.limb]], state.doing.region
    match state.phase:
        case Phase.REFILL:
            text = words.REFILL.format(limb=limb, spot=words.SPOT[region])
            if region is Region.ARMS and state.limb == 0:
                text = f"{text} {words.COLD_HAND}"
            return say(text, f"refill.{state.check_id}", *REFILLS)
        case Phase.NAIL if region is Region.ARMS:
            return say(words.CANT_SEE_ARMS.format(limb=limb), f"nail.{state.check_id}", *NAILS)
        case _:
            return say(words.CANT_SEE_LEGS.format(limb=limb), f"{state.phase}.{state.check_id}", *WARM)


def says_moved(text: str) -> bool:
    """Whether the words say that a band slid down or came loose, and nothing more."""
    return MOVED.fullmatch(normal(text)) is not None


def next_look(state: State, text: str) -> Phase | None:
    """The other look that an answer asks for, None: it was seen. On legs there is no nail."""
    if state.phase not in (Phase.REFILL, Phase.NAIL) or _compares(state) or not _unseen(text):
        return None
    return Phase.NAIL if state.phase is Phase.REFILL else Phase.WARMTH


def answer(state: State, text: str) -> str:
    """What is kept of one limb: a refill, "s2.5" seconds, "nail:...", or "same" and "different". Raises `Unclear`."""
    if _compares(state):
        return _compared(text)
    return _refill(text) if state.phase is Phase.REFILL else f"nail:{_refill(text)}"


def _compares(state: State) -> bool:
    """Whether warmth and feeling are asked about."""
    return state.phase is Phase.WARMTH or (state.phase is Phase.NAIL and state.doing.region is Region.LEGS)


def _unseen(text: str) -> bool:
    flat = normal(text)
    if text == Refill.CANT_SEE or UNSEEN.search(flat):
        return True
    try:
        return choice(text, REFILLS) == Refill.CANT_SEE
    except Unclear:
        return False


def _refill(text: str) -> str:
    """A button's value, a label typed, or seconds typed ("2.5")."""
    flat = normal(text)
    if UNDER_2.match(text.strip()) or QUICK.fullmatch(flat):
        return Refill.UNDER_2.value
    if SLOW.fullmatch(flat):
        return Refill.LONGER.value
    if (between := BETWEEN.fullmatch(flat)) is not None:  # the longer one is the safe one
        text = between[2]
    try:
        return choice(text, REFILLS[:3])
    except Unclear:
        return f"s{_seconds(text)}"


def _seconds(text: str) -> float:
    try:
        return seconds(ABOUT.sub("", text), 60)
    except Unclear as problem:
        if problem.reason is not Why.DOES_NOT_KNOW:
            raise
        raise Unclear(Why.NOT_AN_OPTION, options=tuple(words.REFILL_LABELS.values())) from None


def _compared(text: str) -> str:
    """In doubt it is different: "no", "a bit cooler". Raises `Unclear`."""
    try:
        return pick(text, WARM, WARM_TYPED)
    except Unclear as problem:
        if DIFFERENT.search(normal(text)):
            return "different"
        raise Unclear(Why.NOT_AN_OPTION, options=problem.options) from None
