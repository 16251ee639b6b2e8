"""Planned talks of people: reminders by the plan, the morning after, the coach's week."""

from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import quiet, status
from bot.engine.coach import pauses
from conversations.client.preferences import DIGEST_AT, REMIND_BEFORE
from conversations.dates import ClockFace, DayOrder
from conversations.words import dates as date_words
from core.calendar import missed
from core.calendar.changing import name_of
from core.calendar.digest_time import next_digest, slot_from_text
from core.calendar.missed import Kept, attendance
from core.calendar.occurrences import Occurrence, next_occurrence, occurrences_between
from core.calendar.recurrence import Recurrence, When
from core.calendar.stored import when_from_text
from core.calendar.zones import local
from core.facts import CalendarChanged, Paused, PlanGiven, SessionStarted
from core.plan_text import plan_from_text
from core.plans import Plan
from core.store import duties, facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

DAY = timedelta(days=1)
LOOKED_BACK = timedelta(weeks=6)


def remind_next(engine: "Engine", client: Person, now: datetime) -> None:
    """Plan the reminder of the next session that nobody was reminded of yet, after a pause; the old one is forgotten."""
    duties.unplan_first(engine.store, client.id, "reminding")
    plan = status.plan_of(engine, client.id)
    if plan is None or plan.when is None:
        return
    when = when_from_text(plan.when)
    coming = _not_reminded(engine, client, when, now)
    if coming is None:
        return
    about = {
        "session_day": coming.day.isoformat(),
        "at": coming.at.isoformat(),
        "zone": client.zone,
        "plan_name": plan.name,
        "name": name_of(when, coming),
    }
    at = max(remind_at(engine, client, coming.at), now)
    duties.plan(engine.store, client.id, "reminding", about, at, now)


def _not_reminded(engine: "Engine", client: Person, when: When, now: datetime) -> Occurrence | None:
    """The clock may have been set back, or the zone changed: a session is reminded of once, in a pause never."""
    reminded, pause = duties.reminded_of(engine.store, client.id), pauses.coming(engine, client.id, now)
    coming = next_occurrence(when, now)
    while coming is not None and (name_of(when, coming) in reminded or _rests(pause, coming.at)):
        coming = next_occurrence(when, coming.at)
    return coming


def _rests(pause: Paused | None, at: datetime) -> bool:
    return pause is not None and pause.since <= at < pause.until


def remind_at(engine: "Engine", client: Person, session: datetime) -> datetime:
    """So many minutes before as the client wants, not in quiet hours, and never after the session's own time."""
    before = timedelta(minutes=int(status.detail(engine, client.id, REMIND_BEFORE, "0")))
    return min(quiet.earliest(engine, client, session - before), session)


def next_at(engine: "Engine", client: Person) -> datetime | None:
    """When the next session is that a reminder is planned for; None: there is none."""
    talk = duties.next_talk(engine.store, client.id, "reminding")
    return None if talk is None else datetime.fromisoformat(talk.about["at"])


def shown(engine: "Engine", client: Person, at: datetime) -> str:
    """Weekday, date, time and zone on the client's clock, as they write them."""
    face = ClockFace(status.detail(engine, client.id, "clock_face", ClockFace.H24))
    order = status.detail(engine, client.id, "date_order", "")
    return date_words.moment(at, client.zone, face, DayOrder(order) if order else None)


def usual(engine: "Engine", client: Person, plan: Plan) -> str:
    """A line with the weekly days; "" where there are none, or where they are told by another clock than the client's."""
    recurrence = when_from_text(plan.when) if plan.when else None
    if not isinstance(recurrence, Recurrence) or recurrence.zone != client.zone:
        return ""
    face = ClockFace(status.detail(engine, client.id, "clock_face", ClockFace.H24))
    return f"\n{date_words.weekly(recurrence, face)}."


def clock_moves(engine: "Engine", client: int) -> list[tuple[datetime, str]]:
    """When which zone's clock is planned to hold, the next first."""
    return [(one.due_at, one.about["zone"]) for one in duties.planned(engine.store, client, "zone")]


# --- planned and kept ---
def planned_between(engine: "Engine", client: Person, start: datetime, end: datetime) -> list[Occurrence]:
    """The sessions that were planned from `start` up to `end`, each by the days that held at its time.

    A session that was moved counts once, where it was moved to.
    """
    found: dict[date, Occurrence] = {}
    for begins, ends, when in _days_held(engine, client, end):
        if when is not None:
            for one in occurrences_between(when, begins, max(begins, ends)):
                found[one.day] = one
            moved = {one.day for one in when.moved} if isinstance(when, Recurrence) else set()
            found = {day: one for day, one in found.items() if day not in moved or _stands(when, one)}
    return sorted(one for one in found.values() if start <= one.at < end)


def _stands(when: When, session: Occurrence) -> bool:
    return session in occurrences_between(when, session.at, session.at + timedelta(milliseconds=1))


def _days_held(
    engine: "Engine", client: Person, end: datetime
) -> list[tuple[datetime, datetime, When | None]]:
    """(from, until, days) for all the days the client ever had, in order."""
    plans = facts.current(engine.store, PlanGiven, client.id)
    changes = facts.current(engine.store, CalendarChanged, client.id)
    given = [(one.at, plan_from_text(one.plan).when or "") for one in plans if one.at < end]
    given += [(one.at, one.when) for one in changes if one.at < end]
    given.sort(key=lambda pair: pair[0])
    ends = [*(at for at, _ in given[1:]), end][: len(given)]
    return [
        (at, until, when_from_text(text) if text else None)
        for (at, text), until in zip(given, ends, strict=True)
    ]


def kept(engine: "Engine", client: Person, start: datetime, now: datetime) -> tuple[Kept, ...]:
    """The planned sessions from `start` on and what became of them; those of a pause do not count."""
    rests = pauses.spans(engine, client.id, now)
    planned = [
        one
        for one in planned_between(engine, client, start, now)
        if not any(begin <= one.at < end for begin, end in rests)
    ]
    started = [one.at for one in facts.since(engine.store, SessionStarted, client.id, start - DAY)]
    return attendance(planned, started, now, client.zone)


def missed_in_a_row(engine: "Engine", client: Person, now: datetime) -> int:
    """Planned sessions missed since the last one done, of the last six weeks."""
    return missed.missed_in_a_row(kept(engine, client, now - LOOKED_BACK, now))


def plan_week(engine: "Engine", coach: Person, now: datetime) -> None:
    """The next digest, on the day and at the hour that the coach chose."""
    duties.unplan(engine.store, coach.id, "weekly")
    slot = slot_from_text(status.detail(engine, coach.id, DIGEST_AT, ""))
    coming = next_digest(slot, coach.zone, now, last_digest(engine, coach))
    about = {"day": coming.day.isoformat()}
    duties.plan(engine.store, coach.id, "weekly", about, coming.at, now)


def last_digest(engine: "Engine", coach: Person) -> date | None:
    """The local date for which the last digest was planned, also when it came later than that."""
    last = duties.last_talk(engine.store, coach.id, "weekly", engine.clock())
    if last is None:
        return None
    day = last.about.get("day")
    return date.fromisoformat(day) if day else local(last.due_at, coach.zone).date()
