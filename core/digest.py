"""The coach's week: who needs them first and why, the practice in numbers, a line per client."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

QUIET_DAYS = 7  # own caution, no source


class Need(StrEnum):
    """Why a client needs the coach, the most urgent first. Stored."""

    OPEN_ALERT = "open_alert"
    HELD = "held"
    ALERTED = "alerted"
    PAIN = "pain"
    LOADS_OFF = "loads_off"
    MISSED = "missed"
    QUIET = "quiet"


@dataclass(frozen=True, slots=True)
class ClientWeek:
    """One client's last seven days. `in_range`: for each set 1 of open sets whether it was 25-40."""

    name: str
    planned: int
    done: int
    loads_moved: int = 0
    in_range: list[bool] = field(default_factory=list)
    alerts_now: int = 0
    alerts_today: int = 0
    pain_max: int | None = None
    quiet_days: int = 0
    held: bool = False
    open_alert: bool = False
    missed_in_a_row: int = 0
    next_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Digest:
    """All of it; `needs_you` in the order of urgency."""

    needs_you: list[tuple[str, list[Need]]]
    weeks: Sequence[ClientWeek]

    @property
    def planned(self) -> int:
        """Sessions planned in the practice."""
        return sum(week.planned for week in self.weeks)

    @property
    def done(self) -> int:
        """Sessions done."""
        return sum(week.done for week in self.weeks)

    @property
    def share_in_range(self) -> float | None:
        """Share of first sets in range; None: there were none."""
        sets = [good for week in self.weeks for good in week.in_range]
        return sum(sets) / len(sets) if sets else None


def needs(week: ClientWeek) -> list[Need]:
    """Why this client needs the coach; empty: all is well."""
    found = {
        Need.OPEN_ALERT: week.open_alert,
        Need.HELD: week.held,
        Need.ALERTED: week.alerts_now > 0,
        Need.PAIN: week.pain_max is not None and week.pain_max > 3,
        Need.LOADS_OFF: len(week.in_range) >= 2 and sum(week.in_range) * 2 < len(week.in_range),
        Need.MISSED: week.planned - week.done >= 2,
        Need.QUIET: week.quiet_days >= QUIET_DAYS,
    }
    return [need for need in Need if found[need]]


def digest(weeks: Sequence[ClientWeek]) -> Digest:
    """The week of a practice; the client with the most urgent reason first."""
    order = list(Need)
    found = [(week.name, reasons) for week in weeks if (reasons := needs(week))]
    found.sort(key=lambda pair: (order.index(pair[1][0]), pair[0]))
    return Digest(found, weeks)
