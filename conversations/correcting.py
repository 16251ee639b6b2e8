"""How people correct a number: "no, 31", "31 I meant", "31*", "no, set 1 was 21", "12,5" that is no half rep."""

import re

BEHIND = re.compile(
    r"(?<=[\da-z])[\s,.;:-]*(?:\*+|\b(?:sorry|oops|i meant?|actually|my mistake|correction|typo|rather)\b)[\s.!*]*$",
    re.IGNORECASE,
)
STATES = re.compile(r"^\s*(?:it|that) was\s+\d+\W*$", re.IGNORECASE)
STARRED = re.compile(r"^\s*\*+\s*(?=\d)")
PREFACE = re.compile(
    r"^\s*(?:(?:no|nope|nah|sorry|oops|wait|hang on|correction|correct that|actually|wrong|my mistake|typo|i meant?"
    r"|it was|that was|make (?:it|that)|should be)\b[\s,.:;!-]*)+",
    re.IGNORECASE,
)
NAMED_SET = re.compile(
    r"\b(?:set|round)\s*(?P<no>\d)\b\s*(?:was|is|were|had|should be|to|:|=|,|-)*\s*"
    r"(?P<counts>(?:(?:left|right|l|r)\b\W*)?\d.*)$",
    re.IGNORECASE,
)
INSTEAD = re.compile(r"[\s,]*\b(?:not|instead of|rather than)\s+\d{1,3}\b[\s.!]*", re.IGNORECASE)
SAID_REPS = re.compile(r"(?<![\d.,])(\d{1,3})\s*(?:clean\s+)?reps?\b", re.IGNORECASE)
HALF = re.compile(r"\s*\d{1,3},\d{1,2}\s*")


def is_correction(text: str) -> bool:
    """Whether the words begin or end as a correction does: "no, 17", "17 I meant", "17*"."""
    behind = BEHIND.search(text) is not None and any(sign.isdigit() for sign in text)
    instead = INSTEAD.search(text) is not None and text.strip()[0].isdigit()
    return behind or instead or PREFACE.match(text) is not None or STARRED.match(text) is not None


def takes_back(text: str) -> bool:
    """Whether a correction takes something back: "it was 17" may as well be a first answer."""
    return is_correction(text) and STATES.match(text) is None


def without_preface(text: str) -> str:
    """The words after "no, wait, it was", and before "I meant"."""
    return BEHIND.sub("", INSTEAD.sub("", PREFACE.sub("", STARRED.sub("", BEHIND.sub("", text)))))


def number_instead(text: str) -> str | None:
    """The one number of a correction that says nothing else; None: it is none, or says more."""
    rest = without_preface(text).strip(" .!")
    return rest if is_correction(text) and rest.isdecimal() else None


def named_set(text: str) -> tuple[int, str] | None:
    """The set that is named and the words with its count; None: no set is named with one."""
    found = NAMED_SET.search(text)
    return None if found is None else (int(found["no"]), INSTEAD.sub("", found["counts"]))


def only_reps(text: str) -> str:
    """Of words around exactly one "31 reps", the number; else the words as they are."""
    found = SAID_REPS.findall(text)
    return found[0] if len(found) == 1 and len(re.findall(r"\d+", text)) == 1 else text
