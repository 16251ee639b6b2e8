"""How somebody is reached: numbers and names as they are typed in the first talk. "Skip" is none of them."""

import re

from conversations.answers import Unclear, Why

SKIPPED = frozenset({"skip", "no", "none", "nobody"})
SHORTEST_NUMBER, LONGEST_NUMBER = 2, 15  # digits; 15 at most in ITU-T E.164, from memory
LONGEST = 200
SHORTEST_PHONE = 5  # digits; own judgement, no source
PHONE = re.compile(r"\+?[0-9 ()./-]+")
YES_FIRST = re.compile(r"^yes\b[ ,.:-]*", re.IGNORECASE)
# "sometimes my daughter" is read back as "Daughter types for you", and to the coach "for them".
BEFORE_NAME = re.compile(r"^(?:(?:only|sometimes|often|usually|mostly|my)[ ,]+)+", re.IGNORECASE)
HELPS = re.compile(r" (?:types|does|helps|writes)\b.*$", re.IGNORECASE)


def plain(text: str) -> str:
    """The words on one line; "" for "skip". Raises `Unclear` when there are none."""
    said = " ".join(text.split())[:LONGEST]
    if not said:
        raise Unclear(Why.EMPTY)
    return "" if said.lower().rstrip(".!") in SKIPPED else said


def number(text: str) -> str:
    """A number to call in an emergency; "skip" is none, for it is shown when seconds count. Raises `Unclear`."""
    figures = re.findall(r"[0-9]+", text)
    if re.search(r"[^\w\s+()/.,:;-]", text):
        raise Unclear(Why.NOT_A_NUMBER)
    if not SHORTEST_NUMBER <= len("".join(figures)) <= LONGEST_NUMBER:
        raise Unclear(Why.NOT_A_NUMBER)
    return plain(text)


def phone(text: str) -> str:
    """A number to ring; "" for "skip". Raises `Unclear` for anything that cannot be dialled."""
    said = plain(text)
    figures = re.sub(r"[^0-9]", "", said)
    if said and (not PHONE.fullmatch(said) or not SHORTEST_PHONE <= len(figures) <= LONGEST_NUMBER):
        raise Unclear(Why.NOT_A_NUMBER)
    return said


def has_figures(said: str) -> bool:
    """Whether there is something to dial in it."""
    return any(sign.isdigit() for sign in said)


def whom_to_ring(named: str, said: str) -> str:
    """A name with its number, from one answer or from two: the name, and what was said when its number was asked for."""
    if not has_figures(said):
        return named
    return said if any(sign.isalpha() for sign in said) else f"{named} {said}".strip()


def who_types(text: str) -> str:
    """The helper's name out of "yes, my daughter Ana types". Raises `Unclear` when no letter is in it."""
    name = HELPS.sub("", BEFORE_NAME.sub("", YES_FIRST.sub("", " ".join(text.split()))))
    if not any(sign.isalpha() for sign in name):
        raise Unclear(Why.EMPTY)
    name = name.lstrip(" ,").rstrip(" ,.!")
    return plain(name[:1].upper() + name[1:])
