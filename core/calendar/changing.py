"""One change to when somebody trains, as a new value: a session left out, moved or added, other days, a zone."""

from dataclasses import replace
from datetime import date, datetime, time, timedelta

from core.calendar.occurrences import Occurrence, occurrences_between
from core.calendar.recurrence import Once, Recurrence, Span, When, move, skip
from core.calendar.zones import instant, local

DAY = timedelta(days=1)


def on_date(when: When, day: date) -> Occurrence | None:
    """The session that takes place on that local date as things stand; None: there is none."""
    begin = instant(day, time(0), when.zone)
    found = occurrences_between(when, begin - DAY, begin + 2 * DAY)
    return next((one for one in found if local(one.at, when.zone).date() == day), None)


def planned_in(when: When, span: Span) -> tuple[Occurrence, ...]:
    """The sessions on the local dates of the span, in order."""
    begin, end = instant(span.first, time(0), when.zone), instant(span.last, time(0), when.zone)
    found = occurrences_between(when, begin - DAY, end + 2 * DAY)
    return tuple(one for one in found if local(one.at, when.zone).date() in span)


def left_out(when: When, span: Span) -> When | None:
    """Without the sessions of the span; None: nothing is planned any more."""
    match when:
        case Once():
            return None if when.at.date() in span else when
        case Recurrence():
            single = tuple(at for at in when.extra if at.date() not in span)
            nothing = not (when.slots or single)
            return None if nothing else skip(when, span.first, span.last)


def shifted(when: When, session: Occurrence, to: datetime) -> When:
    """With this session at the local time `to` instead. Raises ValueError when it is not planned."""
    match when:
        case Once():
            return Once(to, when.zone)
        case Recurrence():
            was = local(session.at, when.zone).replace(tzinfo=None, fold=0)
            if was in when.extra and session.day == was.date():
                return replace(when, extra=tuple(to if at == was else at for at in when.extra))
            return move(when, session.day, to)


def added(when: When | None, to: datetime, zone: str) -> When:
    """With one more session at the local time `to`. Raises ValueError when that date has one already."""
    if when is None:
        return Once(to, zone)
    if on_date(when, to.date()) is not None:
        raise ValueError(f"to: {to.date()} has a session already")
    match when:
        case Once():
            return Recurrence((), zone, min(when.at, to).date(), extra=(when.at, to))
        case Recurrence():
            return replace(when, extra=(*when.extra, to))


def replaced(when: When | None, following: Recurrence, now: datetime) -> Recurrence:
    """The new days; sessions already planned before they begin stay, as single ones.

    At most a year of them is kept.
    """
    if when is None or when.zone != following.zone:
        return following
    begins = instant(following.start, time(0), following.zone)
    kept = occurrences_between(when, now, min(begins, now + timedelta(days=366))) if now < begins else ()
    single = (local(one.at, following.zone).replace(tzinfo=None, fold=0) for one in kept)
    return replace(following, extra=(*single, *following.extra))


def in_zone(when: When, zone: str) -> When:
    """The same clock times in another zone: who travels trains at 19:00 there."""
    return replace(when, zone=zone)


def name_of(when: When, session: Occurrence) -> str:
    """A name that stays the same in any zone and over changes of the clock, and changes when the session moves.

    So that a session is reminded of once, and once more after it was moved.
    """
    if isinstance(when, Recurrence):
        moved = next(
            (one for one in when.moved if one.day == session.day and _is(when, one.to, session)), None
        )
        if moved is not None:
            return f"{moved.day}>{moved.to:%Y-%m-%dT%H:%M}"
        single = next((at for at in when.extra if _is(when, at, session)), None)
        if single is not None:
            return f"+{single:%Y-%m-%dT%H:%M}"
    return session.day.isoformat()


def _is(when: When, at: datetime, session: Occurrence) -> bool:
    return instant(at.date(), at.time(), when.zone) == session.at
