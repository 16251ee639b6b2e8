"""One look at one banded limb, as the client answers it, and what comes of it."""

import math
from dataclasses import dataclass
from enum import StrEnum

from core.cuffs.limbs import Limb
from core.plans import Region


class Refill(StrEnum):
    """How long the pressed spot stays pale: press 5 s, let go, count. Stored."""

    UNDER_2 = "under_2"
    ABOUT_3 = "about_3"
    LONGER = "longer"
    CANT_SEE = "cant_see"


class Look(StrEnum):
    """Where the client looked. Stored."""

    PALM = "palm"
    ABOVE_KNEE = "above_knee"  # the lower thigh, just above the kneecap
    FINGERNAIL = "fingernail"  # where skin hides the spot
    COMPARED = "compared"  # warmth and feeling of the lower leg or hand, where nothing can be seen


class Colour(StrEnum):
    """What the limb looks like below the band. Stored."""

    USUAL = "usual"
    REDDISH = "reddish"  # expected
    BLUE = "blue"  # also purple or grey
    WHITE = "white"


class Feeling(StrEnum):
    """What the limb feels like below the band. Stored."""

    FINE = "fine"
    TINGLING = "tingling"
    NUMB = "numb"
    COLD = "cold"
    HURTS = "hurts"


class Place(StrEnum):
    """Where the band sits. Stored."""

    HIGH = "high"  # as high as it goes on the upper arm or upper leg: right
    LOW = "low"  # nearer to elbow or knee
    ELSEWHERE = "elsewhere"  # over a joint, the lower limb, clothes with a fold


class Compared(StrEnum):
    """Warmth and feeling against the time before the band. Stored."""

    SAME = "same"
    DIFFERENT = "different"


@dataclass(frozen=True, slots=True)
class CuffCheck:
    """The answers about one limb; None: not asked yet.

    `tightness` 0 (loose) to 10 (tightest imaginable). `refill_s` seconds, only when typed. `band` is the label
    of the band that is on, `fitted_band` of the one this client was fitted with ("": not labelled).
    Raises ValueError for a tightness or a time that cannot be.
    """

    limb: Limb
    tightness: int | None = None
    refill: Refill | None = None
    refill_s: float | None = None
    colour: Colour | None = None
    feeling: Feeling | None = None
    place: Place | None = None
    look: Look | None = None
    compared: Compared | None = None
    band: str = ""
    fitted_band: str = ""

    def __post_init__(self) -> None:
        if self.tightness is not None and not 0 <= self.tightness <= 10:
            raise ValueError("tightness: 0 to 10")
        if self.refill_s is not None and not (math.isfinite(self.refill_s) and 0 <= self.refill_s <= 60):
            raise ValueError("refill_s: 0 to 60 seconds")

    @property
    def first_look(self) -> Look:
        """Palm for arms, just above the kneecap for legs (common practice, no source)."""
        return Look.PALM if self.limb.region is Region.ARMS else Look.ABOVE_KNEE

    @property
    def complete(self) -> bool:
        """Whether everything was answered that the rules need."""
        asked = (self.tightness, self.refill, self.colour, self.feeling)
        return None not in asked and next_look(self) is None


def next_look(check: CuffCheck) -> Look | None:
    """Where to look next; None: seen, or there is no further way.

    Dark skin can hide the spot: then the fingernail for arms, warmth and feeling for legs (and for painted
    nails). The coach decides on those; they are never stored as passed.
    """
    if check.refill is None:
        return check.first_look
    if check.refill is not Refill.CANT_SEE or check.compared is not None:
        return None
    if check.look in (None, Look.PALM) and check.limb.region is Region.ARMS:
        return Look.FINGERNAIL
    return Look.COMPARED


def refill_of(seconds: float) -> Refill:
    """The answer that a typed time stands for: below 2 s, up to 3 s, longer."""
    if not (math.isfinite(seconds) and seconds >= 0):
        raise ValueError("seconds: 0 or more")
    if seconds < 2:
        return Refill.UNDER_2
    return Refill.ABOUT_3 if seconds <= 3 else Refill.LONGER
