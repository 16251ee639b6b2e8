"""The clock ran ahead and was set back: reminders and digests are planned anew, and nothing waits for a time that was wrong."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine.days import calendar
from core.store import people, set_back, settings

if TYPE_CHECKING:
    from bot.engine.core import Engine

A_MOMENT = timedelta(seconds=1)  # as for a jump of the wall clock


def look(engine: "Engine", now: datetime) -> None:
    """Whether it is earlier than it was; reminders that went out already do not go out again."""
    last = settings.get(engine.store, "awake_at")
    if last is None or now > datetime.fromisoformat(last) - A_MOMENT:
        return
    set_back.pull_back(engine.store, now)
    for coach in people.coaches(engine.store):
        calendar.plan_week(engine, coach, now)
        for client in people.clients_of(engine.store, coach.id):
            calendar.remind_next(engine, client, now)
    settings.put(engine.store, "awake_at", now.isoformat())
