"""The movements, by stored name: where the band sits, what makes it heavy, which may replace which.

A movement is one entry here and its words in `conversations/words/movements.py`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from core.bodyweight import HEEL_RAISES, HIP_BRIDGES, SQUATS, push_ups, rows
from core.plans import Region, Rung
from core.resistance import Ladder, with_tempo


class Kind(StrEnum):
    """What makes it heavy."""

    LOAD = "load"
    BODYWEIGHT = "bodyweight"
    WALK = "walk"


@dataclass(frozen=True, slots=True)
class Movement:
    """One movement. Movements of the same `pattern` may replace each other.

    `one_sided`: it works one limb at a time, so a plan names its sides. `rungs`: its body-weight ladder,
    easiest first; () where there is nothing to make it harder by. `straps`: it hangs from something.
    """

    name: str
    region: Region
    pattern: str
    kind: Kind
    one_sided: bool = False
    rungs: tuple[Rung, ...] = ()
    straps: bool = False

    @property
    def equipment(self) -> bool:
        """Whether it needs more than a body, a chair, a towel and a door frame."""
        return self.kind is Kind.LOAD or self.straps


def _slowed(rungs: tuple[Rung, ...]) -> tuple[Rung, ...]:
    """Each variation, then the same at a slow tempo: a half step where the next variation is a large one."""
    return with_tempo(Ladder(rungs)).rungs


def with_rung(rungs: tuple[Rung, ...], own: Rung) -> tuple[Rung, ...]:
    """The ladder with a variation of one's own at its place by fraction of body mass, slow ones between all."""
    measured = [rung for rung in (*rungs, own) if rung.fraction is not None]
    return _slowed(tuple(sorted(measured, key=lambda rung: rung.fraction or 0.0)))


_ALL = (
    Movement("goblet_squat", Region.LEGS, "squat", Kind.LOAD),
    Movement("split_squat", Region.LEGS, "squat", Kind.LOAD, one_sided=True),
    Movement("calf_raise", Region.LEGS, "calf", Kind.LOAD),
    Movement("curl", Region.ARMS, "curl", Kind.LOAD),
    Movement("one_arm_curl", Region.ARMS, "curl", Kind.LOAD, one_sided=True),
    Movement("floor_press", Region.ARMS, "push", Kind.LOAD),
    Movement("one_arm_row", Region.ARMS, "pull", Kind.LOAD, one_sided=True),
    Movement("push_up", Region.ARMS, "push", Kind.BODYWEIGHT, rungs=_slowed(push_ups())),
    Movement("doorway_row", Region.ARMS, "pull", Kind.BODYWEIGHT),
    Movement("suspended_row", Region.ARMS, "pull", Kind.BODYWEIGHT, rungs=_slowed(rows()), straps=True),
    Movement("chair_squat", Region.LEGS, "squat", Kind.BODYWEIGHT, rungs=_slowed(SQUATS)),
    Movement("hip_bridge", Region.LEGS, "hinge", Kind.BODYWEIGHT, rungs=_slowed(HIP_BRIDGES)),
    Movement("heel_raise", Region.LEGS, "calf", Kind.BODYWEIGHT, rungs=_slowed(HEEL_RAISES)),
    Movement("towel_curl", Region.ARMS, "curl", Kind.BODYWEIGHT),
    Movement("free_split_squat", Region.LEGS, "squat", Kind.BODYWEIGHT, one_sided=True),
    Movement("one_arm_towel_curl", Region.ARMS, "curl", Kind.BODYWEIGHT, one_sided=True),
    Movement("one_arm_doorway_row", Region.ARMS, "pull", Kind.BODYWEIGHT, one_sided=True),
    Movement("walk", Region.LEGS, "walk", Kind.WALK),
)
MOVEMENTS: Mapping[str, Movement] = MappingProxyType({each.name: each for each in _ALL})
