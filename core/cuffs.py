"""Are the bands right? Small named rules; the strictest wins. And how long bands may stay on.

A normal refill does not prove that a band is right: only arterial closing lengthens it (Shinozaki 2023,
Prehosp Disaster Med). So a good check lets a set begin and nothing more.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import IntEnum, StrEnum

from core.plans import Region

REFILL_LIMIT_S = 3.0  # common practice, no source; Shinozaki 2023 finds 2.88 s
LOOSE_BELOW = 6  # common practice, no source: 6 to 7 of 10 is wanted
TIGHT_FROM = 8  # own caution: 8 loosen
OFF_FROM = 9  # own caution: 9 and 10 come off
OFF_BETWEEN_S = 180  # 3 min before bands go on again: institute guideline as quoted by a support page
MOST_FAILED_CHECKS = 2  # per session; own caution, no source
EARLY_SESSIONS = 4  # limbs swell: checked again after set 1; own caution, no source

SECOND_CALL = timedelta(minutes=1)  # own caution, no source
ALARM_AFTER_FIRST = timedelta(minutes=2)  # own caution, no source
LAST_CALL_GAP = timedelta(minutes=2)


class Verdict(IntEnum):
    """What to do with the bands, the strictest highest."""

    GO = 0
    LOOSE = 1  # looser than wanted: one new fit before the first set, then go on, marked
    LOOSEN = 2  # too tight: loosen and check again
    OFF = 3  # off at once, 3 min, one new fit, looser


class Refill(StrEnum):
    """How long the pressed spot stays pale, as answered. Stored."""

    UNDER_2 = "under_2"
    ABOUT_3 = "about_3"
    LONGER = "longer"
    CANT_SEE = "cant_see"


class Feeling(StrEnum):
    """How the limb is. Stored. Reddish is expected."""

    FINE = "fine"
    NERVE = "tingling"  # tingling or numb
    COLOUR = "colour"  # blue, white or cold
    PINCHING = "pinching"


@dataclass(frozen=True, slots=True)
class CuffCheck:
    """What is known of one limb: tightness 0-10, refill as answered (seconds if typed), feeling."""

    tightness: int | None = None
    refill: Refill | None = None
    refill_s: float | None = None
    feeling: Feeling | None = None


@dataclass(frozen=True, slots=True)
class Finding:
    """The outcome of one rule: a verdict and the rule's name."""

    verdict: Verdict
    because: str


Rule = Callable[[CuffCheck], Finding | None]


def odd_feeling(check: CuffCheck) -> Finding | None:
    """Tingling, numb, blue, white or cold: off at once. [common practice, no source]"""
    if check.feeling in (Feeling.NERVE, Feeling.COLOUR):
        return Finding(Verdict.OFF, check.feeling.value)
    return None


def pinching(check: CuffCheck) -> Finding | None:
    """A band that pinches or cuts is fitted again. [own caution, no source]"""
    return Finding(Verdict.LOOSEN, "pinching") if check.feeling is Feeling.PINCHING else None


def far_too_tight(check: CuffCheck) -> Finding | None:
    """9 and 10 come off. [own caution; 10 of 10 reached arterial closing in Bell 2018, Physiol Meas]"""
    if check.tightness is not None and check.tightness >= OFF_FROM:
        return Finding(Verdict.OFF, "far_too_tight")
    return None


def too_tight(check: CuffCheck) -> Finding | None:
    """8 of 10: loosen. [own caution, no source]"""
    if check.tightness is not None and check.tightness >= TIGHT_FROM:
        return Finding(Verdict.LOOSEN, "too_tight")
    return None


def slow_refill(check: CuffCheck) -> Finding | None:
    """Longer than 3 s: loosen and check again. [common practice; 2.88 s in Shinozaki 2023]"""
    typed = check.refill_s is not None and check.refill_s > REFILL_LIMIT_S
    return Finding(Verdict.LOOSEN, "slow_refill") if typed or check.refill is Refill.LONGER else None


def loose(check: CuffCheck) -> Finding | None:
    """Below 6 of 10: one new fit, then go on, marked. [common practice, no source]"""
    if check.tightness is not None and check.tightness < LOOSE_BELOW:
        return Finding(Verdict.LOOSE, "loose")
    return None


RULES: tuple[Rule, ...] = (odd_feeling, pinching, far_too_tight, too_tight, slow_refill, loose)


def judge(check: CuffCheck) -> Finding:
    """The strictest finding; GO when no rule speaks."""
    found = [finding for rule in RULES if (finding := rule(check)) is not None]
    return max(found, key=lambda finding: finding.verdict, default=Finding(Verdict.GO, "right"))


def next_call(on_at: datetime, limit_s: int, calls: int) -> datetime:
    """When the client is told (again) that the time is up: at the limit, 1 min later, then every 2 min."""
    first = on_at + timedelta(seconds=limit_s)
    if calls == 0:
        return first
    if calls == 1:
        return first + SECOND_CALL
    return first + ALARM_AFTER_FIRST + (calls - 2) * LAST_CALL_GAP


def alarms(calls: int) -> bool:
    """Whether this call (counted from 0) also goes to the coach: from the third on."""
    return calls >= 2


def quiet_after(reps: int, tempo_s: int) -> timedelta:
    """Silence in a set until the client is asked: 1.5 x reps x tempo + 60 s. [own caution, no source]"""
    return timedelta(seconds=1.5 * reps * tempo_s + 60)


QUIET_ALARM = timedelta(seconds=60)  # more silence after the question: alarm; own caution, no source


def limbs(region: Region) -> tuple[str, ...]:
    """The limbs of a region."""
    return {Region.ARMS: ("left arm", "right arm"), Region.LEGS: ("left leg", "right leg")}[region]
