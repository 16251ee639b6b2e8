"""From words to what they would change: each reading with its dates, its new days and the limit it would break."""

from datetime import UTC, date, datetime, time, timedelta

from conversations.changing import trips
from conversations.changing.state import Brief, Draft, Meaning, Meanings, order_of
from conversations.dates import (
    Ambiguous,
    Dates,
    DayOrder,
    Delay,
    Move,
    NotToday,
    NotUnderstood,
    OneTime,
    Problem,
    Repeat,
    Skip,
    read,
)
from conversations.dates.meaning import Understood, order_from
from conversations.dates.travel import read_travel
from conversations.words import changing as words
from conversations.words import dates as date_words
from core.calendar.changing import added, left_out, on_date, planned_in, replaced, shifted
from core.calendar.limits import Bout, Limit, broken_limit
from core.calendar.occurrences import Occurrence, next_occurrence, occurrences_between
from core.calendar.recurrence import Once, Recurrence, Span, When
from core.calendar.stored import when_to_text
from core.calendar.zones import instant, local
from core.plans import Region

LOOKED_AT = timedelta(days=29)  # four weeks, so that every other week shows too
MOST_NAMED = 4  # sessions named one by one
INSTEAD = ("instead", "rather")


class Unfit(Exception):
    """A reading that the days do not allow; its text says so."""


def meanings(brief: Brief, draft: Draft) -> Meanings:
    """What the words said so far can mean for these days."""
    at = draft.said_at
    if draft.said is None or at is None:
        return Meanings()
    if draft.said == "" and brief.move_to is not None:
        return _each(brief, at, "", (None,))
    found_trips = read_travel(draft.said, at, brief.zone, order_of(brief, draft))
    if found_trips:
        return Meanings(tuple(trips.meaning(brief, one, at) for one in found_trips))
    found = read(draft.said, at, brief.zone, order_of(brief, draft), brief.face, _usual(brief, at))
    match found:
        case NotUnderstood(problem):
            return Meanings(problem=date_words.NOT_UNDERSTOOD[problem])
        case Ambiguous(readings):
            return _each(brief, at, draft.said, readings)
        case _:
            return _each(brief, at, draft.said, (found,))


def order_matters(brief: Brief, draft: Draft) -> bool:
    """Whether 3/4 was said by somebody of whom it is not known which way round they write it."""
    if draft.said is None or draft.said_at is None or order_of(brief, draft) is not None:
        return False
    both = [read(draft.said, draft.said_at, brief.zone, order, brief.face, time(12)) for order in DayOrder]
    return both[0] != both[1] and not all(isinstance(one, NotUnderstood) for one in both)


def _each(brief: Brief, at: datetime, said: str, readings: tuple[Understood | None, ...]) -> Meanings:
    found: list[Meaning] = []
    problem = ""
    for reading in readings:
        try:
            found += _means(brief, at, said, reading)
        except Unfit as unfit:
            problem = str(unfit)
    return Meanings(tuple(dict.fromkeys(found)), problem)


def _means(brief: Brief, at: datetime, said: str, reading: Understood | None) -> list[Meaning]:
    match reading:
        case None:
            return [_preset(brief, at)]
        case OneTime(once):
            return _one_time(brief, at, once.at, said)
        case Delay(minutes):
            return _soon(brief, at, minutes)
        case Move():
            return [_move(brief, at, reading)]
        case Repeat(recurrence):
            return [_weekly(brief, at, recurrence)]
        case Skip(span):
            return [_skip(brief, at, span or _day_of_next(brief, at))]
        case NotToday():
            today = local(at, brief.zone).date()
            return [_skip(brief, at, Span(today, today))]
        case Dates(span):
            return _dates(brief, at, span)


# --- moved and added ---
def _preset(brief: Brief, at: datetime) -> Meaning:
    assert brief.move_to is not None, "asked for only with a move"
    to = local(brief.move_to, brief.zone).replace(tzinfo=None, fold=0)
    session = by_day(brief, date.fromisoformat(brief.move_day), at)
    return _shift(brief, at, session, to) if session else _add(brief, at, to)


def by_day(brief: Brief, day: date, at: datetime) -> Occurrence | None:
    """The session that the rule gave that day, wherever it was moved to."""
    if brief.when is None:
        return None
    near = occurrences_between(brief.when, at - LOOKED_AT, at + LOOKED_AT)
    return next((one for one in near if one.day == day), None)


def _move(brief: Brief, at: datetime, move: Move) -> Meaning:
    session = _session(brief, at, move.day)
    was = local(session.at, brief.zone)
    to = datetime.combine(move.to or was.date(), move.at or was.time().replace(fold=0))
    return _shift(brief, at, session, to)


def _session(brief: Brief, at: datetime, day: date | None) -> Occurrence:
    """The session of that local date, else the next one. Raises `Unfit`."""
    if brief.when is not None:
        found = next_occurrence(brief.when, at) if day is None else on_date(brief.when, day)
        if found is not None:
            return found
    raise Unfit(words.NOTHING_THEN.format(next=_next(brief, at)))


def _next(brief: Brief, at: datetime) -> str:
    coming = next_occurrence(brief.when, at) if brief.when is not None else None
    return words.NO_NEXT if coming is None else words.NEXT.format(when=_moment(brief, coming.at))


def _shift(brief: Brief, at: datetime, session: Occurrence, to: datetime) -> Meaning:
    assert brief.when is not None, "a session belongs to days"
    _must_come(brief, at, to)
    there = on_date(brief.when, to.date())
    if there is not None and there != session:
        raise Unfit(words.HAS_ONE.format(day=_day(brief, to.date())))
    if _instant(brief, to) == session.at:
        return Meaning(words.STAYS.format(to=_moment(brief, session.at)), still=True)
    told = words.MOVES.format(was=_short(brief, session.at), to=_moment(brief, _instant(brief, to)))
    return _meaning(brief, at, told, shifted(brief.when, session, to))


def _add(brief: Brief, at: datetime, to: datetime) -> Meaning:
    _must_come(brief, at, to)
    try:
        when = added(brief.when, to, brief.zone)
    except ValueError:
        raise Unfit(words.HAS_ONE.format(day=_day(brief, to.date()))) from None
    return _meaning(brief, at, words.MORE.format(to=_moment(brief, _instant(brief, to))), when)


def _must_come(brief: Brief, at: datetime, to: datetime) -> None:
    if _instant(brief, to) <= at:
        raise Unfit(date_words.NOT_UNDERSTOOD[Problem.IN_THE_PAST])


def _one_time(brief: Brief, at: datetime, to: datetime, said: str) -> list[Meaning]:
    """Instead of the session of that date; else instead of the next one, or besides it."""
    same_day = on_date(brief.when, to.date()) if brief.when is not None else None
    coming = same_day or (next_occurrence(brief.when, at) if brief.when is not None else None)
    if coming is None:
        return [_add(brief, at, to)]
    moved = _shift(brief, at, coming, to)
    if same_day is not None or any(word in said.lower() for word in INSTEAD):
        return [moved]
    return [moved, _add(brief, at, to)]


def _soon(brief: Brief, at: datetime, minutes: int) -> list[Meaning]:
    """ "In 20 minutes": today's session then, or one more when today has none."""
    to = local(at + timedelta(minutes=minutes), brief.zone).replace(
        tzinfo=None, fold=0, second=0, microsecond=0
    )
    today = on_date(brief.when, local(at, brief.zone).date()) if brief.when is not None else None
    return [_add(brief, at, to)] if today is None else [_shift(brief, at, today, to)]


# --- left out ---
def _day_of_next(brief: Brief, at: datetime) -> Span:
    day = local(_session(brief, at, None).at, brief.zone).date()
    return Span(day, day)


def _skip(brief: Brief, at: datetime, span: Span) -> Meaning:
    gone = planned_in(brief.when, span) if brief.when is not None else ()
    if brief.when is None or not gone:
        raise Unfit(words.NOTHING_THEN.format(next=_next(brief, at)))
    days = ", ".join(_short(brief, one.at) for one in gone[:MOST_NAMED])
    if len(gone) == 1:
        told = words.FREE.format(days=_moment(brief, gone[0].at))
    else:
        days += ", …" if len(gone) > MOST_NAMED else ""
        first, last = _day(brief, span.first), _day(brief, span.last)
        told = words.FREE_FROM_TO.format(first=first, last=last, count=len(gone), days=days)
    return _meaning(brief, at, told, left_out(brief.when, span))


# --- other days ---
def _weekly(brief: Brief, at: datetime, recurrence: Recurrence) -> Meaning:
    first = next_occurrence(recurrence, at)
    if first is None:
        raise Unfit(date_words.NOT_UNDERSTOOD[Problem.IN_THE_PAST])
    told = words.WEEKLY.format(
        rhythm=date_words.rhythm(recurrence, brief.face, _order(brief)), first=_moment(brief, first.at)
    )
    when = replaced(brief.when, recurrence, at)
    return _meaning(brief, at, told + (words.UNTIL_THEN if when.extra else ""), when)


def _dates(brief: Brief, at: datetime, span: Span) -> list[Meaning]:
    """A stretch of dates says nothing about what is to happen then: the usual days, or none."""
    found = []
    if isinstance(brief.when, Recurrence) and brief.when.slots:
        usual = Recurrence(brief.when.slots, brief.zone, span.first, brief.when.every, span.last)
        found.append(_weekly(brief, at, usual))
    if brief.when is not None and planned_in(brief.when, span):
        found.append(_skip(brief, at, span))
    if not found:
        raise Unfit(date_words.NOT_UNDERSTOOD[Problem.NO_DAY])
    return found


# --- limits ---
def _meaning(brief: Brief, at: datetime, told: str, when: When | None) -> Meaning:
    limit = _limit(brief, at, when) if when is not None else None
    return Meaning(told, "" if when is None else when_to_text(when), "" if limit is None else limit.value)


def _limit(brief: Brief, at: datetime, when: When) -> Limit | None:
    """The first usual limit that a session which was not planned before would break."""
    begin, end = at - timedelta(days=8), at + LOOKED_AT
    before = set(occurrences_between(brief.when, begin, end)) if brief.when is not None else set()
    planned = [one for one in occurrences_between(when, begin, end) if one.at > at]
    old = {one.at for one in before}
    for region, walk in brief.parts:
        bouts = [Bout(one.at, Region(region), walk) for one in planned]
        for bout in bouts:
            others = [*brief.done, *(other for other in bouts if other is not bout)]
            limit = None if bout.at in old else broken_limit(bout, others, brief.zone, brief.allowed)
            if limit is not None:
                return limit
    return None


# --- words ---
def _usual(brief: Brief, at: datetime) -> time | None:
    coming = next_occurrence(brief.when, at) if brief.when is not None else None
    if coming is not None:
        return local(coming.at, brief.zone).time().replace(fold=0)
    return brief.when.at.time() if isinstance(brief.when, Once) else None


def _instant(brief: Brief, to: datetime) -> datetime:
    return instant(to.date(), to.time(), brief.zone)


def _order(brief: Brief) -> DayOrder | None:
    return order_from(brief.date_order)


def _moment(brief: Brief, at: datetime) -> str:
    return date_words.moment(at.astimezone(UTC), brief.zone, brief.face, _order(brief))


def _short(brief: Brief, at: datetime) -> str:
    here = local(at, brief.zone)
    return f"{_day(brief, here.date())}, {date_words.clock_time(here.time(), brief.face)}"


def _day(brief: Brief, on: date) -> str:
    return date_words.day(on, _order(brief))
