"""Pain at the joint being looked after: what is accepted, what eases, what pauses. And "it hurts" in a set."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from enum import StrEnum

from core.outcomes import Change, pain_change
from core.plans import HIGHEST_PAIN_CEILING, PAIN_CEILING
from core.safety.sources import Source

SETTLED = 2  # 0-2 counts as safe: pain-monitoring model, from memory (Thomee 1997)
UNDER_BAND = "under_band"  # an earlier stored name of `Where.BAND`
TWICE = 2  # in a row, then it pauses; own caution, no source
SILENCE = timedelta(seconds=20)  # after "Where?", then bands off; own caution, no source
SOURCES = (Source.THOMEE_1997, Source.FARRAR_2001, Source.PAIN_PLACES)


class PainStep(StrEnum):
    """Stored."""

    ACCEPTED = "accepted"
    EASED = "eased"  # easier next time
    PAUSED = "paused"  # this movement waits for the coach


@dataclass(frozen=True, slots=True)
class PainDay:
    """Pain of one session, 0-10: before, the most during, the next morning; None: not asked or no answer."""

    during: int
    before: int | None = None
    morning: int | None = None

    def __post_init__(self) -> None:
        for name, score in (("during", self.during), ("before", self.before), ("morning", self.morning)):
            if score is not None and not 0 <= score <= 10:
                raise ValueError(f"{name}: pain is 0 to 10")


def with_later(day: PainDay, score: int, *, same_day: bool) -> PainDay:
    """The day with a rating asked after the session: that evening it counts as during, later as the next morning.

    The highest of several counts.
    """
    if same_day:
        return replace(day, during=max(day.during, score))
    return replace(day, morning=max(day.morning or 0, score))


def settled(day: PainDay) -> bool:
    """By the next morning down to 0-2, or not up from before (a change: 2 points or 30 %)."""
    if day.morning is None or day.morning <= SETTLED:
        return True
    before = day.before if day.before is not None else SETTLED
    return day.morning <= HIGHEST_PAIN_CEILING and pain_change(before, day.morning) is not Change.UP


def too_much(day: PainDay, ceiling: int = PAIN_CEILING) -> bool:
    """Above the ceiling during the session, or not settled by the next morning."""
    return day.during > ceiling or not settled(day)


def pain_step(days: Sequence[PainDay], ceiling: int = PAIN_CEILING) -> PainStep:
    """What the last sessions mean for this joint; `days` oldest first.

    Above 5 at any time pauses at once. Raises ValueError for a ceiling above 5 (only the coach sets 4 or 5).
    """
    if not 0 <= ceiling <= HIGHEST_PAIN_CEILING:
        raise ValueError(f"ceiling: 0 to {HIGHEST_PAIN_CEILING}")
    if not days or not too_much(days[-1], ceiling):
        return PainStep.ACCEPTED
    if max(days[-1].during, days[-1].morning or 0) > HIGHEST_PAIN_CEILING:
        return PainStep.PAUSED
    in_a_row = len(days) >= TWICE and all(too_much(day, ceiling) for day in days[-TWICE:])
    return PainStep.PAUSED if in_a_row else PainStep.EASED


class Where(StrEnum):
    """Where it hurts, in a set or after it; every dialogue that asks takes its answers from here. Stored."""

    MUSCLE = "muscle"  # the working muscle: burn
    JOINT = "joint"
    BAND = "band"  # under the band, or where it was
    ELSEWHERE = "elsewhere"

    @classmethod
    def _missing_(cls, value: object) -> "Where | None":
        return cls.BAND if value == UNDER_BAND else None  # the name it was stored by once


def may_go_on(where: Where | None) -> bool:
    """Burn in the working muscle may go on; anything else, or no answer (None): bands off."""
    return where is Where.MUSCLE
