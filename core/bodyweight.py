"""Body-weight movements as rungs of known fraction of body mass, where somebody measured it.

Push-up fractions are peak ground forces (Ebben et al. 2011, JSCR 25:2891); they are not mixed with static
ones (Mier et al. 2014, Suprak et al. 2011). Hand heights between the measured ones are interpolated; so are
lean angles of the suspended row. Where nothing is published (hip bridge, split squat) there is an order
only. Names of rungs carry what the client can measure: centimetres and degrees.
"""

import math
import re
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from core.plans import Rung


class Basis(StrEnum):
    """How a fraction is known. Stored."""

    PUBLISHED = "published"
    INTERPOLATED = "interpolated"
    ORDER_ONLY = "order_only"


@dataclass(frozen=True, slots=True)
class Fraction:
    """A fraction of body mass (None: nobody measured it) and how it is known."""

    share: float | None
    basis: Basis


REGULAR, KNEES = 0.64, 0.49  # Ebben et al. 2011, second-hand
# Height of the hands in cm -> fraction, Ebben et al. 2011: 60.96 and 0 second-hand, 30.48 from memory.
HANDS_UP = {0.0: REGULAR, 30.48: 0.55, 60.96: 0.41}
# Height of the feet in cm -> fraction, Ebben et al. 2011: 60.96 second-hand, 30.48 from memory.
FEET_UP = {0.0: REGULAR, 30.48: 0.70, 60.96: 0.74}
# Lean from vertical in degrees -> fraction, suspended row (Melrose & Dawes 2015, J Athl Enhancement, n = 40).
ROW_LEAN = {30.0: 0.3744, 45.0: 0.5288, 60.0: 0.6808, 75.0: 0.7938}
# Both legs: mass above the shanks (Hartmann & Tuennemann, second-hand: 86 %; segment masses give 87.8 %).
SQUAT = 0.86


def hands_on(height_cm: float) -> Fraction:
    """Push-up with the hands on something `height_cm` high, 0 to 60.96 cm."""
    return _at("height_cm", height_cm, HANDS_UP)


def feet_on(height_cm: float) -> Fraction:
    """Push-up with the feet raised by `height_cm`, 0 to 60.96 cm."""
    return _at("height_cm", height_cm, FEET_UP)


def row_lean(degrees: float) -> Fraction:
    """Suspended row leaning back `degrees` from vertical, 30 to 75.

    Between the measured leans the fraction over the sine of the angle is interpolated: a straight body held
    at its feet loads the hands with the sine of its lean, and the published values keep that ratio within
    a tenth.
    """
    ratios = {angle: share / math.sin(math.radians(angle)) for angle, share in ROW_LEAN.items()}
    found = _at("degrees", degrees, ratios)
    if found.basis is Basis.PUBLISHED or found.share is None:
        return Fraction(ROW_LEAN[degrees], Basis.PUBLISHED)
    return Fraction(found.share * math.sin(math.radians(degrees)), Basis.INTERPOLATED)


def _at(name: str, value: float, table: dict[float, float]) -> Fraction:
    """The measured fraction, or a straight line between its neighbours."""
    low, high = min(table), max(table)
    if not (math.isfinite(value) and low <= value <= high):
        raise ValueError(f"{name}: measured from {low:g} to {high:g} only")
    if value in table:
        return Fraction(table[value], Basis.PUBLISHED)
    left, right = next(pair for pair in pairwise(sorted(table)) if pair[0] < value < pair[1])
    way = (value - left) / (right - left)
    return Fraction(table[left] + way * (table[right] - table[left]), Basis.INTERPOLATED)


# --- ladders, easiest first ------------------------------------------------------------------------------
def push_ups(hand_heights_cm: tuple[float, ...] = (60.96, 30.48)) -> tuple[Rung, ...]:
    """Hands raised to the given heights, from the knees, on the floor, then feet raised."""
    rungs = [Rung(f"hands {_cm(height)} up", hands_on(height).share) for height in hand_heights_cm]
    rungs += [Rung("from the knees", KNEES), Rung("on the floor", REGULAR)]
    rungs += [Rung(f"feet {_cm(height)} up", feet_on(height).share) for height in (30.48, 60.96)]
    return tuple(sorted(rungs, key=lambda rung: rung.fraction or 0.0))


def rows(leans: tuple[float, ...] = (30.0, 45.0, 60.0, 75.0)) -> tuple[Rung, ...]:
    """Suspended rows by lean from vertical."""
    return tuple(Rung(f"lean {lean:g} degrees", row_lean(lean).share) for lean in sorted(leans))


OWN_RUNG = re.compile(r"(?P<what>hands|lean) (?P<number>\d{1,2}(?:\.\d)?) (?:cm up|degrees)")


def rung_named(name: str) -> Rung | None:
    """The rung of a height or lean of one's own, "hands 45 cm up" or "lean 50 degrees"; None: the name is of neither.

    Raises ValueError naming `height_cm` or `degrees` outside of what was measured.
    """
    found = OWN_RUNG.fullmatch(name)
    if found is None:
        return None
    number = float(found["number"])
    return Rung(name, (hands_on(number) if found["what"] == "hands" else row_lean(number)).share)


# An order without fractions: nobody measured them.
SQUATS = (
    Rung("sit to stand, high chair"),
    Rung("sit to stand, low chair"),
    Rung("squat to half depth"),
    Rung("squat", SQUAT),
)
HEEL_RAISES = (
    Rung("heel raise"),
    Rung("heel raise, one leg helping"),
    Rung("heel raise, one leg"),
)
HIP_BRIDGES = (
    Rung("hip bridge"),
    Rung("hip bridge, feet raised"),
    Rung("hip bridge, one leg helping"),
    Rung("hip bridge, one leg"),
)


def _cm(height: float) -> str:
    return f"{height:.0f} cm"
