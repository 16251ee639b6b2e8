"""Planned talks of people: reminders by the plan, the morning after, the coach's week."""

from datetime import datetime, time, timedelta
from typing import TYPE_CHECKING

from bot.engine import letters, status
from bot.engine.coach import pauses
from conversations.protocol import Say
from conversations.words import calendar as words
from core.calendar.occurrences import next_occurrence
from core.calendar.stored import when_from_text
from core.calendar.zones import instant, local
from core.facts import CalendarChanged
from core.plans import Plan
from core.store import duties, facts
from core.store.mail import Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

WEEK_AT = time(7)  # Monday, the coach's time
MINUTES_BETWEEN, MINUTES_BEFORE = 3, 12  # without bands, between and before; own estimate, no source


def remind_next(engine: "Engine", client: Person, now: datetime) -> None:
    """Plan the reminder of the next session by the plan, after a pause if there is one; the old one is forgotten."""
    duties.unplan_first(engine.store, client.id, "reminding")
    plan = status.plan_of(engine, client.id)
    if plan is None or plan.when is None:
        return
    when, pause = when_from_text(plan.when), pauses.coming(engine, client.id, now)
    coming = next_occurrence(when, now)
    if coming is not None and pause is not None and pause.since <= coming.at < pause.until:
        coming = next_occurrence(when, pause.until)
    if coming is None:
        return
    about = {
        "session_day": coming.day.isoformat(),
        "at": coming.at.isoformat(),
        "zone": client.zone,
        "plan_name": plan.name,
    }
    duties.plan(engine.store, client.id, "reminding", about, coming.at, now)


def send_file(engine: "Engine", client: Person, now: datetime) -> None:
    """The days of the plan for the client's own calendar."""
    from bot.ical import calendar_file

    plan = status.plan_of(engine, client.id)
    if plan is None or plan.when is None:
        engine.say(client, Say(words.NO_DAYS), now)
        return
    version = len(facts.current(engine.store, CalendarChanged, client.id))
    title = words.EVENT.format(plan=plan.name)
    when = when_from_text(plan.when)
    data = calendar_file(when, minutes_of(plan), title, f"{client.id}", now, version)
    letters.post_document(engine.store, client, words.FILE, data, words.FILE_TEXT, now, Priority.TALK)


def minutes_of(plan: Plan) -> int:
    """About how long a session takes: bands at their limits, 3 min between, questions and warm-up."""
    return sum(one.limit_min + MINUTES_BETWEEN for one in plan.exercises) + MINUTES_BEFORE


def plan_week(engine: "Engine", coach: Person, now: datetime) -> None:
    """The digest of next Monday."""
    duties.unplan(engine.store, coach.id, "weekly")
    here = local(now, coach.zone)
    monday = here.date() + timedelta(days=7 - here.weekday())
    duties.plan(engine.store, coach.id, "weekly", {}, instant(monday, WEEK_AT, coach.zone), now)
