"""How reps fall from set to set: the client's own fall, starting from the usual one.

For each step (set 1 to 2, 2 to 3, ...) the natural log of the fall is normal between sessions around a mean
of the client's own; that mean has a normal prior. The posterior mean is again the precision-weighted one.
Three sets to technical failure fall by about half each time (common practice, no source); further sets
follow the published falls of four sets to failure (Rolnick et al. 2025, Sports Med - Open 11:84). The two
differ, and both are shown to the coach.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from core.progression.evidence import bands_loose
from core.progression.prior import FALL_NOISE, FALL_SD, HALF, PUBLISHED_REPS
from core.progression.records import SessionRecord

STEPS = 9  # falls between at most ten sets
USUAL_REST_S = 30.0  # common practice, no source
REST_FACTOR = 1.5  # rests beyond this many times the usual one say nothing about the fall


def usual_falls() -> tuple[float, ...]:
    """Natural log falls before anything is known of the client."""
    last = math.log(PUBLISHED_REPS[2] / PUBLISHED_REPS[3])
    return (HALF, HALF, *([last] * (STEPS - 2)))


def falls_of(session: SessionRecord) -> tuple[float | None, ...]:
    """The log falls of one session; None where a set was not to failure or the rest was long."""
    left = session.reps_left or ()
    full = [at >= len(left) or left[at] == 0 for at in range(len(session.reps))]
    falls: list[float | None] = []
    for at, (before, after) in enumerate(pairwise(session.reps)):
        usable = full[at] and full[at + 1] and _rested_as_usual(session, at)
        falls.append(math.log(max(before, 0.5) / max(after, 0.5)) if usable else None)
    return tuple(falls)


def _rested_as_usual(session: SessionRecord, at: int) -> bool:
    rests = session.rest_s or ()
    return at >= len(rests) or rests[at] <= REST_FACTOR * USUAL_REST_S


def own_falls(sessions: Sequence[SessionRecord]) -> tuple[float, ...]:
    """The client's own log falls, from the usual ones and every comparable session."""
    sums = [0.0] * STEPS
    counts = [0] * STEPS
    for session in sessions:
        if bands_loose(session) or session.rough or session.stopped:
            continue
        for at, fall in enumerate(falls_of(session)):
            if fall is not None:
                sums[at] += fall
                counts[at] += 1
    weight = (FALL_NOISE / FALL_SD) ** 2
    return tuple(
        (weight * usual + total) / (weight + count)
        for usual, total, count in zip(usual_falls(), sums, counts, strict=True)
    )


def following(first: float, falls: Sequence[float], sets: int) -> tuple[float, ...]:
    """Expected reps of `sets` sets when set 1 brings `first`."""
    reps = [first]
    for fall in falls[: sets - 1]:
        reps.append(reps[-1] * math.exp(-fall))
    return tuple(reps)
