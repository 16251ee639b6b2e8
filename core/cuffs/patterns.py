"""What the checks of several sessions say together. One check can look right and the band still be wrong."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.pressure import Drift, Fit, drift
from core.safety.causes import Cause

# Own caution, no source.
LOOKED_AT = 4  # the last sessions
OFTEN = 3  # of them


UNKNOWN = Fit()


@dataclass(frozen=True, slots=True)
class Checked:
    """The checks of one session: was a refill slow, were the bands loose, and its gauges."""

    slow: bool
    loose: bool
    fit: Fit = UNKNOWN


def patterns(sessions: Sequence[Checked]) -> tuple[Cause, ...]:
    """What the coach should see this week; `sessions` oldest first."""
    last = sessions[-LOOKED_AT:]
    found = []
    if sum(one.slow for one in last) >= OFTEN:
        found.append(Cause.REFILL_SLOW_OFTEN)
    if sum(one.loose for one in last) >= OFTEN:
        found.append(Cause.LOOSE_OFTEN)
    if drift([one.fit for one in sessions]) in (Drift.LOOSER, Drift.TIGHTER):
        found.append(Cause.TIGHTNESS_DRIFT)
    return tuple(found)
