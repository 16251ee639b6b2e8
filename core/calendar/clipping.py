"""The part of a plan's days that lies between two instants, as days of their own."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, timedelta

from core.calendar.recurrence import Once, Recurrence, Span, When
from core.calendar.zones import instant, local

DAY = timedelta(days=1)


def within(when: When, begin: datetime | None, end: datetime | None) -> When | None:
    """The sessions with begin <= at < end (None: no bound on that side); None: there are none.

    A session that was moved into or out of the bounds counts where it was moved to.
    """
    match when:
        case Once():
            return when if _inside(when.at, when.zone, begin, end) else None
        case Recurrence():
            return _rule_within(when, begin, end)


def _inside(at: datetime, zone: str, begin: datetime | None, end: datetime | None) -> bool:
    there = instant(at.date(), at.time(), zone)
    return (begin is None or begin <= there) and (end is None or there < end)


def _rule_within(when: Recurrence, begin: datetime | None, end: datetime | None) -> Recurrence | None:
    first, last = _first(when, begin, end), _last(when, begin, end)
    extra = [at for at in when.extra if _inside(at, when.zone, begin, end)]
    if first is None or (last is not None and last < first):
        extra += [moved.to for moved in when.moved if _inside(moved.to, when.zone, begin, end)]
        return Recurrence((), when.zone, when.start, extra=tuple(extra)) if extra else None
    in_rule = Span(first, last or date.max)
    stays = [one for one in when.moved if _inside(one.to, when.zone, begin, end)]
    extra += [one.to for one in stays if one.day not in in_rule]
    gone = [Span(one.day, one.day) for one in when.moved if one.day in in_rule and one not in stays]
    return replace(
        when,
        start=first,
        until=last,
        skipped=(*when.skipped, *gone),
        moved=tuple(one for one in stays if one.day in in_rule),
        extra=tuple(extra),
    )


def _first(when: Recurrence, begin: datetime | None, end: datetime | None) -> date | None:
    """The first date of the rule inside the bounds; it is in a week that counts, so the rhythm stays."""
    day = when.start if begin is None else max(when.start, local(begin, when.zone).date() - DAY)
    ahead = (day + offset * DAY for offset in range(when.every * 7 + 7))
    return _found(when, ahead, begin, end)


def _last(when: Recurrence, begin: datetime | None, end: datetime | None) -> date | None:
    """The last date of the rule inside the bounds; without a bound the rule's own end."""
    if end is None:
        return when.until
    day = local(end, when.zone).date() + DAY
    day = day if when.until is None else min(day, when.until)
    back = (day - offset * DAY for offset in range(when.every * 7 + 7))
    return _found(when, back, begin, end) or when.start - DAY


def _found(
    when: Recurrence, days: Iterable[date], begin: datetime | None, end: datetime | None
) -> date | None:
    for day in days:
        slot = when.falls_on(day)
        if slot is not None and _inside(datetime.combine(day, slot.at), when.zone, begin, end):
            return day
    return None
