"""Letters that can be drawn: those of DejaVu Sans, which comes with matplotlib, and of whatever fonts the machine has.

What no font has would be drawn as a box. A name in such letters gives way to the client's number.
"""

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from typing import Any

USUAL = "DejaVu Sans"
BOXES = ("Last Resort", ".LastResort")  # fonts that have a box for every sign
PLAIN_BELOW = "\u0530"  # Latin, Greek and Cyrillic letters: always there
GAP = "…"  # for letters within a text that cannot be drawn


def plain(text: str) -> bool:
    """Whether nothing has to be looked for: fonts are read by matplotlib, which takes half a second to load."""
    return all(sign < PLAIN_BELOW for sign in text)


def named(name: str, code: str) -> str:
    """The name, without signs such as emoji that no font has; `code` where a letter of it is missing."""
    lost = [sign for sign in name if not _can(sign)]
    kept = " ".join("".join(sign for sign in name if _can(sign)).split())
    letters = any(sign.isalnum() for sign in kept)
    return kept if letters and not any(sign.isalpha() for sign in lost) else code


def writable(text: str) -> str:
    """The text with "…" in the place of words that no font has; other signs without a font are left out."""
    if plain(text):
        return text
    marked = "".join(sign if _can(sign) else GAP if sign.isalpha() else "" for sign in text)
    return " ".join(re.sub(rf"{GAP}+", GAP, marked).split(" ")).strip()


def in_letters(value: Any) -> Any:
    """The same plain data with every text `writable`."""
    match value:
        case str():
            return writable(value)
        case dict():
            return {key: in_letters(one) for key, one in value.items()}
        case list() | tuple():
            return [in_letters(one) for one in value]
        case _:
            return value


def families(value: Any) -> list[str]:
    """The fonts that the texts in plain data need, the usual one first; for matplotlib's "font.family"."""
    signs = {sign for text in _texts(value) if not plain(text) for sign in text}
    others = (_font_with(sign) for sign in sorted(signs))
    return [USUAL, *dict.fromkeys(name for name in others if name not in (None, USUAL))]


# --- who stands in a picture under another name -----------------------------------------------------------
def codes(kind: str, body: dict[str, Any]) -> dict[str, str]:
    """Number to name of those in a letter's picture whose name needs a look at the fonts."""
    if kind == "chart":
        panels = body["chart"]["panels"]
        found = {panel["code"]: panel["title"].partition(": ")[0] for panel in panels if "code" in panel}
    else:
        found = {body["code"]: body["name"]} if "code" in body else {}
    return {code: name for code, name in found.items() if not plain(name)}


def unwritable(names: dict[str, str]) -> list[str]:
    """Whose numbers stand for their names."""
    return [code for code, name in names.items() if named(name, code) == code]


# --- fonts --------------------------------------------------------------------------------------------------
def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    inside = value.values() if isinstance(value, dict) else value if isinstance(value, list | tuple) else ()
    for one in inside:
        yield from _texts(one)


def _can(sign: str) -> bool:
    return sign.isspace() or plain(sign) or _font_with(sign) is not None


@lru_cache(maxsize=4096)
def _font_with(sign: str) -> str | None:
    """The family of the first font that has this sign; None: no font has."""
    return next((family for family, file in _fonts() if _has(file, sign)), None)


@cache
def _fonts() -> tuple[tuple[str, str], ...]:
    """(family, file) of each upright font of usual weight, the usual one first."""
    from matplotlib import font_manager

    usual = (USUAL, font_manager.findfont(USUAL))
    others = sorted(
        (one.name, one.fname)
        for one in font_manager.fontManager.ttflist
        if one.style == "normal" and str(one.weight) in ("400", "normal", "regular", "book")
        and not one.name.startswith(BOXES)
    )  # fmt: skip
    return (usual, *others)


def _has(file: str, sign: str) -> bool:
    """Whether a font's file has an outline for it. A file that cannot be read has none, nor has one of small pictures."""
    from matplotlib import font_manager

    try:
        font = font_manager.get_font(file)
        return bool(font.scalable and font.get_char_index(ord(sign)))
    except (OSError, RuntimeError, ValueError):
        return False
