"""When an alert is sent again and to whom, until somebody says "I am on it". It is never dropped.

Pure: the caller stores how many rounds went out and when the next is due, in the same commit as the alert.
"""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum

from core.safety.causes import Cause, Tier, tier_of
from core.safety.sources import Source

# All of these: own caution, no source.
ROUNDS_MIN = (0, 5, 15, 30, 60, 120, 240)  # after raising; from 5 with the second contact, at 15 the client
LONGEST_GAP = timedelta(hours=4)  # between rounds after those
CLIENT_ROUND = 2  # counted from 0: the one at 15 min
DAILY = timedelta(days=1)  # "today" alerts that nobody took, and taken ones that nobody settled
TOGETHER = timedelta(minutes=30)  # equal causes within this are only counted, later ones are sent at once
SOURCES = (Source.ESCALATION, Source.GROUPING)


class Who(StrEnum):
    """Stored."""

    COACH = "coach"
    SECOND = "second"  # the second contact
    CLIENT = "client"  # told that the coach could not be reached, and what to do


@dataclass(frozen=True, slots=True)
class Round:
    """One sending of an alert: when, in UTC, and to whom."""

    at: datetime
    to: tuple[Who, ...]


def next_round(cause: Cause, raised_at: datetime, rounds: int, *, taken: bool = False) -> Round | None:
    """The round after `rounds` sendings; None: somebody took it, or it only stands in the weekly digest.

    Raises ValueError for a negative count.
    """
    if rounds < 0:
        raise ValueError("rounds: 0 or more")
    if taken:
        return None
    raised_at = raised_at.astimezone(UTC)
    match tier_of(cause):
        case Tier.NOW:
            return Round(raised_at + _delay(rounds), _whom(rounds))
        case Tier.TODAY:
            return Round(raised_at + rounds * DAILY, (Who.COACH,))
        case Tier.WEEKLY:
            return None


def _delay(rounds: int) -> timedelta:
    """From raising to this round."""
    listed = min(rounds, len(ROUNDS_MIN) - 1)
    return timedelta(minutes=ROUNDS_MIN[listed]) + (rounds - listed) * LONGEST_GAP


def _whom(rounds: int) -> tuple[Who, ...]:
    if rounds == 0:
        return (Who.COACH,)
    return (Who.COACH, Who.SECOND, Who.CLIENT) if rounds == CLIENT_ROUND else (Who.COACH, Who.SECOND)


def asked_again_at(taken_at: datetime) -> datetime:
    """When the coach who is on it is asked whether it is settled, in UTC."""
    return taken_at.astimezone(UTC) + DAILY


def joins(cause: Cause, other: Cause, *, taken: bool) -> bool:
    """Whether this is counted into an open alert of the same client: of the same cause, and nobody took it yet.

    It goes on being sent until somebody does. Once taken, the same thing again is a new alert: it must be heard.
    """
    return cause is other and not taken


def sounds_again(at: datetime, last_at: datetime) -> bool:
    """Whether one more of a cause last raised at `last_at` is sent at once, or only counted: half an hour apart."""
    return at - last_at > TOGETHER
