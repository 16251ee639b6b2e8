"""A typed bar with plates: "bar 10 kg, plates 2x1.25 2x2.5"."""

import re
from decimal import Decimal

from conversations.answers import Unclear, Why
from conversations.answers.measures import LOAD_UNITS
from core.resistance import with_plates
from core.units import Unit

NUMBER = r"\d{1,3}(?:\.\d{1,3})?"
UNIT = rf"(?P<unit>{'|'.join(sorted(LOAD_UNITS, key=len, reverse=True))})?"
BAR = re.compile(
    rf"(?:the |a )?(?:bar|barbell|handle|dumbbell handle)s? (?:of )?(?P<bar>{NUMBER}) ?{UNIT}"
    rf"[ ,;+]*(?:and |with )?(?:plates?|discs?)?:? ?(?P<plates>.+)"
)
PLATES = re.compile(rf"(?P<count>\d{{1,2}}) ?[x*×] ?(?P<mass>{NUMBER}) ?{UNIT}[ ,;+]*(?:and )?")


def read_bar(said: str) -> tuple[list[Decimal], list[Unit]] | None:
    """Every load that the bar makes with pairs of its plates, and the units that were said; None: no bar.

    Plates are counted ("2x1.25": one pair), as one a side goes on. Raises `Unclear`, also for an odd one.
    """
    found = BAR.fullmatch(said)
    if found is None:
        return None
    pairs, units = _pairs(found["plates"])
    units += [LOAD_UNITS[found["unit"]]] if found["unit"] else []
    try:
        loads = with_plates(Decimal(found["bar"]), pairs, Unit.KG)
    except ValueError:
        raise Unclear(Why.NOT_A_NUMBER) from None
    return [load.value for load in loads], units


def _pairs(said: str) -> tuple[list[Decimal], list[Unit]]:
    """The mass of one plate of each pair."""
    pairs: list[Decimal] = []
    units: list[Unit] = []
    while said:
        plate = PLATES.match(said)
        if plate is None or int(plate["count"]) % 2:
            raise Unclear(Why.NOT_A_NUMBER)
        pairs += [Decimal(plate["mass"])] * (int(plate["count"]) // 2)
        units += [LOAD_UNITS[plate["unit"]]] if plate["unit"] else []
        said = said[plate.end() :]
    return pairs, units
