"""The days and times of a plan: what was typed, and whether it breaks a usual limit."""

from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta

from conversations.dates import Ambiguous, ClockFace, DayOrder, NotUnderstood, Repeat, read
from core.calendar.limits import USUAL, Bout, Limit, Limits, broken_limits
from core.calendar.occurrences import occurrences_between
from core.calendar.recurrence import Recurrence
from core.calendar.stored import when_to_text
from core.calendar.zones import instant
from core.plans import Plan, Scheme

NOT_WEEKLY = "not_weekly"  # one date, where days of the week are wanted
LOOKED_AT = timedelta(days=29)  # four weeks, so that every other week shows too


@dataclass(frozen=True, slots=True)
class Days:
    """Recurrences that the words can mean, as stored text; none: `problem` says why (a stored name)."""

    readings: tuple[str, ...] = ()
    problem: str | None = None


def read_days(
    text: str, at: datetime, zone: str, order: DayOrder | None = None, face: ClockFace = ClockFace.H24
) -> Days:
    """Weekly days and times, as the coach writes them; the zone is the client's."""
    reading = read(text, at, zone, order, face)
    if isinstance(reading, NotUnderstood):
        return Days(problem=reading.problem.value)
    found = reading.readings if isinstance(reading, Ambiguous) else (reading,)
    weekly = tuple(when_to_text(one.recurrence) for one in found if isinstance(one, Repeat))
    return Days(weekly) if weekly else Days(problem=NOT_WEEKLY)


def limits_broken(plan: Plan, recurrence: Recurrence, allowed: Limits = USUAL) -> tuple[Limit, ...]:
    """Every limit of this client that these days would break; each is looked at as if it were the only one."""
    begin = instant(recurrence.start, time(0), recurrence.zone)
    times = [one.at for one in occurrences_between(recurrence, begin, begin + LOOKED_AT)]
    parts = {(one.region, one.scheme is Scheme.WALK) for one in plan.exercises}
    bouts = [Bout(at, region, walk) for at in times for region, walk in sorted(parts)]
    broken = {
        limit
        for alone in (replace(allowed, hours_apart=0), replace(allowed, sessions_a_week=len(bouts)))
        for limit in broken_limits(bouts, recurrence.zone, alone).values()
    }
    return tuple(limit for limit in Limit if limit in broken)
