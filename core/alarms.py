"""Which cause is how urgent, and when an alert is sent again until a human answers."""

from datetime import datetime, timedelta
from enum import StrEnum


class Tier(StrEnum):
    """How urgent. Stored."""

    NOW = "now"
    TODAY = "today"
    WEEK = "week"


# Every cause that is not here is TODAY: an unknown cause must reach somebody.
TIERS = {
    cause: Tier.NOW
    for cause in (
        "said_tight said_injury said_urine said_swelling said_circulation said_nerve said_faint said_emergency "
        "something_wrong not_better bands_too_long went_quiet hurt_in_session two_failed_checks numb_after "
        "pressure_emergency dark_urine one_sided_swelling breathless weakness fainted "
    ).split()
} | {cause: Tier.WEEK for cause in ("note", "missed_sessions")}

# Besides every open alert of "now", these keep the client from training until the coach has dealt with them.
BARS = frozenset(
    "anything_new pain_before drill_failed no_morning_reply pain_not_settled numb_next_day sore_out_of_proportion "
    "muscles_swollen other_next_day".split()
)

SAME_WITHIN = timedelta(minutes=30)  # equal causes within it are one alert with a count
ROUNDS_MIN = (0, 5, 15, 30, 60, 120, 240)  # "now", after raising; own caution, no source
LONGEST_GAP = timedelta(hours=4)  # after those
TODAY_GAP = timedelta(hours=6)


def tier(cause: str) -> Tier:
    """How urgent a cause is."""
    return TIERS.get(cause, Tier.TODAY)


def bars(cause: str, urgency: str) -> bool:
    """Whether an open alert of this cause and urgency keeps the client from training."""
    return urgency == Tier.NOW or cause in BARS


def next_send(urgency: Tier, raised_at: datetime, sent: int) -> datetime | None:
    """When an unanswered alert goes out again after having gone out `sent` times; None: never.

    Now: after 5, 15, 30, 60, 120 and 240 min, then every 4 h, until somebody answers. Today: every 6 h.
    Weekly: in the digest only.
    """
    if urgency is Tier.WEEK:
        return None
    if urgency is Tier.TODAY:
        return raised_at + sent * TODAY_GAP
    listed = min(sent, len(ROUNDS_MIN) - 1)
    return raised_at + timedelta(minutes=ROUNDS_MIN[listed]) + (sent - listed) * LONGEST_GAP


def to_second_contact(urgency: Tier, sent: int) -> bool:
    """Whether this sending (counted from 1) also goes to the second contact."""
    return urgency is Tier.NOW and sent >= 2


def client_is_told(urgency: Tier, sent: int) -> bool:
    """Whether the client now hears that the coach could not be reached."""
    return urgency is Tier.NOW and sent == 3
