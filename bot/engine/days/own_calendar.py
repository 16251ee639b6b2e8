"""The days of the plan as a file for the client's own calendar, each session on the clock it is held by."""

from datetime import datetime
from itertools import groupby, pairwise
from typing import TYPE_CHECKING

from bot.engine import letters, status
from conversations.protocol import Say
from conversations.words import calendar as words
from core.calendar.changing import in_zone
from core.calendar.clipping import within
from core.calendar.recurrence import When
from core.calendar.stored import when_from_text
from core.facts import CalendarChanged, PlanGiven
from core.plan_text import plan_from_text
from core.plans import Plan
from core.store import duties, facts
from core.store.mail import Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

MINUTES_BETWEEN, MINUTES_BEFORE = 3, 12  # without bands, between and before; own estimate, no source
MINUTE_S = 60


def send_file(engine: "Engine", client: Person, now: datetime) -> None:
    """The file, or that the plan has no fixed days."""
    from bot.making.ical import calendar_file

    plan = status.plan_of(engine, client.id)
    if plan is None or plan.when is None:
        engine.say(client, Say(words.NO_DAYS), now)
        return
    version = int(now.timestamp()) // MINUTE_S  # a later file stands over an earlier one
    title = words.EVENT.format(plan=plan.name)
    data = calendar_file(by_clock(engine, client), minutes_of(plan), title, f"{client.id}", now, version)
    letters.post_document(engine.store, client, words.FILE, data, words.FILE_TEXT, now, Priority.TALK)


def minutes_of(plan: Plan) -> int:
    """About how long a session takes: bands at their limits, 3 min between, questions and warm-up."""
    return sum(one.limit_min + MINUTES_BETWEEN for one in plan.exercises) + MINUTES_BEFORE


def by_clock(engine: "Engine", client: Person) -> list[When]:
    """The days of the plan in order of time, cut where the client changed the zone or will.

    Within one zone the days as they were last: what was moved or left out is in them.
    """
    held = _held(engine, client)
    runs = [list(run) for _, run in groupby(held, key=lambda pair: pair[1].zone)]
    begins = [run[0][0] for run in runs]
    bounds = [None, *begins[1:], None]
    parts = (within(run[-1][1], begin, end) for run, (begin, end) in zip(runs, pairwise(bounds), strict=True))
    return [part for part in parts if part is not None]


def _held(engine: "Engine", client: Person) -> list[tuple[datetime, When]]:
    """(from, days) since the plan was given, with the changes of zone that are still to come."""
    given = facts.latest(engine.store, PlanGiven, client.id)
    assert given is not None, "there is a plan"
    texts = [(given.at, plan_from_text(given.plan).when)]
    changes = facts.current(engine.store, CalendarChanged, client.id)
    texts += [(one.at, one.when) for one in changes if one.at >= given.at]
    held = [(at, when_from_text(text)) for at, text in texts if text]
    coming = duties.planned(engine.store, client.id, "zone")
    return held + [(talk.due_at, in_zone(held[-1][1], talk.about["zone"])) for talk in coming]
