"""A client's week from facts, in words."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import status
from bot.engine.coach import pauses
from bot.engine.days import calendar
from conversations.words.movements import NAMES
from conversations.words.week import week_text
from core.calendar.missed import Attendance
from core.calendar.occurrences import occurrences_between
from core.calendar.stored import when_from_text
from core.facts import WORKED, LoadMoved, Rated, SessionEnded, SetDone
from core.store import facts
from core.store.people import Person
from core.week_recap import Lived, one_thing, risen

if TYPE_CHECKING:
    from bot.engine.core import Engine

WEEK = timedelta(days=7)
DATES = 2


def text_of(engine: "Engine", client: Person, now: datetime) -> str | None:
    """The week that lies behind; None for whoever has no plan or a pause, or had nothing to do."""
    if status.plan_of(engine, client.id) is None or pauses.paused_until(engine, client.id, now) is not None:
        return None
    lived = lived_of(engine, client, now)
    if not (lived.planned or lived.done):
        return None
    week = int(now.timestamp() // WEEK.total_seconds())
    return week_text(lived, risen(lived), one_thing(lived, week), dates(engine, client, now), NAMES)


def lived_of(engine: "Engine", client: Person, now: datetime) -> Lived:
    """The last seven days."""
    store, who, since = engine.store, client.id, now - WEEK
    due = [one for one in calendar.kept(engine, client, since, now) if one.attendance is not Attendance.AHEAD]
    firsts = facts.current(store, SetDone, who, set_no=1)
    return Lived(
        planned=len(due),
        done=sum(one.why in WORKED for one in facts.since(store, SessionEnded, who, since)),
        sets=facts.since(store, SetDone, who, since),
        before=[one for one in firsts if one.at < since],
        moved=facts.since(store, LoadMoved, who, since),
        rated=facts.since(store, Rated, who, since),
    )


def dates(engine: "Engine", client: Person, now: datetime) -> list[str]:
    """The next two sessions on the client's clock."""
    plan = status.plan_of(engine, client.id)
    if plan is None or plan.when is None:
        return []
    coming = occurrences_between(when_from_text(plan.when), now, now + 2 * WEEK)
    return [calendar.shown(engine, client, one.at) for one in coming[:DATES]]
