"""One client's plan in numbers, for the client or a referring clinician: pure arithmetic over facts."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from statistics import fmean

from core.calendar.missed import Attendance, Kept
from core.calendar.recurrence import monday
from core.calendar.zones import local
from core.facts import WORKED, CuffChecked, Measured, Rated, SessionEnded, SetDone, WalkDone
from core.outcomes import Change, girth_change, last_days, pain_change, reps_at_equal_load
from core.outcomes import Week as LoadWeek
from core.outcomes import week as load_week
from core.plans import Side
from core.safety.asking import Part
from core.safety.pain import Where

WENT_ON = ("go", "ease")
LATER = frozenset((*Part, "48h"))  # asked after the day's training; "48h" was stored before
A_WEEK = timedelta(weeks=1)
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


def report(taken: Taken) -> Report:
    """The numbers of a stretch of time."""
    due = [one for one in taken.kept if one.attendance is not Attendance.AHEAD]
    pain = pain_days(taken)
    effort = [one.score for one in taken.rated if one.what == "effort"]
    return Report(
        first=_day(taken.since, taken.zone),
        last=_day(taken.until, taken.zone),
        planned=len(due),
        done=sum(one.attendance is Attendance.DONE for one in due),
        sessions=sum(one.why in WORKED for one in taken.ended),
        stopped=sum(one.why not in WORKED for one in taken.ended),
        weeks=weeks(due, taken.zone),
        movements=movements(taken),
        walks=len(taken.walks),
        walk_minutes=sum(walk.minutes for walk in taken.walks),
        pain=pain,
        pain_trend=pain_trend([one.before for one in pain if one.before is not None]),
        effort=fmean(effort) if effort else None,
        checks=checks(taken.checks),
        girths=girths(taken),
        last_week=load_week(last_days(taken.loads, local(taken.until, taken.zone).date()))
        if taken.loads
        else None,
        mean_week=_mean_week(taken),
    )


def _mean_week(taken: Taken) -> float | None:
    """Load a week on average, None: less than two weeks are on record."""
    count = (taken.until - taken.since) / A_WEEK
    return sum(load for _, load in taken.loads) / count if taken.loads and count >= 2 else None


# --- attendance ---
def weeks(due: Sequence[Kept], zone: str) -> tuple[Week, ...]:
    """Week by week from the first to the last that had a session, weeks without one included."""
    planned = Counter(_monday(one, zone) for one in due)
    done = Counter(_monday(one, zone) for one in due if one.attendance is Attendance.DONE)
    if not planned:
        return ()
    first, last = min(planned), max(planned)
    count = (last - first).days // 7 + 1
    days = [first + timedelta(weeks=number) for number in range(count)]
    return tuple(Week(day.isoformat(), planned[day], done[day]) for day in days)


def _monday(one: Kept, zone: str) -> date:
    return monday(local(one.occurrence.at, zone).date())


# --- movements ---
def movements(taken: Taken) -> tuple[Movement, ...]:
    """Each movement and side that was trained, in the order of first doing."""
    ordered = sorted(taken.sets, key=lambda one: (one.done_at, one.set_no))
    kinds = dict.fromkeys((one.movement, one.side) for one in ordered)
    found = [
        _movement(taken, name, side, [one for one in ordered if (one.movement, one.side) == (name, side)])
        for name, side in kinds
    ]
    return tuple(one for one in found if one.firsts)


def _movement(taken: Taken, name: str, side: Side, sets: list[SetDone]) -> Movement:
    firsts = tuple(_first(taken, one) for one in sets if one.set_no == 1)
    aimed = [one for one in firsts if one.low is not None and one.high is not None]
    ranged = [one for one in aimed if one.low != one.high]
    fixed = [one for one in aimed if one.low == one.high]
    expected = [one for one in firsts if one.expected_low is not None]
    # Gentle sessions were ended with reps left and fixed sets at their number: they say nothing of strength.
    trend = reps_at_equal_load([(date.fromisoformat(one.day), one.doing, one.reps) for one in ranged])
    called = (taken.names or {}).get(name, name.replace("_", " "))
    return Movement(
        name=called if side is Side.BOTH else f"{called}, {side.value}",
        firsts=firsts,
        sessions=len({one.session for one in sets}),
        reps=sum(one.reps for one in sets),
        in_range=sum(_within(one.reps, one.low, one.high) for one in ranged),
        ranged=len(ranged),
        full=sum(one.reps >= (one.low or 0) for one in fixed),
        fixed=len(fixed),
        as_expected=sum(_within(one.reps, one.expected_low, one.expected_high) for one in expected),
        expected=len(expected),
        at_load=str(trend.load) if trend else "",
        percent=trend.percent if trend else None,
        sure=trend.sure if trend else False,
    )


def _first(taken: Taken, one: SetDone) -> First:
    low, high = (taken.ranges or {}).get((one.session, one.movement), (None, None))
    day = _day(one.done_at, taken.zone)
    return First(day, one.reps, one.doing, one.aim_low, one.aim_high, low, high, one.rough)


def _within(reps: int, low: int | None, high: int | None) -> bool:
    return low is not None and high is not None and low <= reps <= high


# --- pain and checks ---
def pain_days(taken: Taken) -> tuple[Pain, ...]:
    """Pain by session, in the order of sessions."""
    scores: dict[str, dict[str, int]] = {}
    days: dict[str, str] = {}
    for one in sorted((each for each in taken.rated if each.what == "pain"), key=lambda each: each.at):
        burn = one.part == "after" and one.where == Where.MUSCLE
        part = "morning" if one.part in LATER else one.part
        mine = scores.setdefault(one.session, {})
        mine[part] = max(mine.get(part, 0), 0 if burn else one.score)
        days.setdefault(one.session, _day(one.at, taken.zone))
    return tuple(
        Pain(days[session], parts.get("before"), parts.get("after"), parts.get("morning"))
        for session, parts in scores.items()
    )


def pain_trend(before: Sequence[int]) -> PainTrend | None:
    """From the first to the last third; None with fewer than two ratings."""
    if len(before) < 2:
        return None
    third = max(1, len(before) // 3)
    first, last = fmean(before[:third]), fmean(before[-third:])
    return PainTrend(first, last, pain_change(first, last))


def checks(found: Sequence[CuffChecked]) -> Checks:
    """What the cuff checks came to."""
    verdicts = Counter(one.verdict for one in found)
    on = [one for one in found if one.verdict in WENT_ON]
    unseen = sum("unseen_refill" in one.because for one in on)
    tight = [one.tightness for one in on if one.tightness is not None]
    mean = fmean(tight) if tight else None
    return Checks(len(found), len(on) - unseen, verdicts["loosen"], verdicts["stop"], mean, unseen)


def girths(taken: Taken) -> tuple[GirthTrend, ...]:
    """The first and the last measurement of each limb; none with fewer than two."""
    by_limb: dict[str, list[Measured]] = {}
    for one in sorted(taken.measured, key=lambda each: each.at):
        by_limb.setdefault(one.limb, []).append(one)
    return tuple(_girth(limb, found, taken.zone) for limb, found in by_limb.items() if len(found) > 1)


def _girth(limb: str, found: Sequence[Measured], zone: str) -> GirthTrend:
    first, last = found[0], found[-1]
    change = girth_change(first.girth_cm, last.girth_cm)
    name = limb.replace("_", " ")
    return GirthTrend(name, _day(first.at, zone), first.girth_cm, _day(last.at, zone), last.girth_cm, change)


def _day(at: datetime, zone: str) -> str:
    return local(at, zone).date().isoformat()
