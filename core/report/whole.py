"""The whole page: attendance, and all the rest put together."""

from collections import Counter
from collections.abc import Sequence
from datetime import date, timedelta
from statistics import fmean

from core.calendar.missed import Attendance, Kept
from core.calendar.recurrence import monday
from core.calendar.zones import local
from core.facts import WORKED
from core.outcomes import last_days
from core.outcomes import week as load_week
from core.report.body import checks, girths, pain_days, pain_trend
from core.report.kinds import Report, Taken, Week, day_of
from core.report.moving import movements

A_WEEK = timedelta(weeks=1)


def report(taken: Taken) -> Report:
    """The numbers of a stretch of time."""
    due = [one for one in taken.kept if one.attendance is not Attendance.AHEAD]
    pain = pain_days(taken)
    effort = [one.score for one in taken.rated if one.what == "effort"]
    return Report(
        first=day_of(taken.since, taken.zone),
        last=day_of(taken.until, taken.zone),
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
