"""The coach's week: who needs them first and why, the practice in numbers, a line per client."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from core.alert_use import AlertSeen
from core.plans import PAIN_CEILING
from core.safety.causes import Cause

QUIET_DAYS = 7  # own caution, no source
MISSED = 2  # sessions; own caution, no source
FEWEST_SETS = 2  # first sets before their share says anything; own caution, no source
REVIEW_WEEKS = 6  # a plan is looked at anew after 6 to 8 weeks; own caution, no source


class Need(StrEnum):
    """Why a client needs the coach, the most urgent first. Stored."""

    URGENT = "urgent"
    OPEN_ALERT = "open_alert"
    HELD = "held"
    CLEARANCE = "clearance"
    NO_PLAN = "no_plan"
    PAIN = "pain"
    LOADS_OFF = "loads_off"
    LOAD_ASKED = "load_asked"
    MISSED = "missed"
    QUIET = "quiet"
    ALERTED = "alerted"
    SCREENING_DUE = "screening_due"
    REVIEW_DUE = "review_due"


@dataclass(frozen=True, slots=True)
class ClientWeek:
    """One client's last seven days.

    `name` as the coach reads it (two of one name told apart), `client` the person's id. `in_range`: for each
    set 1 of open sets whether it was in the range it was done for. `off_expected`: reps of each set 1 above
    (+) or below (-) what was expected. `alerts_now`, `alerts_today`: alerts by tier; `urgent`: one of tier now
    is open. `pain_max` 0-10, None: never said. `answering`: not cleared, and nothing to decide yet;
    `waiting`: for the coach's clearance; `declined`: the coach decided against it. `loads_asked`: loads that
    wait for the coach's tap. `next_at`: the next session, None: none planned.
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
    client: int = 0
    urgent: bool = False
    answering: bool = False
    waiting: bool = False
    declined: bool = False
    no_plan: bool = False
    paused: bool = False
    finished: bool = False
    loads_asked: int = 0
    screening_due: bool = False
    review_due: bool = False
    off_expected: list[int] = field(default_factory=list)
    load: float | None = None  # effort x minutes of the seven days, None: no session was rated

    @property
    def resting(self) -> bool:
        """Whether no session is wanted now."""
        return self.paused or self.finished

    @property
    def missed(self) -> int:
        """Sessions planned and not done; the longer of this week's and those in a row."""
        return max(self.planned - self.done, self.missed_in_a_row, 0)


@dataclass(frozen=True, slots=True)
class Digest:
    """All of it; `needs_you` in the order of urgency, `weeks` as they came.

    `alerts`: those of the week; `idle`: causes that never led to an action.
    """

    needs_you: list[tuple[ClientWeek, list[Need]]]
    weeks: Sequence[ClientWeek]
    alerts: Sequence[AlertSeen] = ()
    idle: Sequence[Cause] = ()

    @property
    def by_need(self) -> list[int]:
        """All clients, by the person's id: who needs the coach first, then as they came."""
        first = [week.client for week, _ in self.needs_you]
        return [*first, *(week.client for week in self.weeks if week.client not in first)]

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
    def share_in_range(self) -> float | None:
        """Share of first sets in range, 0-1; None: there were none."""
        sets = [good for week in self.weeks for good in week.in_range]
        return sum(sets) / len(sets) if sets else None

    @property
    def off_expected(self) -> float | None:
        """Mean of reps above (+) or below (-) what was expected of set 1; None: nothing was expected."""
        off = [reps for week in self.weeks for reps in week.off_expected]
        return sum(off) / len(off) if off else None


def needs(week: ClientWeek) -> list[Need]:
    """Why this client needs the coach; empty: all is well."""
    found = {
        Need.URGENT: week.urgent,
        Need.OPEN_ALERT: week.open_alert and not week.urgent,
        Need.HELD: week.held,
        Need.CLEARANCE: week.waiting,
        Need.NO_PLAN: week.no_plan and not week.resting,
        Need.PAIN: week.pain_max is not None and week.pain_max > PAIN_CEILING,
        Need.LOADS_OFF: len(week.in_range) >= FEWEST_SETS and sum(week.in_range) * 2 < len(week.in_range),
        Need.LOAD_ASKED: week.loads_asked > 0,
        Need.MISSED: week.missed >= MISSED and not week.resting,
        Need.QUIET: week.quiet_days >= QUIET_DAYS and not week.resting,
        Need.ALERTED: (week.alerts_now > 0 or week.alerts_today > 0) and not week.open_alert,
        Need.SCREENING_DUE: week.screening_due,
        Need.REVIEW_DUE: week.review_due,
    }
    return [need for need in Need if found[need]]


def digest(
    weeks: Sequence[ClientWeek], alerts: Sequence[AlertSeen] = (), idle: Sequence[Cause] = ()
) -> Digest:
    """The week of a practice; the client with the most urgent reason first, then who has more of them, then by name."""
    found = [(week, reasons) for week in weeks if (reasons := needs(week))]
    found.sort(key=lambda pair: (_ranks(pair[1]), pair[0].name, pair[0].client))
    return Digest(found, weeks, alerts, idle)


def _ranks(reasons: list[Need]) -> list[int]:
    """The reasons by urgency, closed by a rank below all, so that another reason never ranks a client lower."""
    order = list(Need)
    return [*(order.index(reason) for reason in reasons), len(order)]
