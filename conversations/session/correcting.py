"""How people correct a count: "no, 31", "no, set 1 was 21", "sorry, 15 reps", "12,5" that is no half rep."""

import re

PREFACE = re.compile(
    r"^\s*(?:(?:no|nope|nah|sorry|oops|wait|hang on|correction|correct that|actually|wrong|my mistake|typo|i meant?"
    r"|it was|that was|make (?:it|that)|should be)\b[\s,.:;!-]*)+",
    re.IGNORECASE,
)
NAMED_SET = re.compile(
    r"\b(?:set|round)\s*(?P<no>\d)\b\s*(?:was|is|were|had|should be|to|:|=|,|-)*\s*(?P<counts>\d.*)$",
    re.IGNORECASE,
)
INSTEAD = re.compile(r"[\s,]*\b(?:not|instead of|rather than)\s+\d{1,3}\b[\s.!]*", re.IGNORECASE)
SAID_REPS = re.compile(r"(?<![\d.,])(\d{1,3})\s*(?:clean\s+)?reps?\b", re.IGNORECASE)
HALF = re.compile(r"\s*\d{1,3},\d{1,2}\s*")


def is_correction(text: str) -> bool:
    """Whether the words begin as a correction does."""
    return PREFACE.match(text) is not None


def without_preface(text: str) -> str:
    """The words after "no, wait, it was"."""
    return INSTEAD.sub("", PREFACE.sub("", text))


def named_set(text: str) -> tuple[int, str] | None:
    """The set that is named and the words with its count; None: no set is named with one."""
    found = NAMED_SET.search(text)
    return None if found is None else (int(found["no"]), INSTEAD.sub("", found["counts"]))


def only_reps(text: str) -> str:
    """Of words around exactly one "31 reps", the number; else the words as they are."""
    found = SAID_REPS.findall(text)
    return found[0] if len(found) == 1 and len(re.findall(r"\d+", text)) == 1 else text
