"""What the sessions of a client come to over time: load by day from effort and minutes, reps at equal load."""

from collections import defaultdict
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine.coach import pauses
from core.calendar.zones import local
from core.facts import BandsOff, BandsOn, Rated, SetDone
from core.outcomes import Trend, Week, last_days, reps_at_equal_load, session_load, week
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

WEEK = timedelta(days=7)
A_MINUTE = timedelta(minutes=1)
LONGEST_MIN = 120.0  # of one session; own judgement, no source


def loads(engine: "Engine", client: Person, since: datetime) -> list[tuple[date, float]]:
    """Effort x minutes of each rated session, with its day on the client's calendar.

    Minutes from the first bands on to the last bands off: rests and breaks count, questions before and after do not.
    """
    store, who = engine.store, client.id
    rated = facts.since(store, Rated, who, since, what="effort")
    efforts = {one.session: one for one in rated}
    began: dict[str, datetime] = {}
    for on in facts.since(store, BandsOn, who, since):
        began.setdefault(on.session, on.at)
    ended = {off.session: off.at for off in facts.since(store, BandsOff, who, since)}
    return [
        (
            local(began[session], client.zone).date(),
            session_load(one.score, _minutes(began[session], ended[session])),
        )
        for session, one in efforts.items()
        if session in began and session in ended
    ]


def _minutes(began: datetime, ended: datetime) -> float:
    """Bands said to be off a day later count no more than a long session."""
    return min(max((ended - began) / A_MINUTE, 0.0), LONGEST_MIN)


def week_of(engine: "Engine", client: Person, now: datetime) -> Week | None:
    """The seven days up to today; None: no session in them was rated."""
    today = local(now, client.zone).date()
    found = loads(engine, client, now - WEEK)
    return week(last_days(found, today)) if found else None


def strength(engine: "Engine", client: Person) -> dict[str, Trend]:
    """By movement: reps of set 1 at equal load in open sets of this plan; none with fewer than two sessions."""
    since = pauses.plan_began(engine, client.id) or client.joined
    firsts: dict[str, list[SetDone]] = defaultdict(list)
    for one in facts.since(engine.store, SetDone, client.id, since, set_no=1):
        # Gentle sets were ended with reps left and fixed sets at their number: they say nothing of strength.
        if one.in_range is not None:
            firsts[one.movement].append(one)
    trends = {
        name: reps_at_equal_load([(one.at.date(), one.doing, one.reps) for one in sets])
        for name, sets in firsts.items()
    }
    return {name: trend for name, trend in trends.items() if trend is not None}
