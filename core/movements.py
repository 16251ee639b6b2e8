"""The movements, by stored name: where the band sits, what kind of resistance, which may replace which.

A movement is one entry here and its words in `conversations/words/movements.py`.
"""

from dataclasses import dataclass
from enum import StrEnum

from core.plans import Region


class Kind(StrEnum):
    """What makes it heavy."""

    LOAD = "load"
    BODYWEIGHT = "bodyweight"
    WALK = "walk"


@dataclass(frozen=True, slots=True)
class Movement:
    """One movement. Movements of the same `pattern` may replace each other."""

    name: str
    region: Region
    pattern: str
    kind: Kind
    one_sided: bool = False


MOVEMENTS = {
    each.name: each
    for each in (
        Movement("goblet_squat", Region.LEGS, "squat", Kind.LOAD),
        Movement("split_squat", Region.LEGS, "squat", Kind.LOAD, one_sided=True),
        Movement("calf_raise", Region.LEGS, "calf", Kind.LOAD),
        Movement("curl", Region.ARMS, "curl", Kind.LOAD),
        Movement("floor_press", Region.ARMS, "push", Kind.LOAD),
        Movement("one_arm_row", Region.ARMS, "pull", Kind.LOAD, one_sided=True),
        Movement("push_up", Region.ARMS, "push", Kind.BODYWEIGHT),
        Movement("doorway_row", Region.ARMS, "pull", Kind.BODYWEIGHT),
        Movement("chair_squat", Region.LEGS, "squat", Kind.BODYWEIGHT),
        Movement("hip_bridge", Region.LEGS, "hinge", Kind.BODYWEIGHT),
        Movement("walk", Region.LEGS, "walk", Kind.WALK),
    )
}
