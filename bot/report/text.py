"""Lines that fit: words are wrapped by the width their letters really have."""

from functools import cache, lru_cache
from typing import Any


def wrapped(text: str, size: float, width_in: float, *, bold: bool = False) -> list[str]:
    """The text in lines of at most `width_in` inches at `size` pt; a word that is longer alone stands alone."""
    space = width("a b", size, bold=bold) - width("ab", size, bold=bold)
    lines: list[str] = []
    used = 0.0
    for word in text.replace(" %", "\u00a0%").split(" "):
        wide = width(word, size, bold=bold)
        if lines and used + space + wide <= width_in:
            lines[-1], used = f"{lines[-1]} {word}", used + space + wide
        else:
            lines.append(word)
            used = wide
    return lines


def cut(text: str, size: float, width_in: float, *, bold: bool = False) -> str:
    """One line, shortened at its end until it fits."""
    if width(text, size, bold=bold) <= width_in:
        return text
    while text and width(f"{text}…", size, bold=bold) > width_in:
        text = text[:-1]
    return f"{text.rstrip()}…"


def width(text: str, size: float, *, bold: bool = False) -> float:
    """The width of a line in inches."""
    from matplotlib import rcParams

    return _points(text, bold, tuple(rcParams["font.family"])) * size / FONT_PT / 72


FONT_PT = 100.0  # measured once at this size


@lru_cache(maxsize=4096)  # the words of a page come again and again
def _points(text: str, bold: bool, families: tuple[str, ...]) -> float:
    points: float = _measure().get_text_width_height_descent(text, _font(bold, families), ismath=False)[0]
    return points


@cache
def _measure() -> Any:
    from matplotlib.textpath import TextToPath

    return TextToPath()


@cache
def _font(bold: bool, families: tuple[str, ...]) -> Any:
    from matplotlib.font_manager import FontProperties

    return FontProperties(family=list(families), size=FONT_PT, weight="bold" if bold else "normal")
