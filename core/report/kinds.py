"""The numbers of a report and what they are made of; days are ISO dates on the client's calendar."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime

from core.calendar.missed import Kept
from core.calendar.zones import local
from core.facts import CuffChecked, Measured, Rated, SessionEnded, SetDone, WalkDone
from core.outcomes import Change
from core.outcomes import Week as LoadWeek

Range = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Taken:
    """The facts of one client from `since` up to `until`, days in `zone`.

    `ranges`: by session and movement the reps of set 1 that were expected four times in five. `names`: movement
    to what people call it. `loads`: day and effort x minutes of each rated session.
    """

    zone: str
    since: datetime
    until: datetime
    kept: Sequence[Kept] = ()
    ended: Sequence[SessionEnded] = ()
    sets: Sequence[SetDone] = ()
    walks: Sequence[WalkDone] = ()
    rated: Sequence[Rated] = ()
    checks: Sequence[CuffChecked] = ()
    measured: Sequence[Measured] = ()
    ranges: Mapping[tuple[str, str], Range] | None = None
    names: Mapping[str, str] | None = None
    loads: Sequence[tuple[date, float]] = ()


@dataclass(frozen=True, slots=True)
class First:
    """Set 1 of one day: clean reps, load, the range wanted (`low` to `high`) and the one expected."""

    day: str
    reps: int
    doing: str
    low: int | None
    high: int | None
    expected_low: int | None = None
    expected_high: int | None = None
    rough: bool = False


@dataclass(frozen=True, slots=True)
class Movement:
    """One movement (and side).

    `in_range` of `ranged` first sets of open sets, `full` of `fixed` first sets of fixed sets, `as_expected` of
    `expected`. `percent`: change of reps at equal load `at_load`; `sure`: beyond its day-to-day spread.
    """

    name: str
    firsts: tuple[First, ...]
    sessions: int
    reps: int
    in_range: int
    ranged: int
    full: int
    fixed: int
    as_expected: int
    expected: int
    at_load: str = ""
    percent: float | None = None
    sure: bool = False

    @property
    def first_load(self) -> str:
        """The load of the first session."""
        return self.firsts[0].doing

    @property
    def last_load(self) -> str:
        """The load of the last session."""
        return self.firsts[-1].doing


@dataclass(frozen=True, slots=True)
class Week:
    """One week from its Monday: sessions planned and, of those, done."""

    monday: str
    planned: int
    done: int


@dataclass(frozen=True, slots=True)
class Pain:
    """Pain of one session, 0-10; None: not said. `after` leaves out the burn of the working muscle.

    `morning`: the worst of that evening, the next morning and two days after.
    """

    day: str
    before: int | None
    after: int | None
    morning: int | None


@dataclass(frozen=True, slots=True)
class PainTrend:
    """Pain before sessions, mean of the first and of the last third; the change by the published rule."""

    first: float
    last: float
    change: Change


@dataclass(frozen=True, slots=True)
class Checks:
    """Looks at single limbs: how many, passed, loosened, stopped; mean tightness of those trained with.

    `unseen`: the refill could not be seen and they trained as the coach allowed, which is no passed check.
    """

    looks: int
    passed: int
    loosened: int
    stopped: int
    tightness: float | None
    unseen: int = 0


@dataclass(frozen=True, slots=True)
class GirthTrend:
    """One limb, first and last measurement in cm, each before training; `change` beyond measuring error."""

    limb: str
    first_day: str
    first_cm: float
    last_day: str
    last_cm: float
    change: Change


@dataclass(frozen=True, slots=True)
class Report:
    """All numbers of the page. Days are ISO dates on the client's calendar.

    `last_week`: effort x minutes of the seven days up to the end; `mean_week`: the same a week on average.
    """

    first: str
    last: str
    planned: int
    done: int
    sessions: int
    stopped: int
    weeks: tuple[Week, ...]
    movements: tuple[Movement, ...]
    walks: int
    walk_minutes: float
    pain: tuple[Pain, ...]
    pain_trend: PainTrend | None
    effort: float | None
    checks: Checks
    girths: tuple[GirthTrend, ...] = ()
    last_week: LoadWeek | None = None
    mean_week: float | None = None


def day_of(at: datetime, zone: str) -> str:
    """The ISO date of a moment in `zone`."""
    return local(at, zone).date().isoformat()
