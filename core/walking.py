"""Walking with leg bands: minutes first, then pace, and what a pace costs.

Frequency and bout: 2 x 10 min with 5 min without bands between, three days a week, from 4 km/h, 0.5 km/h more
every 4 weeks (outdoor trial in people of 60 and older, conference abstract). Ten minutes a day of walking
with leg bands is common practice with older adults, no source.
"""

import math
from dataclasses import dataclass, replace
from enum import StrEnum

MET = 3.5  # ml/kg/min, by definition
BOUT_MIN = 10  # minutes with bands on; trial above
BOUTS = 2
BETWEEN_MIN = 5  # minutes without bands between bouts; trial above
START_MIN = 5  # own caution, no source
GENTLE_WALKS = 2  # walking sessions that are gentle; own caution, no source
MORE_MIN = 1  # minutes added at a time; own caution, no source
MOST_MIN = 15  # with bands on in one bout; own caution, no source
START_KMH = 4.0  # trial above; 4-6 km/h in Patterson et al. 2019, Front Physiol 10:533 (from memory)
STEP_KMH = 0.5  # trial above
WEEKS_A_STEP = 4  # trial above
TOP_KMH = 6.0  # Patterson et al. 2019 (from memory)
CEILING = 0.50  # below half of VO2max or heart-rate reserve: Patterson et al. 2019
SLOWEST_KMH, FASTEST_KMH = 3.0, 6.0  # where the ACSM walking equation holds, 50-100 m/min: from memory
HARD_EFFORT = 5  # of 10; own caution, no source


@dataclass(frozen=True, slots=True)
class Walk:
    """A block: `bouts` of `minutes` with bands on at `kmh`, with `BETWEEN_MIN` without bands between."""

    minutes: int
    kmh: float
    bouts: int = 1

    def __post_init__(self) -> None:
        if not 1 <= self.minutes <= MOST_MIN:
            raise ValueError(f"minutes: 1 to {MOST_MIN}")
        if not (math.isfinite(self.kmh) and 0 < self.kmh <= TOP_KMH):
            raise ValueError(f"kmh: above 0 and at most {TOP_KMH:g}")
        if self.bouts not in (1, BOUTS):
            raise ValueError(f"bouts: 1 or {BOUTS}")


class WalkReason(StrEnum):
    """Why the walk is what it is. Stored."""

    GENTLE_DONE = "gentle_done"
    MORE_MINUTES = "more_minutes"
    SECOND_BOUT = "second_bout"
    FASTER = "faster"
    HOLD_WEEKS = "hold_weeks"
    HOLD_HARD = "hold_hard"
    HOLD_CEILING = "hold_ceiling"
    HOLD_TOP = "hold_top"


START = Walk(START_MIN, START_KMH)


def vo2(kmh: float, grade: float = 0.0) -> float:
    """Oxygen uptake in ml/kg/min by the ACSM walking equation, 3.5 + 0.1 S + 1.8 S G, S in m/min.

    `grade` as a share (0.05: 5 %). Raises ValueError outside 3-6 km/h, where the equation does not hold.
    From memory (ACSM Guidelines).
    """
    if not SLOWEST_KMH <= kmh <= FASTEST_KMH:
        raise ValueError(f"kmh: the walking equation holds from {SLOWEST_KMH:g} to {FASTEST_KMH:g}")
    if not 0 <= grade <= 0.25:
        raise ValueError("grade: a share from 0 to 0.25")
    speed = kmh * 1000 / 60
    return MET + 0.1 * speed + 1.8 * speed * grade


def mets(kmh: float, grade: float = 0.0) -> float:
    """The same in metabolic equivalents."""
    return vo2(kmh, grade) / MET


def within_ceiling(kmh: float, vo2max: float) -> bool:
    """Whether walking at `kmh` stays below half of `vo2max` (ml/kg/min)."""
    if not (math.isfinite(vo2max) and vo2max > MET):
        raise ValueError(f"vo2max: above {MET} ml/kg/min")
    return vo2(kmh) < CEILING * vo2max


def heart_rate_ceiling(resting: float, highest: float) -> float:
    """Heart rate at half of the reserve, beats a minute; walk below it."""
    if not 0 < resting < highest:
        raise ValueError("resting: above 0 and below the highest")
    return resting + CEILING * (highest - resting)


def gentle(planned: Walk, number: int) -> Walk:
    """What of the `planned` walk is done in walking session `number` (from 1).

    The first: one spell of `START_MIN` at most. The second: one spell of `BOUT_MIN` at most. Both no faster than
    `START_KMH`. Own caution, no source.
    """
    if number > GENTLE_WALKS:
        return planned
    most = START_MIN if number == 1 else BOUT_MIN
    return Walk(min(planned.minutes, most), min(planned.kmh, START_KMH))


def after_walk(
    done: Walk, planned: Walk, number: int, weeks_at_pace: int, effort: float | None
) -> tuple[Walk, WalkReason]:
    """What comes after the walk `done` of walking session `number`, all of it walked.

    A gentle walk that was easy is followed by what was planned, as far as the next session's own caution allows.
    """
    coming = gentle(planned, number + 1)
    if number <= GENTLE_WALKS and done != coming and (effort is None or effort <= HARD_EFFORT):
        return coming, WalkReason.GENTLE_DONE
    return next_walk(done, weeks_at_pace, effort)


def next_walk(
    now: Walk, weeks_at_pace: int, effort: float | None = None, vo2max: float | None = None
) -> tuple[Walk, WalkReason]:
    """Minutes first, up to 10; then the second bout; then pace, 0.5 km/h every 4 weeks at one pace.

    Nothing rises after an effort above `HARD_EFFORT`, nor to a pace at or above half of `vo2max`.
    """
    if effort is not None and effort > HARD_EFFORT:
        return now, WalkReason.HOLD_HARD
    if now.minutes < BOUT_MIN:
        return replace(now, minutes=now.minutes + MORE_MIN), WalkReason.MORE_MINUTES
    if now.bouts < BOUTS:
        return replace(now, minutes=BOUT_MIN, bouts=BOUTS), WalkReason.SECOND_BOUT
    return _pace(now, weeks_at_pace, vo2max)


def _pace(now: Walk, weeks_at_pace: int, vo2max: float | None) -> tuple[Walk, WalkReason]:
    if weeks_at_pace < WEEKS_A_STEP:
        return now, WalkReason.HOLD_WEEKS
    kmh = now.kmh + STEP_KMH
    if kmh > TOP_KMH:
        return now, WalkReason.HOLD_TOP
    if vo2max is not None and not within_ceiling(kmh, vo2max):
        return now, WalkReason.HOLD_CEILING
    return replace(now, kmh=kmh), WalkReason.FASTER
