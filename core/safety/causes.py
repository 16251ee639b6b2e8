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
    STUCK = "stuck"  # a band does not come off
    NERVE = "nerve"  # tingling or numb
    CIRCULATION = "circulation"  # blue, white or cold
    INJURY = "injury"
    SWELLING = "swelling"
    URINE = "urine"
    SOMETHING_WRONG = "something_wrong"  # "yes" to "Is something wrong right now?"
    NO_WORD = "no_word"  # no answer to that question
    NOT_BETTER = "not_better"  # the same or worse after bands off
    STOPPED = "stopped"  # a stop without a sign of danger
    TOO_TIGHT = "too_tight"
    HURTS = "hurts"  # said outside a set
    BANDS_HURT = "bands_hurt"  # pain under the band or elsewhere: bands came off
    CHECKS_FAILED = "checks_failed"  # two in one session
    UNSEEN_REFILL = "unseen_refill"
    BANDS_ON = "bands_on"  # too long, no word
    QUIET_SET = "quiet_set"
    MAYBE_ON = "maybe_on"  # asked to put bands on, and no word: nobody knows whether they are
    AWAY = "away"  # the program was away while bands were on
    BROKEN = "broken"  # the program failed while bands were on
    # before and after
    PRESSURE_EMERGENCY = "pressure_emergency"
    PRESSURE_HIGH = "pressure_high"  # 180/110 or above without signs: a doctor today
    SCREENED = "screened"  # a screening waits for a decision
    TODAY_CHANGED = "today_changed"  # something new in their health: the coach looks first
    UNWELL = "unwell"  # fever, alcohol, a long trip: no session today
    PAIN_BEFORE = "pain_before"  # above the ceiling before the session
    DRILL_FAILED = "drill_failed"  # the bands did not come off fast enough
    PAIN_AFTER = "pain_after"  # where the band was or elsewhere, above the ceiling
    NUMB_AFTER = "numb_after"  # right after the session; asked again ten minutes after bands off
    NUMB_STILL = "numb_still"  # more than 10 min after bands off
    NUMB_MORNING = "numb_morning"
    WEAKNESS = "weakness"
    CLOT_SIGNS = "clot_signs"
    MUSCLE_SIGNS = "muscle_signs"  # soreness out of proportion, swelling
    SIGNS_AFTER = "signs_after"  # breathless, chest pain or fainting after a session
    FEVER_AFTER = "fever_after"
    SORE = "sore"
    NOT_SURE_AFTER = "not_sure_after"
    OTHER_AFTER = "other_after"  # something not on the list
    NO_REPLY = "no_reply"  # to the next-morning question
    PAIN_PAUSED = "pain_paused"  # above the ceiling or not settled, twice in a row; or above 5
    PAIN_EASED = "pain_eased"
    # slower
    UNREACHABLE = "unreachable"  # the client's chat takes no messages
    MISSED = "missed"  # two sessions in a row
    TIGHTNESS_DRIFT = "tightness_drift"
    REFILL_SLOW_OFTEN = "refill_slow_often"
    LOOSE_OFTEN = "loose_often"
    LAPSED = "lapsed"  # the bands were off, and no word came any more


NOW = frozenset(
    {
        Cause.EMERGENCY,
        Cause.FAINT,
        Cause.STUCK,
        Cause.NERVE,
        Cause.CIRCULATION,
        Cause.INJURY,
        Cause.SWELLING,
        Cause.URINE,
        Cause.SOMETHING_WRONG,
        Cause.NO_WORD,
        Cause.NOT_BETTER,
        Cause.CHECKS_FAILED,
        Cause.BANDS_ON,
        Cause.QUIET_SET,
        Cause.MAYBE_ON,
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
# A clinician has to have seen the client before these are settled.
GRAVE = frozenset(
    {
        Cause.EMERGENCY,
        Cause.PRESSURE_EMERGENCY,
        Cause.CLOT_SIGNS,
        Cause.SIGNS_AFTER,
        Cause.WEAKNESS,
        Cause.URINE,
    }
)
WEEKLY = frozenset(
    {
        Cause.MISSED,
        Cause.TIGHTNESS_DRIFT,
        Cause.REFILL_SLOW_OFTEN,
        Cause.LOOSE_OFTEN,
        Cause.PAIN_EASED,
        Cause.LAPSED,
    }
)


# Seen by the program, not said by the client.
OBSERVED = frozenset(
    {
        Cause.NO_WORD,
        Cause.BANDS_ON,
        Cause.QUIET_SET,
        Cause.MAYBE_ON,
        Cause.AWAY,
        Cause.BROKEN,
        Cause.CHECKS_FAILED,
        Cause.UNSEEN_REFILL,
        Cause.NO_REPLY,
        Cause.UNREACHABLE,
        Cause.MISSED,
        Cause.TIGHTNESS_DRIFT,
        Cause.REFILL_SLOW_OFTEN,
        Cause.LOOSE_OFTEN,
        Cause.LAPSED,
    }
)


def tier_of(cause: Cause) -> Tier:
    """How fast somebody must know of this."""
    if cause in NOW:
        return Tier.NOW
    return Tier.WEEKLY if cause in WEEKLY else Tier.TODAY


# These keep the client from training although they are not "now": they wait for the coach, or for an answer.
WAIT_FOR_COACH = frozenset(
    {
        Cause.SCREENED,
        Cause.PRESSURE_HIGH,
        Cause.TODAY_CHANGED,
        Cause.PAIN_BEFORE,
        Cause.DRILL_FAILED,
        Cause.UNSEEN_REFILL,
        Cause.BANDS_HURT,
        Cause.NUMB_AFTER,
        Cause.NO_REPLY,
        Cause.PAIN_PAUSED,
        Cause.SORE,
        Cause.FEVER_AFTER,
        Cause.NOT_SURE_AFTER,
        Cause.OTHER_AFTER,
    }
)


def bars_training(cause: Cause, *, settled: bool) -> bool:
    """Whether this alert keeps the client from starting a session until the coach has dealt with it."""
    return not settled and (tier_of(cause) is Tier.NOW or cause in WAIT_FOR_COACH)
