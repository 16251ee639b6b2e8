"""Why the coach is told, and how fast."""

from enum import StrEnum


class Tier(StrEnum):
    """How fast somebody must know. Stored."""

    NOW = "now"  # called, called again, escalated until somebody says "I am on it"
    TODAY = "today"  # on the coach's list, at once
    WEEKLY = "weekly"  # in the digest


class Cause(StrEnum):
    """Stored: add freely, never rename."""

    # said or seen during a session
    EMERGENCY = "emergency"  # chest, breath, fainted, one-sided weakness, sudden severe headache
    FAINT = "faint"
    NERVE = "nerve"  # tingling or numb
    CIRCULATION = "circulation"  # blue, white or cold
    INJURY = "injury"
    SWELLING = "swelling"
    URINE = "urine"
    SOMETHING_WRONG = "something_wrong"  # "yes" to "Is something wrong right now?"
    NO_WORD = "no_word"  # no answer to that question
    STOPPED = "stopped"  # a stop without a sign of danger
    BANDS_HURT = "bands_hurt"  # pain under the band or elsewhere: bands came off
    CHECKS_FAILED = "checks_failed"  # two in one session
    UNSEEN_REFILL = "unseen_refill"
    BANDS_ON = "bands_on"  # too long, no word
    QUIET_SET = "quiet_set"
    AWAY = "away"  # the program was away while bands were on
    BROKEN = "broken"  # the program failed while bands were on
    # before and after
    PRESSURE_EMERGENCY = "pressure_emergency"
    SCREENED = "screened"  # a screening waits for a decision
    TODAY_CHANGED = "today_changed"  # an answer before the session holds it
    NUMB_STILL = "numb_still"  # more than 10 min after bands off
    NUMB_MORNING = "numb_morning"
    WEAKNESS = "weakness"
    CLOT_SIGNS = "clot_signs"
    MUSCLE_SIGNS = "muscle_signs"  # soreness out of proportion, swelling
    SIGNS_AFTER = "signs_after"  # breathless, chest pain or fainting after a session
    FEVER_AFTER = "fever_after"
    SORE = "sore"
    NOT_SURE_AFTER = "not_sure_after"
    NO_REPLY = "no_reply"  # to the next-morning question
    PAIN_PAUSED = "pain_paused"  # above the ceiling or not settled, twice in a row; or above 5
    PAIN_EASED = "pain_eased"
    # slower
    UNREACHABLE = "unreachable"  # the client's chat takes no messages
    MISSED = "missed"  # two sessions in a row
    TIGHTNESS_DRIFT = "tightness_drift"
    REFILL_SLOW_OFTEN = "refill_slow_often"
    LOOSE_OFTEN = "loose_often"


NOW = frozenset(
    {
        Cause.EMERGENCY,
        Cause.FAINT,
        Cause.NERVE,
        Cause.CIRCULATION,
        Cause.INJURY,
        Cause.SWELLING,
        Cause.URINE,
        Cause.SOMETHING_WRONG,
        Cause.NO_WORD,
        Cause.CHECKS_FAILED,
        Cause.BANDS_ON,
        Cause.QUIET_SET,
        Cause.AWAY,
        Cause.BROKEN,
        Cause.PRESSURE_EMERGENCY,
        Cause.NUMB_STILL,
        Cause.NUMB_MORNING,
        Cause.WEAKNESS,
        Cause.CLOT_SIGNS,
        Cause.MUSCLE_SIGNS,
        Cause.SIGNS_AFTER,
    }
)
WEEKLY = frozenset(
    {Cause.MISSED, Cause.TIGHTNESS_DRIFT, Cause.REFILL_SLOW_OFTEN, Cause.LOOSE_OFTEN, Cause.PAIN_EASED}
)
# The bands may be on when this happens: the client's words begin with taking them off.
WITH_BANDS = frozenset(
    {
        Cause.EMERGENCY,
        Cause.FAINT,
        Cause.NERVE,
        Cause.CIRCULATION,
        Cause.INJURY,
        Cause.SWELLING,
        Cause.URINE,
        Cause.SOMETHING_WRONG,
        Cause.NO_WORD,
        Cause.STOPPED,
        Cause.BANDS_HURT,
        Cause.CHECKS_FAILED,
        Cause.UNSEEN_REFILL,
        Cause.BANDS_ON,
        Cause.QUIET_SET,
        Cause.AWAY,
        Cause.BROKEN,
    }
)


def tier_of(cause: Cause) -> Tier:
    """How fast somebody must know of this."""
    if cause in NOW:
        return Tier.NOW
    return Tier.WEEKLY if cause in WEEKLY else Tier.TODAY


def bars_training(cause: Cause, *, settled: bool) -> bool:
    """An open alert of tier "now" keeps the client from starting a session until the coach has dealt with it.

    So does a screening or an answer that waits for the coach, an unanswered next morning and paused pain.
    """
    waits = {Cause.SCREENED, Cause.TODAY_CHANGED, Cause.NO_REPLY, Cause.PAIN_PAUSED, Cause.UNSEEN_REFILL}
    return not settled and (tier_of(cause) is Tier.NOW or cause in waits)
