"""From what was read to why the coach is told."""

from conversations.stopwords.kinds import Kind
from core.safety.causes import Cause

CAUSES: dict[Kind, Cause] = {
    Kind.EMERGENCY: Cause.EMERGENCY,
    Kind.STUCK: Cause.STUCK,
    Kind.FAINT: Cause.FAINT,
    Kind.NERVE: Cause.NERVE,
    Kind.CIRCULATION: Cause.CIRCULATION,
    Kind.SWELLING: Cause.SWELLING,
    Kind.URINE: Cause.URINE,
    Kind.INJURY: Cause.INJURY,
    Kind.STOP: Cause.STOPPED,
    Kind.TIGHT: Cause.TOO_TIGHT,
    Kind.HURTS: Cause.HURTS,
    Kind.SORE: Cause.SORE,
    Kind.HURT_LATELY: Cause.TODAY_CHANGED,
    Kind.FEVER: Cause.FEVER_AFTER,
    Kind.LIMP: Cause.WEAKNESS,
    Kind.WEAK: Cause.WEAKNESS,
}


def cause_of(kind: Kind) -> Cause | None:
    """The alert to raise at once; None: ask first, or nothing to say."""
    return CAUSES.get(kind)
