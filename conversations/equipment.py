"""What somebody has to train with: loads, or exercise bands; typed, kept as text, and read again."""

from conversations import exercise_bands
from conversations.owned_loads import loads_from_text, read_owned, to_text
from core.templates import Owned


def typed(text: str) -> str:
    """As a draft keeps it; loads without a unit stay so until it is said. Raises `Unclear`."""
    bands = exercise_bands.read_bands(text)
    return to_text(*read_owned(text)) if bands is None else exercise_bands.to_text(bands)


def kept(stored: str) -> Owned:
    """What `typed` wrote, the lightest first; () while the unit of loads is not known."""
    return exercise_bands.bands_from_text(stored) or loads_from_text(stored)
