"""A person's name, where the record must say who it was."""

import re

from conversations.answers.choices import NO, NOT_SURE, YES
from conversations.answers.lexing import words
from conversations.answers.unclear import Unclear, Why

NOBODY = frozenset(
    """nobody no one noone nothing unknown later pending soon na n/a tbd tba skip pass same forgot yes no not yet none
    any a the my his her their me i myself he she they it doctor doctors dr doc gp clinician physio physiotherapist nurse
    physician surgeon specialist hospital clinic practice said ok okay fine clear cleared dont know today yesterday
    asked asking waiting for from of by is was will tell you""".split()
)
LETTERS = re.compile(r"[^\W\d_]{2,}")


def person_name(text: str, longest: int) -> str:
    """A name with at least one word that is one: "Dr Sol", not "the doctor", "no" or "?". Raises `Unclear`."""
    plain = " ".join(text.split())[:longest]
    said = words(plain).replace(".", " ")
    names = [word for word in LETTERS.findall(plain.casefold()) if word not in NOBODY]
    if said in YES | NO | NOT_SURE or not names:
        raise Unclear(Why.NOT_A_NAME)
    return plain
