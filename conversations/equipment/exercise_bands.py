"""Typed exercise bands, easiest first: "bands: yellow, red, black".

These are the ones that are pulled against. They are told by colour or name, the restriction bands by letter, so
a single letter is no name here.
"""

import re
from collections.abc import Sequence

from conversations.answers import Unclear, Why, pick
from conversations.answers.lexing import normal
from conversations.protocol import Choice
from core.plans import Rung
from core.resistance import BAND

STORED = "bands:"  # before the names, where a draft keeps what somebody owns
MOST = 10  # bands; own choice
KINDS = r"(?:(?:exercise|elastic|resistance|rubber|training) )*bands?"
ORDER = r"(?:,? ?\(?(?:from )?(?:the )?(?:easiest|lightest)(?: (?:first|to (?:the )?(?:hardest|heaviest)|up))?\)?)?"
BEFORE = re.compile(rf"{KINDS}{ORDER} ?[:=-]? ?(?P<names>.+)")
AFTER = re.compile(rf"(?P<names>.+?) (?:{KINDS.replace('bands?', 'bands')}){ORDER}")
APART = re.compile(r" ?[,;/<>|→+] ?(?:and |then )?| (?:and|then) ")
NAME = re.compile(r"[^\W_][\w .'-]{1,23}")


def read_bands(text: str) -> tuple[str, ...] | None:
    """Names in the order told, as they are shown ("red band"); None: no bands are meant. Raises `Unclear`."""
    said = normal(text).strip(" .!")
    found = BEFORE.fullmatch(said) or AFTER.fullmatch(said)
    if found is None:
        return None
    parts = [_short(part) for part in APART.split(found["names"]) if part.strip(" .")]
    names = parts if len(parts) > 1 else found["names"].split()
    return _checked([f"{_short(name)}{BAND}" for name in names])


def _short(name: str) -> str:
    """ "the red band" -> "red"."""
    return name.strip(" .").removeprefix("the ").removesuffix(BAND).strip()


def _checked(names: list[str]) -> tuple[str, ...]:
    good = all(NAME.fullmatch(name.removesuffix(BAND)) and _has_letters(name) for name in names)
    if not 0 < len(names) <= MOST or not good or len(set(names)) < len(names):
        raise Unclear(Why.NOT_BANDS)
    return tuple(names)


def _has_letters(name: str) -> bool:
    return sum(sign.isalpha() for sign in name.removesuffix(BAND)) > 1


def to_text(names: Sequence[str]) -> str:
    """As a draft keeps it: "bands:yellow band|red band"."""
    return STORED + "|".join(names)


def bands_from_text(stored: str) -> tuple[Rung, ...]:
    """The rungs that `to_text` wrote, easiest first; (): no bands are kept there."""
    names = stored.removeprefix(STORED).split("|") if stored.startswith(STORED) else []
    return tuple(Rung(name) for name in names)


def listed(rungs: Sequence[Rung]) -> str:
    """As one would type them: "bands: yellow, red"."""
    return f"{STORED} {', '.join(rung.name.removesuffix(BAND) for rung in rungs)}"


def choices(rungs: Sequence[Rung]) -> tuple[Choice, ...]:
    """A button for each band."""
    return tuple(Choice(rung.name, rung.name) for rung in rungs)


def read_band(text: str, rungs: Sequence[Rung]) -> str:
    """One of the bands, by "red" or "red band". Raises `Unclear`."""
    short = tuple(Choice(rung.name.removesuffix(BAND), rung.name) for rung in rungs)
    return pick(text, choices(rungs), short)
