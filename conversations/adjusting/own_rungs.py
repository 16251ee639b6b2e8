"""A height or lean that the ladder does not have: "hands 45 cm", "lean 50 degrees"."""

import re
from dataclasses import replace

from conversations.answers import Unclear, Why
from conversations.answers.lexing import normal
from core.bodyweight import HANDS_UP, ROW_LEAN, rung_named
from core.movements import with_rung
from core.plans import Exercise

NUMBER = r"(?P<number>\d{1,2}(?:\.\d)?)"
TYPED = {
    "push_up": (
        re.compile(rf"hands?(?: at| on| up)* ?{NUMBER} ?cm(?: up| high)?"),
        "hands {} cm up",
        HANDS_UP,
    ),
    "suspended_row": (
        re.compile(rf"(?:lean(?:ing)?(?: back)?) ?{NUMBER} ?(?:degrees?|deg|°)"),
        "lean {} degrees",
        ROW_LEAN,
    ),
}


def read(one: Exercise, text: str) -> str | None:
    """The name of the rung meant; None: no height or lean was typed. Raises `Unclear` where nobody measured."""
    typed, named, measured = TYPED.get(one.movement, (None, "", {}))
    found = typed.fullmatch(normal(text)) if typed is not None else None
    if found is None:
        return None
    name = named.format(f"{float(found['number']):g}")
    low, high = min(measured), max(measured)
    if name not in {rung.name for rung in one.rungs} and not low <= float(found["number"]) <= high:
        raise Unclear(Why.TOO_HIGH, int(low), int(high))
    return name


def at(one: Exercise, name: str) -> Exercise:
    """The movement at this rung, which joins the ladder where it was not on it."""
    own = None if name in {rung.name for rung in one.rungs} else rung_named(name)
    return replace(one, rung=name, rungs=one.rungs if own is None else with_rung(one.rungs, own))


def is_new(one: Exercise, name: str) -> bool:
    """Whether its fraction of body mass is taken from between the measured ones."""
    return name not in {rung.name for rung in one.rungs} and rung_named(name) is not None
