"""When the questions after a session are asked, in the client's own time."""

from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from enum import StrEnum

from core.calendar.zones import instant, local
from core.progression.prior import LAYOFF_DAYS
from core.safety.sources import Source

# Own caution, no source. As many as the gentle sessions of `core.progression.prior`, and another rule: those hold
# the dose down, of the client and of each movement; these look for muscle breakdown, to which whoever is new is
# nearest. Were more sessions gentle, nobody would be new for longer.
FIRST_SESSIONS = 2
EVENING = (time(18), time(21))  # local; at least 2 h after the session
AFTER_SESSION = timedelta(hours=2)
MORNING = time(8)  # local, the next day
NIGHT_ENDS = timedelta(hours=4)  # a session at half past midnight belongs to the day before
LATER = timedelta(hours=48)  # soreness peaks 24-72 h after (from memory)
NO_REPLY = timedelta(hours=12)
LARGE_JUMP = 0.10  # of the load; above the 2-10 % of ACSM 2009
SOURCES = (Source.AFTERCARE,)


class Part(StrEnum):
    """Which question after a session. Stored."""

    EVENING = "evening"
    MORNING = "morning"
    TWO_DAYS = "two_days"


@dataclass(frozen=True, slots=True)
class After:
    """What matters for the questions after a session.

    `number` counts a client's sessions from 1; `days_off` since the one before (None: the first); `jump` the
    share by which the load went up; `hot_or_feverish` as said that day; `stopped`: it did not end as planned.
    """

    number: int
    days_off: int | None = None
    jump: float = 0.0
    hot_or_feverish: bool = False
    stopped: bool = False

    @property
    def needs_care(self) -> bool:
        """New, back after two weeks, or hot: muscle breakdown is likelier (Tabata et al. 2016). Stopped: own caution."""
        back = self.days_off is not None and self.days_off >= LAYOFF_DAYS
        return self.number <= FIRST_SESSIONS or back or self.hot_or_feverish or self.stopped


def asked_after(after: After, ended_at: datetime, zone: str) -> tuple[tuple[Part, datetime], ...]:
    """The questions after a session that ended at `ended_at`, with their times in UTC.

    The next morning always; the evening and 48 h later when it needs care, 48 h also after a large jump.
    """
    day = (local(ended_at, zone) - NIGHT_ENDS).date()
    asked = [(Part.MORNING, instant(day + timedelta(days=1), MORNING, zone))]
    evening = _evening(ended_at, zone)
    if after.needs_care and evening is not None:
        asked.insert(0, (Part.EVENING, evening))
    if after.needs_care or after.jump > LARGE_JUMP:
        asked.append((Part.TWO_DAYS, _two_days(ended_at, zone)))
    return tuple(asked)


def _two_days(ended_at: datetime, zone: str) -> datetime:
    """48 h later; when that is at night, the next morning."""
    at = ended_at.astimezone(UTC) + LATER
    here = local(at, zone)
    if here.time() < MORNING:
        return instant(here.date(), MORNING, zone)
    return at if here.time() <= EVENING[1] else instant(here.date() + timedelta(days=1), MORNING, zone)


def _evening(ended_at: datetime, zone: str) -> datetime | None:
    """At 18:00 or two hours after, whichever is later; None when that is after 21:00."""
    day = local(ended_at, zone).date()
    first, last = (instant(day, at, zone) for at in EVENING)
    at = max(first, ended_at.astimezone(UTC) + AFTER_SESSION)
    return at if at <= last else None
