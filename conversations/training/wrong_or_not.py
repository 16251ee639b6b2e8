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
        return "no" if says_fine(text) or yes_no(text) is Reply.NO else "yes"


def no_mere_ok(text: str) -> None:
    """Raises `Unclear` where "ok" may only say that the words before were read."""
    if is_mere_ok(text):
        raise Unclear(Why.MERE_OK)


def in_words(text: str, buttons: tuple[Choice, ...]) -> str:
    """What was typed, or what stands on the button that was tapped."""
    return next((one.label for one in buttons if one.value == text), text)
