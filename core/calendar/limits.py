"""How often: at most three sessions in seven days for each region, 36 h between, one banded walk a day.

The coach may widen them for a client, with a note.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum

from core.calendar.zones import local
from core.plans import Region

# Three days a week as in Yasuda et al. 2012, PLoS ONE (PMC3534116); once or twice is common practice.
SESSIONS_A_WEEK = 3
# "At least 36 h between sessions": trial protocol, PMC7534706, table 3.
HOURS_APART = 36
# Once daily as in Abe et al. 2009 (walking with leg belts); own caution, no source, that it is not more.
WALKS_A_DAY = 1
# How far a coach may widen them for a client; own caution, no source.
MOST_SESSIONS_A_WEEK = 6
FEWEST_HOURS_APART = 24
WEEK = timedelta(days=7)
DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Limits:
    """Per client. `hours_apart` in h between the starts of two sessions of one region."""

    sessions_a_week: int = SESSIONS_A_WEEK
    hours_apart: int = HOURS_APART
    walks_a_day: int = WALKS_A_DAY


USUAL = Limits()


def limits_to_text(limits: Limits) -> str:
    """As stored: "4/24", sessions a week and hours between."""
    return f"{limits.sessions_a_week}/{limits.hours_apart}"


def limits_from_text(text: str) -> Limits:
    """The limits that were stored, the usual ones for "". Raises ValueError for anything outside the bounds."""
    if not text:
        return USUAL
    sessions, _, hours = text.partition("/")
    limits = Limits(int(sessions), int(hours))
    if not SESSIONS_A_WEEK <= limits.sessions_a_week <= MOST_SESSIONS_A_WEEK:
        raise ValueError(f"sessions_a_week: {SESSIONS_A_WEEK} to {MOST_SESSIONS_A_WEEK}")
    if not FEWEST_HOURS_APART <= limits.hours_apart <= HOURS_APART:
        raise ValueError(f"hours_apart: {FEWEST_HOURS_APART} to {HOURS_APART} h")
    return limits


class Limit(StrEnum):
    """Which limit a session would break. Stored."""

    SESSIONS_A_WEEK = "sessions_a_week"
    HOURS_APART = "hours_apart"
    WALKS_A_DAY = "walks_a_day"


@dataclass(frozen=True, slots=True)
class Bout:
    """One region trained once with bands, done or planned. A walk counts apart from lifting."""

    at: datetime
    region: Region
    walk: bool = False


def broken_limit(bout: Bout, others: Iterable[Bout], zone: str, limits: Limits | None = None) -> Limit | None:
    """The first limit that `bout` would break beside `others`, before or after it; None: it is fine.

    Days are the client's dates, so Monday, Wednesday, Friday, Monday is fine at any hour; hours are elapsed.
    """
    limits = limits or Limits()
    same = [other for other in others if other.region is bout.region and other.walk is bout.walk]
    if bout.walk:
        too_many = _most_in(bout, same, zone, DAY) > limits.walks_a_day
        return Limit.WALKS_A_DAY if too_many else None
    if any(_elapsed(bout, other) < timedelta(hours=limits.hours_apart) for other in same):
        return Limit.HOURS_APART
    too_many = _most_in(bout, same, zone, WEEK) > limits.sessions_a_week
    return Limit.SESSIONS_A_WEEK if too_many else None


def broken_limits(bouts: Iterable[Bout], zone: str, limits: Limits | None = None) -> dict[Bout, Limit]:
    """Each bout of a plan that breaks a limit beside those before it, and which."""
    fine: list[Bout] = []
    broken: dict[Bout, Limit] = {}
    for bout in sorted(bouts, key=lambda bout: bout.at.astimezone(UTC)):
        limit = broken_limit(bout, fine, zone, limits)
        if limit is None:
            fine.append(bout)
        else:
            broken[bout] = limit
    return broken


def _elapsed(one: Bout, other: Bout) -> timedelta:
    return abs(one.at.astimezone(UTC) - other.at.astimezone(UTC))


def _most_in(bout: Bout, same: list[Bout], zone: str, length: timedelta) -> int:
    """The most bouts, `bout` included, on any run of dates of this length that contains it."""
    day = local(bout.at, zone).date()
    days = [local(other.at, zone).date() for other in same]
    starts = [day - timedelta(days=back) for back in range(length.days)]
    return 1 + max(sum(start <= other < start + length for other in days) for start in starts)
