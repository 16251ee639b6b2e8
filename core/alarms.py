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
        "dark_urine one_sided_swelling breathless weakness fainted "
    ).split()
} | {cause: Tier.WEEK for cause in ("note", "missed_sessions")}

SAME_WITHIN = timedelta(minutes=30)  # equal causes within it are one alert with a count
FIRST_REPEAT = timedelta(minutes=5)
SECOND_REPEAT = timedelta(minutes=15)
LONGEST_GAP = timedelta(hours=6)


def tier(cause: str) -> Tier:
    """How urgent a cause is."""
    return TIERS.get(cause, Tier.TODAY)


def next_send(urgency: Tier, raised_at: datetime, sent: int) -> datetime | None:
    """When an unanswered alert goes out again after having gone out `sent` times; None: never.

    Now: after 5 and 15 min, then with a gap that doubles up to 6 h, until somebody answers.
    Today: once more after 4 h, then every 6 h. Weekly: in the digest only.
    """
    if urgency is Tier.WEEK:
        return None
    if urgency is Tier.TODAY:
        return raised_at + timedelta(hours=4) + max(0, sent - 1) * LONGEST_GAP
    if sent <= 1:
        return raised_at + FIRST_REPEAT
    if sent == 2:
        return raised_at + SECOND_REPEAT
    doubled = timedelta(minutes=15 * 2 ** min(sent - 2, 10))
    return raised_at + min(doubled, SECOND_REPEAT + (sent - 2) * LONGEST_GAP)


def to_second_contact(urgency: Tier, sent: int) -> bool:
    """Whether this sending (counted from 1) also goes to the second contact."""
    return urgency is Tier.NOW and sent >= 2


def client_is_told(urgency: Tier, sent: int) -> bool:
    """Whether the client now hears that the coach could not be reached."""
    return urgency is Tier.NOW and sent == 3
