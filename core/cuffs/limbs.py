"""Limbs with their side, for checks and for what screening closes."""

from enum import StrEnum

from core.plans import Region, Side


class Limb(StrEnum):
    """Stored."""

    LEFT_ARM = "left_arm"
    RIGHT_ARM = "right_arm"
    LEFT_LEG = "left_leg"
    RIGHT_LEG = "right_leg"

    @property
    def region(self) -> Region:
        """Arms or legs."""
        return Region.ARMS if self in ARMS else Region.LEGS

    @property
    def side(self) -> Side:
        """Left or right."""
        return Side.LEFT if self in (Limb.LEFT_ARM, Limb.LEFT_LEG) else Side.RIGHT


ARMS = frozenset({Limb.LEFT_ARM, Limb.RIGHT_ARM})
LEGS = frozenset({Limb.LEFT_LEG, Limb.RIGHT_LEG})
ALL = ARMS | LEGS


def limbs_of(region: Region, side: Side) -> tuple[Limb, ...]:
    """The limbs that carry a band, left first."""
    of_region = [limb for limb in Limb if limb.region is region]
    return tuple(limb for limb in of_region if side in (Side.BOTH, limb.side))
