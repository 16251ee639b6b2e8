"""Is it too soon to train the same limbs again? The client is told; the coach's plan may know better."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import status
from conversations.coach.allowing import DETAIL
from core.calendar.limits import Bout, Limit, Limits, broken_limit, limits_from_text
from core.facts import SetDone, WalkDone
from core.movements import MOVEMENTS
from core.plans import Region, Scheme
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

LOOKED_AT = timedelta(days=14)  # limits count in a week (`core.calendar.limits`), and a day is long somewhere


def too_soon(engine: "Engine", client: Person, now: datetime) -> Limit | None:
    """The first limit that a session now would break; None: it is fine."""
    plan = status.plan_of(engine, client.id)
    before = done(engine, client.id)
    coming = [Bout(now, one.region, one.scheme is Scheme.WALK) for one in (plan.exercises if plan else ())]
    broken = (broken_limit(bout, before, client.zone, allowed(engine, client.id)) for bout in coming)
    return next((limit for limit in broken if limit is not None), None)


def allowed(engine: "Engine", client: int) -> Limits:
    """How often this client may train: as the coach allowed it, else as usual."""
    return limits_from_text(status.detail(engine, client, DETAIL, ""))


def done(engine: "Engine", client: int) -> list[Bout]:
    """One bout for each session and region with work in it, at its first set: of the days that limits look at."""
    since = engine.clock() - LOOKED_AT
    first: dict[tuple[str, Region, bool], datetime] = {}
    for one in facts.since(engine.store, SetDone, client, since):
        if one.movement in MOVEMENTS:
            first.setdefault((one.session, MOVEMENTS[one.movement].region, False), one.done_at)
    for walk in facts.since(engine.store, WalkDone, client, since):
        first.setdefault((walk.session, Region.LEGS, True), walk.at)
    return [Bout(at, region, walked) for (_, region, walked), at in first.items()]
