"""How long bands may stay on, when to call, and when a silent set is no longer fine.

Pure times: the caller stores them, a restart loses nothing. How often a week and how many hours apart stands
in `core.calendar.limits`.
"""

import math
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum

from core.plans import LONGEST_MIN, Region
from core.safety.sources import Source

# Continuous cuff time below 15 min (arm) and 20 min (leg): a support page citing the Australian Institute of
# Sport guideline, second-hand.
CAP_MIN = {Region.ARMS: 15, Region.LEGS: 20}
OFF = timedelta(minutes=3)  # before bands go on again: the same page, second-hand
SECOND_CALL = timedelta(minutes=1)  # after the first; own caution, no source
ALERT = timedelta(minutes=2)  # after the first; own caution: falls within the caps at the longest plan limit
SOURCES = (Source.AIS_CUFF_TIME, Source.CUFF_CALLS, Source.MAYBE_ON, Source.QUIET_SET)
# Asked to put bands on, and no word: they count as on; own caution, no source.
MAYBE_ON = timedelta(minutes=5)
QUIET_FACTOR = 1.5  # x expected reps x tempo; own caution, no source
QUIET_GRACE = timedelta(seconds=60)  # own caution, no source
QUIET_ALERT = timedelta(seconds=60)  # after asking; own caution, no source


class CallKind(StrEnum):
    """Stored."""

    FIRST = "first"  # bands off now
    SECOND = "second"  # again
    ALERT = "alert"  # the coach, now


@dataclass(frozen=True, slots=True)
class Call:
    """One call about bands that are on too long."""

    kind: CallKind
    at: datetime


def calls(on_at: datetime, limit_s: int, region: Region) -> tuple[Call, ...]:
    """The three calls of a spell of bands, in order. Raises ValueError for a limit above the plan's longest.

    `on_at`: the safe (early) bound, an aware time; `limit_s` seconds. The result is in UTC.
    """
    if not 0 < limit_s <= 60 * LONGEST_MIN[region]:
        raise ValueError(f"limit_s: up to {60 * LONGEST_MIN[region]} s on the {region}")
    first = on_at.astimezone(UTC) + timedelta(seconds=limit_s)
    return (
        Call(CallKind.FIRST, first),
        Call(CallKind.SECOND, first + SECOND_CALL),
        Call(CallKind.ALERT, first + ALERT),
    )


def next_call(on_at: datetime, limit_s: int, region: Region, given: int) -> Call | None:
    """The call after `given` calls; None: the alert went out and escalates from there by itself."""
    if given < 0:
        raise ValueError("given: 0 or more")
    return (*calls(on_at, limit_s, region), None)[min(given, 3)]


def on_again_at(off_at: datetime, pause: timedelta = OFF) -> datetime:
    """The earliest moment at which bands may go on again, in UTC; `pause` is never shorter than `OFF`."""
    return off_at.astimezone(UTC) + max(pause, OFF)


def set_length(reps: int, tempo_s: float) -> timedelta:
    """How long a set takes; `tempo_s` seconds for one rep."""
    if reps < 0 or not (math.isfinite(tempo_s) and tempo_s > 0):
        raise ValueError("reps, tempo_s: must be above 0")
    return timedelta(seconds=reps * tempo_s)


def can_finish(on_at: datetime, start_at: datetime, reps: int, tempo_s: float, limit_s: int) -> bool:
    """Whether a set that starts at `start_at` ends within the limit; if not: bands off, reason "time"."""
    ends = start_at.astimezone(UTC) + set_length(reps, tempo_s)
    return ends <= on_at.astimezone(UTC) + timedelta(seconds=limit_s)


def whole_minutes_left(on_at: datetime, at: datetime, limit_s: int) -> int:
    """Minutes until the bands must come off, rounded down; 0 when none is left."""
    left = on_at.astimezone(UTC) + timedelta(seconds=limit_s) - at.astimezone(UTC)
    return max(0, left // timedelta(minutes=1))


def quiet_at(started_at: datetime, expected_reps: int, tempo_s: float) -> datetime:
    """When to ask "All right? Bands off if not." in a set without an answer, in UTC."""
    return started_at.astimezone(UTC) + QUIET_FACTOR * set_length(expected_reps, tempo_s) + QUIET_GRACE


def quiet_alert_at(asked_at: datetime) -> datetime:
    """When silence after that question becomes an alert, in UTC."""
    return asked_at.astimezone(UTC) + QUIET_ALERT
