"""The coach's decision after a screening: what it must say and what it may not say."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from core.cuffs.limbs import ARMS, LEGS, Limb
from core.screening.assessment import Assessment
from core.screening.grades import Tier


class Ruling(StrEnum):
    """Stored."""

    CLEARED = "cleared"
    LEGS_ONLY = "legs_only"
    ARMS_ONLY = "arms_only"
    HELD_UNTIL = "held_until"
    DECLINED = "declined"


OPENS: dict[Ruling, frozenset[Limb]] = {
    Ruling.CLEARED: ARMS | LEGS,
    Ruling.LEGS_ONLY: LEGS,
    Ruling.ARMS_ONLY: ARMS,
    Ruling.HELD_UNTIL: frozenset(),
    Ruling.DECLINED: frozenset(),
}


class Restriction(StrEnum):
    """What a clearance forbids. Stored."""

    NO_FAILURE = "no_failure"  # no sets until the form goes: stop with reps left


# By the name of the rule or question that had something to say; own caution, no source ("pressure-look").
RESTRICTS: dict[str, Restriction] = {
    "pressure_high": Restriction.NO_FAILURE,
    "high_pressure": Restriction.NO_FAILURE,
}


def restrictions(rules: Iterable[str]) -> tuple[Restriction, ...]:
    """What the clearance of a screening with these findings forbids, each once."""
    found = {RESTRICTS[rule] for rule in rules if rule in RESTRICTS}
    return tuple(one for one in Restriction if one in found)


@dataclass(frozen=True, slots=True)
class Consent:
    """What a clinician said: who, when, with which limits ("none" is an answer), until when."""

    clinician: str
    said_on: date
    limits: str
    expires_on: date


@dataclass(frozen=True, slots=True)
class Clearance:
    """A decision on one screening. `until`: end of a hold; `consent` where a clinician comes first."""

    ruling: Ruling
    decided_on: date
    note: str = ""
    until: date | None = None
    consent: Consent | None = None


class Refusal(StrEnum):
    """Why a decision cannot stand. Stored; the words are in the conversations."""

    NO_OVERRIDE = "no_override"  # "do not start" is opened by nobody
    NEEDS_CONSENT = "needs_consent"  # clinician first: name, date, limits and expiry
    CONSENT_INCOMPLETE = "consent_incomplete"
    CONSENT_EXPIRED = "consent_expired"
    CONSENT_IN_FUTURE = "consent_in_future"
    NO_OPEN_LIMB = "no_open_limb"  # every limb it would open is closed by an answer
    NEEDS_NOTE = "needs_note"  # where the coach must look, in his own words
    NEEDS_DATE = "needs_date"  # a hold needs a day in the future


def refusal(clearance: Clearance, assessment: Assessment) -> Refusal | None:
    """Why this decision cannot stand; None: it can. Not opening anything always can."""
    if clearance.ruling is Ruling.HELD_UNTIL:
        late = clearance.until is not None and clearance.until > clearance.decided_on
        return None if late else Refusal.NEEDS_DATE
    if clearance.ruling is Ruling.DECLINED:
        return None
    if assessment.tier is Tier.DO_NOT_START:
        return Refusal.NO_OVERRIDE
    if assessment.tier is Tier.CLINICIAN_FIRST and (missing := _consent_missing(clearance)):
        return missing
    if assessment.tier is not Tier.CLEAR and not clearance.note.strip():
        return Refusal.NEEDS_NOTE
    return None if OPENS[clearance.ruling] & assessment.open_limbs else Refusal.NO_OPEN_LIMB


def _consent_missing(clearance: Clearance) -> Refusal | None:
    consent = clearance.consent
    if consent is None:
        return Refusal.NEEDS_CONSENT
    if not consent.clinician.strip() or not consent.limits.strip():
        return Refusal.CONSENT_INCOMPLETE
    if consent.said_on > clearance.decided_on:
        return Refusal.CONSENT_IN_FUTURE
    return Refusal.CONSENT_EXPIRED if consent.expires_on <= clearance.decided_on else None
