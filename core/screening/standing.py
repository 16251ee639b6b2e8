"""Which limbs a client may train today, from the decisions and the screening on record; the one place that says so."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from core.cuffs.limbs import Limb, opened
from core.facts import Cleared, ScreeningDone
from core.screening.grades import Tier
from core.stored_names import names_in

HELD, DECLINED = "held", "declined"


class Waits(StrEnum):
    """What stands between a client and training. Stored."""

    NOT_SCREENED = "not_screened"
    NOT_CLEARED = "not_cleared"  # a screening waits for its decision
    DO_NOT_START = "do_not_start"
    HELD = "held"
    DECLINED = "declined"
    OVER = "clearance_over"


@dataclass(frozen=True, slots=True)
class Standing:
    """Either limbs that are open now, or why none is. `decision`: what is in force, a hold as well."""

    limbs: frozenset[Limb]
    why: Waits | None
    decision: Cleared | None = None


def standing(decisions: Sequence[Cleared], screened: ScreeningDone | None, now: datetime) -> Standing:
    """`decisions` oldest first; `screened`: the newest screening that came to its end."""
    decision = in_force(decisions, now)
    why = _why(decision, screened, now)
    if why is not None or decision is None:
        return Standing(frozenset(), why, decision)
    limbs = open_by(decision, screened)
    return Standing(limbs, None if limbs else Waits.NOT_CLEARED, decision)


def in_force(decisions: Sequence[Cleared], now: datetime) -> Cleared | None:
    """The newest decision but for a hold whose day has come: then what held before it counts again."""
    return next((one for one in reversed(decisions) if not _hold_is_over(one, now)), None)


def _hold_is_over(decision: Cleared, now: datetime) -> bool:
    return decision.decision == HELD and decision.until is not None and decision.until <= now


def open_by(decision: Cleared, screened: ScreeningDone | None) -> frozenset[Limb]:
    """What a decision opens; a limb that an answer closed stays closed whatever was decided."""
    closed = {Limb(name) for name in names_in(screened.closed if screened else "")}
    return opened(names_in(decision.regions)) - closed


def _why(decision: Cleared | None, screened: ScreeningDone | None, now: datetime) -> Waits | None:
    if decision is None:
        return _undecided(screened)
    if decision.decision in (HELD, DECLINED):
        return Waits(decision.decision)
    if screened is not None and (why := _screening_says(decision, screened)) is not None:
        return why
    return Waits.OVER if decision.until is not None and decision.until <= now else None


def _undecided(screened: ScreeningDone | None) -> Waits:
    if screened is None:
        return Waits.NOT_SCREENED
    return Waits.DO_NOT_START if screened.tier == Tier.DO_NOT_START else Waits.NOT_CLEARED


def _screening_says(decision: Cleared, screened: ScreeningDone) -> Waits | None:
    """A decision holds for the screening it was made on; nobody opens "do not start"; a clinician's word ends."""
    if screened.screening != decision.screening or screened.tier == Tier.DO_NOT_START:
        return _undecided(screened)
    without_end = screened.tier == Tier.CLINICIAN_FIRST and decision.until is None
    return Waits.NOT_CLEARED if without_end else None
