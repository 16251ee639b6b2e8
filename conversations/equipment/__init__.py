"""What somebody has to train with: loads, or exercise bands; typed, kept as text, and read again."""

from conversations.equipment import exercise_bands
from conversations.equipment import loads as owned_loads
from conversations.equipment.loads import loads_from_text, read_owned, to_text
from core.plans import Rung
from core.templates import Owned
from core.units import Load, Unit


def typed(text: str, unit: Unit | None = None) -> str:
    """As a draft keeps it; `unit` where none is said (None: it stays open until it is). Raises `Unclear`."""
    bands = exercise_bands.read_bands(text)
    if bands is not None:
        return exercise_bands.to_text(bands)
    numbers, said = read_owned(text)
    return to_text(numbers, said or unit)


def listed(owned: Owned) -> str:
    """As one would type it: "4, 6, 8 kg", "bands: yellow, red"."""
    loads = tuple(one for one in owned if isinstance(one, Load))
    bands = [one for one in owned if isinstance(one, Rung)]
    return owned_loads.listed(loads) if loads else exercise_bands.listed(bands)


def kept(stored: str) -> Owned:
    """What `typed` wrote, the lightest first; () while the unit of loads is not known."""
    return exercise_bands.bands_from_text(stored) or loads_from_text(stored)
