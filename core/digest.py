"""The coach's week: who needs them first and why, the practice in numbers, a line per client."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from core.plans import PAIN_CEILING

QUIET_DAYS = 7  # own caution, no source
MISSED = 2  # sessions; own caution, no source
FEWEST_SETS = 2  # first sets before their share says anything; own caution, no source


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
    """One client's last seven days.

    `in_range`: for each set 1 of open sets whether it was 25-40. `alerts_now`, `alerts_today`: alerts by
    tier. `pain_max` 0-10, None: never said. `next_at`: the next session, None: none planned.
    """

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

    @property
    def missed(self) -> int:
        """Sessions planned and not done; the longer of this week's and those in a row."""
        return max(self.planned - self.done, self.missed_in_a_row, 0)


@dataclass(frozen=True, slots=True)
class Digest:
    """All of it; `needs_you` in the order of urgency, `weeks` as they came."""

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
    def loads_moved(self) -> int:
        """Loads that went up or down."""
        return sum(week.loads_moved for week in self.weeks)

    @property
    def alerts_now(self) -> int:
        """Alerts of the tier now."""
        return sum(week.alerts_now for week in self.weeks)

    @property
    def alerts_today(self) -> int:
        """Alerts of the tier today."""
        return sum(week.alerts_today for week in self.weeks)

    @property
    def share_in_range(self) -> float | None:
        """Share of first sets in range, 0-1; None: there were none."""
        sets = [good for week in self.weeks for good in week.in_range]
        return sum(sets) / len(sets) if sets else None


def needs(week: ClientWeek) -> list[Need]:
    """Why this client needs the coach; empty: all is well."""
    found = {
        Need.OPEN_ALERT: week.open_alert,
        Need.HELD: week.held,
        Need.ALERTED: week.alerts_now > 0 or week.alerts_today > 0,
        Need.PAIN: week.pain_max is not None and week.pain_max > PAIN_CEILING,
        Need.LOADS_OFF: len(week.in_range) >= FEWEST_SETS and sum(week.in_range) * 2 < len(week.in_range),
        Need.MISSED: week.missed >= MISSED,
        Need.QUIET: week.quiet_days >= QUIET_DAYS,
    }
    return [need for need in Need if found[need]]


def digest(weeks: Sequence[ClientWeek]) -> Digest:
    """The week of a practice; the client with the most urgent reason first, then by name."""
    order = list(Need)
    found = [(week.name, reasons) for week in weeks if (reasons := needs(week))]
    found.sort(key=lambda pair: ([order.index(reason) for reason in pair[1]], pair[0]))
    return Digest(found, weeks)
