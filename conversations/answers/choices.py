"""Typed words for what is also on a button: yes and no, and one of several options."""

from collections.abc import Sequence
from enum import StrEnum

from conversations.answers.lexing import phrases, vocabulary, words
from conversations.answers.unclear import Unclear, Why
from conversations.protocol import Choice


class Reply(StrEnum):
    """An answer to a yes-or-no question. Stored."""

    YES = "yes"
    NO = "no"
    NOT_SURE = "not sure"


YES = phrases(
    "yes, y, ye, yea, yeah, yeh, yep, yup, yes i do, yes i have, yes i did, yes i am, yes it is, yes it does",
    "yes they are, i do, i have, i did, i am, it is, it does, sure, of course, absolutely, definitely",
    "certainly, correct, true, ok, okay, yes yes, yes sure, yes of course",
)
NO = phrases(
    "no, n, nope, nah, na, no i dont, no i do not, no i havent, no i have not, no i didnt, no i did not",
    "no im not, no i am not, no it isnt, no it doesnt, i dont, i do not, i havent, i have not, i didnt",
    "i did not, im not, never, no never, not at all, no not at all, none, no none, no no, false",
    "certainly not, definitely not, of course not, absolutely not, none of these",
    "none of those, none of them, none of the above, no to all, no to all of them",
    "no none of these, no none of them, nope none of these, nope none of them",
)
NOT_SURE = phrases(
    "not sure, im not sure, i am not sure, unsure, not certain, dont know, i dont know, i do not know, dunno",
    "idk, no idea, no clue, maybe, perhaps, possibly, probably, probably not, i think so, i dont think so",
    "not really, sometimes, kind of, sort of, yes and no, cant say, hard to say, dont remember",
    "dont know it, not that i know, not that i know of, not as far as i know, no idea what it is",
    "i dont remember, cant remember, i cant remember, yes maybe, maybe yes, maybe no, no maybe",
)
POLITE = vocabulary("please thanks thank you coach um uh well hi hello")


def yes_no(text: str) -> Reply:
    """Yes, no or not sure, by whole phrases only.

    Raises `Unclear`, with `Why.SAID_MORE` when a yes or no came with more that somebody should read.
    """
    said = _without_politeness(text)
    for known, reply in ((YES, Reply.YES), (NO, Reply.NO), (NOT_SURE, Reply.NOT_SURE)):
        if said in known:
            return reply
    first = said.partition(" ")[0]
    raise Unclear(Why.SAID_MORE if first in YES | NO and first != said else Why.NOT_YES_OR_NO)


def _without_politeness(text: str) -> str:
    said = words(text).replace(".", " ").split()
    return " ".join(word for word in said if word not in POLITE)


NEGATIONS = vocabulary("no not never none without cant cannot dont doesnt didnt isnt arent wasnt wont havent")
SHORTEST_START = 3  # letters of a label that stand for it when no other label begins so
SHORTEST_WITH_SLIP = 5  # letters a label needs before one slip is forgiven; "warm" and "worm" are too near


def choice(text: str, options: Sequence[Choice]) -> str:
    """The value of the option meant, by its value, its label, its beginning or its label with one slip.

    Case, spaces and punctuation do not matter. A slip never touches the first letter, a figure or a
    negation, so "light" is not "right". Raises `Unclear` when none fits or more than one does; nothing is
    picked by nearness.
    """
    for option in options:
        if text == option.value:
            return option.value
    said = _flat(text)
    for fits in (_same, _begins, _slipped):
        fitting = {option.value for option in options if said and fits(said, _flat(option.label))}
        if len(fitting) == 1:
            return fitting.pop()
        if fitting:
            raise Unclear(Why.WHICH_OPTION, options=[option.label for option in options])
    raise Unclear(Why.NOT_AN_OPTION, options=[option.label for option in options])


def _flat(text: str) -> str:
    return words(text).replace(".", "").replace("_", " ").strip()


def _same(said: str, label: str) -> bool:
    return said == label or said.replace(" ", "") == label.replace(" ", "")


def _begins(said: str, label: str) -> bool:
    """The start of the label, with every negation it has ("can" is not "can't see") and no half figure."""
    if len(said) < SHORTEST_START or not label.startswith(said) or said[-1].isdigit():
        return False
    return _negations(said) == _negations(label)


def _slipped(said: str, label: str) -> bool:
    if len(label) < SHORTEST_WITH_SLIP or said[0] != label[0]:
        return False
    figures = [sign for sign in said if sign.isdigit()] == [sign for sign in label if sign.isdigit()]
    return figures and _negations(said) == _negations(label) and _one_slip(said, label)


def _negations(text: str) -> frozenset[str]:
    return NEGATIONS & set(text.split())


def _one_slip(said: str, label: str) -> bool:
    """Whether one letter was missed, added, changed, or swapped with its neighbour."""
    start = next((at for at, pair in enumerate(zip(said, label, strict=False)) if pair[0] != pair[1]), None)
    if start is None:
        return abs(len(said) - len(label)) == 1
    rest, wanted = said[start:], label[start:]
    swapped = rest[:2] == wanted[1::-1] and rest[2:] == wanted[2:]
    return swapped or rest[1:] == wanted[1:] or rest == wanted[1:] or rest[1:] == wanted


def pick(text: str, shown: Sequence[Choice], typed: Sequence[Choice] = ()) -> str:
    """The value of the option meant; `typed` are words for options that stand on no button. Raises `Unclear`."""
    try:
        return choice(text, shown)
    except Unclear as problem:
        flat = text.strip().casefold().rstrip(".!")
        known = {one.label: one.value for one in typed}
        if flat in known:
            return known[flat]
        raise problem from None
