"""Which side is weaker and works first, or works alone: asked, kept as text ("left,right", "left"), read again."""

from collections.abc import Collection

from conversations.answers import pick
from conversations.protocol import Choice
from conversations.words import planning as words
from core.plans import Side
from core.stored_names import names_in

KEPT = {"left_only": "left", "right_only": "right"}  # a button's value: what is kept of it, if not the same
SIDES = tuple(Choice(label, value) for label, value in words.SIDES)
TYPED = tuple(Choice(label, value) for label, value in words.SIDES_TYPED)


def choices(open_sides: Collection[Side]) -> tuple[Choice, ...]:
    """A button for each way to work on sides that may wear a band."""
    return tuple(one for one in SIDES if set(kept(_stored(one.value))) <= set(open_sides))


def typed(text: str, shown: tuple[Choice, ...] = SIDES) -> str:
    """As it is kept. Raises `Unclear`."""
    values = {one.value for one in shown}
    return _stored(pick(text, shown, tuple(one for one in TYPED if one.value in values)))


def kept(stored: str) -> tuple[Side, ...]:
    """What `typed` gave, in working order."""
    return tuple(Side(part) for part in names_in(stored))


def _stored(value: str) -> str:
    return KEPT.get(value, value)
