"""The tables of the IANA time zone database, and names of places as people might type them."""

import re
import unicodedata
from functools import cache
from importlib import resources

from conversations.answers.lexing import normal

LEADING = re.compile(r"^(?:i am |im |i live |living )?(?:in |near |at )")


@cache
def rows(table: str) -> tuple[tuple[str, ...], ...]:
    """The rows of "zone.tab" and its like, split into columns."""
    text = resources.files("tzdata.zoneinfo").joinpath(table).read_text("utf-8")
    return tuple(tuple(line.split("\t")) for line in text.splitlines() if line and not line.startswith("#"))


def flat(text: str) -> str:
    """Small letters without accents, dots and underscores: "São Paulo" and "sao_paulo" are one name."""
    bare = "".join(sign for sign in unicodedata.normalize("NFKD", normal(text)) if sign.isascii())
    spaced = re.sub(r"[._'!?]", lambda found: " " if found[0] == "_" else "", bare)
    return LEADING.sub("", " ".join(spaced.split()))
