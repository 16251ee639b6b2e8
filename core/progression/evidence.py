"""What one session says about set 1: how many clean reps there were, how surely, from which side."""

import math
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from core.plans import FIXED_AIMS, Scheme
from core.progression.prior import LEFT_SD, LOOSE_BELOW, REFILL_LIMIT_S, ROUGH_SD, TIGHT_FROM
from core.progression.records import SessionRecord


class Bound(StrEnum):
    """From which side the observed reps pin down the client's reps."""

    EXACT = "exact"
    AT_LEAST = "at_least"
    AT_MOST = "at_most"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True)
class Evidence:
    """`x` log load, `y` log of the reps there were in set 1, `sd` of `y` beyond the day-to-day spread."""

    day: date
    x: float
    y: float
    sd: float
    bound: Bound


def evidence(session: SessionRecord, x: float, scheme: Scheme) -> Evidence:
    """One session at place `x` as evidence about set 1."""
    left = session.reps_left[0] if session.reps_left else 0
    reps = max(session.reps[0] + left, 0.5)  # half a rep stands for none
    sd = math.hypot(LEFT_SD * left, ROUGH_SD if session.rough else 0.0)
    return Evidence(session.date, x, math.log(reps), sd, _bound(session, scheme))


def _bound(session: SessionRecord, scheme: Scheme) -> Bound:
    too_many, too_few = _more_than_true(session), _fewer_than_true(session, scheme)
    if (too_many and too_few) or not session.check_ok:
        return Bound.NOTHING
    if too_many:
        return Bound.AT_MOST
    return Bound.AT_LEAST if too_few else Bound.EXACT


def _more_than_true(session: SessionRecord) -> bool:
    return bands_loose(session) or session.fast


def _fewer_than_true(session: SessionRecord, scheme: Scheme) -> bool:
    return bands_tight(session) or _cut_short(session) or _capped(session, scheme)


def bands_loose(session: SessionRecord) -> bool:
    """As marked, or by the client's own rating."""
    return session.loose or (session.tightness is not None and session.tightness < LOOSE_BELOW)


def bands_tight(session: SessionRecord) -> bool:
    """By the client's own rating, or by a slow refill."""
    tightness, refill_s = session.tightness, session.refill_s
    return (tightness is not None and tightness >= TIGHT_FROM) or (
        refill_s is not None and refill_s > REFILL_LIMIT_S
    )


def _cut_short(session: SessionRecord) -> bool:
    """The session ended in set 1, so the set itself was cut."""
    return bool(session.stopped) and len(session.reps) == 1


def _capped(session: SessionRecord, scheme: Scheme) -> bool:
    """A fixed set ends at its number, whatever else there was."""
    return scheme is Scheme.FIXED and not session.reps_left and session.reps[0] >= FIXED_AIMS[0].high
