"""Is something wrong right now? Yes, no, or: nothing is, and the words are for the coach."""

import re

from conversations.answers import Reply, Unclear, Why, choice, yes_no
from conversations.protocol import Choice
from conversations.stopwords import read
from conversations.stopwords.kinds import Kind
from conversations.training.getting_better import (
    AND_NOT_ALL,
    is_mere_ok,
    off_and_fine,
    says_fine,
    tells_off,
)
from conversations.words import trouble as words

SEND = "send"  # stored
SENDS = re.compile(r"\W*(?:please )?send(?: it| that)?(?: please)?\W*$", re.IGNORECASE)
# Tired and shaky is what sets do; it is a no only after a no, and where nothing else is said.
JUST_TIRED = re.compile(
    r"\W*(?:no|nope|nah)\b[\s,.!]*(?:(?:i'?m|it'?s|they'?re|that'?s|my|the|legs?|arms?|muscles?|are|is|just|only|a|bit"
    r"|little|very|quite|so|ok|fine|all|and)[\s,.]+)*(?:tired|shaky|shaking|trembling|worn out|hard work)\b"
    r"(?:[\s,.]+(?:and|a|bit|tired|shaky|legs?|arms?|muscles?|that'?s|is|it|all|now|thanks))*\W*",
    re.IGNORECASE,
)
WRONG = (Choice(words.WRONG_YES, "yes"), Choice(words.WRONG_NO, "no"))


def options(reader: str) -> tuple[Choice, ...]:
    """The buttons; `reader`: the coach to whom the words can go, "": nobody."""
    return (*WRONG, Choice(words.WRONG_SEND.format(coach=reader), SEND)) if reader else WRONG


def answer(text: str, reader: str) -> str:
    """ "yes", "no" or SEND. A second cry, or "not sure", is a yes; "ok", "bands off", "fine, but" are neither.

    Raises `Unclear`.
    """
    no_mere_ok(text)
    if tells_off(text):  # what is asked is still open, unless they say so
        if off_and_fine(text):
            return "no"
        raise Unclear(Why.MERE_OK)
    if reader and SENDS.match(text):
        return SEND
    try:
        return choice(text, options(reader))
    except Unclear:
        if read(text).kind is not Kind.NONE:
            return "yes"
        if says_fine(text) and AND_NOT_ALL.search(text.replace("\u2019", "'")):
            raise
        if says_fine(text) or JUST_TIRED.fullmatch(text.replace("\u2019", "'")):
            return "no"
        return _yes_or_no(text)


def _yes_or_no(text: str) -> str:
    """By whole phrases; "not sure" is a yes. Raises `Unclear`, about the two buttons there are."""
    try:
        return "no" if yes_no(text) is Reply.NO else "yes"
    except Unclear:
        raise Unclear(Why.MERE_OK) from None


def no_mere_ok(text: str) -> None:
    """Raises `Unclear` where "ok" may only say that the words before were read."""
    if is_mere_ok(text):
        raise Unclear(Why.MERE_OK)


def in_words(text: str, buttons: tuple[Choice, ...]) -> str:
    """What was typed, or what stands on the button that was tapped."""
    return next((one.label for one in buttons if one.value == text), text)
