"""Pauses and the end of a plan, as facts: read here, asked for by every gate to training."""

from datetime import datetime
from typing import TYPE_CHECKING

from core.facts import CoachDid, Paused, PlanEnded, PlanGiven
from core.store import facts

if TYPE_CHECKING:
    from bot.engine.core import Engine


def paused_until(engine: "Engine", client: int, now: datetime) -> datetime | None:
    """Until when the client pauses; None: they do not now."""
    last = facts.latest(engine.store, Paused, client)
    return last.until if last is not None and last.since <= now < last.until else None


def coming(engine: "Engine", client: int, now: datetime) -> Paused | None:
    """The pause that is on or still to come."""
    last = facts.latest(engine.store, Paused, client)
    return last if last is not None and now < last.until and last.since < last.until else None


def is_finished(engine: "Engine", client: int) -> bool:
    """Whether the last plan came to its end and no other was given since."""
    ended = facts.latest(engine.store, PlanEnded, client)
    given = facts.latest(engine.store, PlanGiven, client)
    return ended is not None and given is not None and given.at <= ended.at


def spans(engine: "Engine", client: int, now: datetime) -> list[tuple[datetime, datetime]]:
    """Every stretch of time in which no session was wanted, as (from, to): pauses, and after a plan's end."""
    store = engine.store
    changes = facts.current(store, Paused, client)
    ends = [*(one.at for one in changes[1:]), None]
    paused = [
        (one.since, min(one.until, end) if end else one.until)
        for one, end in zip(changes, ends, strict=False)
    ]
    given = [one.at for one in facts.current(store, PlanGiven, client)]
    for ended in facts.current(store, PlanEnded, client):
        paused.append((ended.at, next((at for at in given if at > ended.at), now)))
    return [span for span in paused if span[0] < span[1]]


def plan_began(engine: "Engine", client: int) -> datetime | None:
    """When the plan in force was built; small changes since do not make it young. None: there is none."""
    built = facts.latest(engine.store, CoachDid, client, action="gave_plan")
    given = facts.current(engine.store, PlanGiven, client)
    return built.at if built else given[0].at if given else None
