"""Loads as the client reads them on the dumbbell: an exact number and its unit.

Kilograms and pounds are never mixed in one plan; `kilograms` exists for computing only, so what is shown
is always the number that stands on the plate.
"""

from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from enum import StrEnum

# International avoirdupois pound, exact by definition (NIST Special Publication 811, appendix B.8).
KG_PER_LB = Decimal("0.45359237")


class Unit(StrEnum):
    """Stored values: add freely, never rename."""

    KG = "kg"
    LB = "lb"


@dataclass(frozen=True, slots=True, order=False)
class Load:
    """A load of `value` (zero or more) in `unit`. Raises ValueError for a value that is no load."""

    value: Decimal
    unit: Unit = Unit.KG

    def __post_init__(self) -> None:
        if not self.value.is_finite() or self.value < 0:
            raise ValueError(f"load: {self.value} is not a load")

    @property
    def kilograms(self) -> float:
        """The load in kg, for computing; never for showing."""
        factor = KG_PER_LB if self.unit is Unit.LB else Decimal(1)
        return float(self.value * factor)

    def __str__(self) -> str:
        return f"{plain(self.value)} {self.unit}"


def load_from_text(text: str) -> Load:
    """The load that `str` wrote: "12.5 kg". Raises ValueError for any other text."""
    value, _, unit = text.partition(" ")
    try:
        return Load(Decimal(value), Unit(unit))
    except InvalidOperation:
        raise ValueError(f"load: {text!r} is no stored load") from None


def plain(value: Decimal) -> str:
    """The shortest exact writing: 12.50 -> "12.5", 10 -> "10"."""
    text = f"{value:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
