"""Where somebody is or will be: another clock for some days or from now on, or no change at all."""

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta

from conversations.changing.state import Brief, Meaning
from conversations.dates.meaning import order_from
from conversations.dates.travel import Travel
from conversations.words import changing as words
from conversations.words import dates as date_words
from core.calendar.recurrence import Span
from core.calendar.zones import instant, local, same_clock, same_zone

A_DAY = timedelta(days=1)


def meaning(brief: Brief, trip: Travel, at: datetime) -> Meaning:
    """What the place means for the days as they stand."""
    there, here = date_words.zone_name(trip.zone), date_words.zone_name(brief.zone)
    if trip.span is None:
        if same_zone(trip.zone, brief.zone, local(at, brief.zone).date()):
            return _still(words.ON_THAT_CLOCK.format(here=here))
        return Meaning(words.FROM_NOW_ON.format(there=there), brief.planned_when, zone=trip.zone)
    if _as_planned(brief, trip.zone, trip.span):
        told = words.ON_THAT_CLOCK if there == here else words.SAME_CLOCK
        return _still(told.format(there=there, here=here), away=True)
    return _trip(brief, trip.zone, trip.span)


def back_to(moves: Sequence[tuple[datetime, str]], zone: str, there: str, ends: datetime) -> str:
    """The zone after a trip: what holds then by the trips said before, else home.

    `moves`: when which zone is planned to hold, the next first; `zone`: the one of now; `there`: the place left.
    """
    home = moves[-1][1] if moves else zone
    then = next((other for at, other in reversed(moves) if at <= ends), zone)
    return home if then == there else then


def end_of(last: date, home: str) -> datetime:
    """When a trip is over: at midnight after its last day, by the clock at home."""
    return instant(last + A_DAY, time(0), home)


def _still(told: str, *, away: bool = False) -> Meaning:
    return Meaning(told, still=True, away=away)


def _as_planned(brief: Brief, zone: str, span: Span) -> bool:
    """Whether the clock there shows what the clock here will show, and no trip that was said before is touched."""
    if brief.zone != brief.home:
        return False
    begin = instant(span.first, time(0), brief.zone)
    end = end_of(span.last, brief.zone)
    touched = any(begin <= moves <= end for moves, _ in brief.clock_moves)
    return not touched and same_clock(zone, brief.zone, span.first, span.last)


def _trip(brief: Brief, zone: str, span: Span) -> Meaning:
    after = back_to(brief.clock_moves, brief.zone, zone, end_of(span.last, brief.home))
    there, home = date_words.zone_name(zone), date_words.zone_name(after)
    told = words.TRIP.format(
        first=_day(brief, span.first), last=_day(brief, span.last), there=there, home=home
    )
    days = span.first.isoformat(), span.last.isoformat()
    return Meaning(told, brief.planned_when, zone=zone, first=days[0], last=days[1])


def _day(brief: Brief, on: date) -> str:
    return date_words.day(on, order_from(brief.date_order))
