"""The coach's week from facts: one line of numbers a client for the digest, and the data of its picture."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any

from bot.engine import loads, status, turns
from conversations.words.digest import render
from core.calendar.occurrences import occurrences_between
from core.calendar.stored import when_from_text
from core.digest import ClientWeek, digest
from core.facts import LoadMoved, Rated, SessionEnded, SetDone, WalkDone
from core.plans import OPEN_AIMS, Plan, Scheme
from core.store import duties, facts, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

WEEK = timedelta(days=7)
CHART_WEEKS = 6
DONE = ("done", "time")


def digest_of(engine: "Engine", coach: Person, now: datetime) -> tuple[str, list[Person], dict[str, Any]]:
    """The message, the clients who need the coach, and the chart's data ({}: nothing to draw)."""
    clients = people.clients_of(engine.store, coach.id)
    weeks = [week_of(engine, client, now) for client in clients]
    made = digest(weeks)
    names = [name for name, _ in made.needs_you]
    needing = [client for name in names for client in clients if client.name == name]
    return render(made), needing, chart_of(engine, clients, now)


def week_of(engine: "Engine", client: Person, now: datetime) -> ClientWeek:
    """One client's last seven days."""
    since, store = now - WEEK, engine.store
    alerts = duties.alerts_since(store, client.id, since)
    sets = [one for one in facts.current(store, SetDone, client.id) if one.at >= since]
    pain = [one.score for one in facts.current(store, Rated, client.id, what="pain") if one.at >= since]
    plan = status.plan_of(engine, client.id)
    coming = duties.next_talk(store, client.id, "reminding")
    moved = [one for one in facts.current(store, LoadMoved, client.id) if one.at >= since]
    return ClientWeek(
        name=client.name,
        planned=_planned(plan, since, now),
        done=len(_sessions(engine, client, since)),
        loads_moved=sum(one.was != one.use for one in moved),
        in_range=_in_range(plan, sets),
        alerts_now=sum(alert.tier == "now" for alert in alerts),
        alerts_today=sum(alert.tier == "today" for alert in alerts),
        pain_max=max(pain, default=None),
        quiet_days=_quiet_days(engine, client, now),
        held=turns.barred(engine, client) == "not_cleared",
        open_alert=bool(duties.open_alerts(store, client.id)),
        missed_in_a_row=0,
        next_at=coming.due_at if coming else None,
    )


def _planned(plan: Plan | None, since: datetime, now: datetime) -> int:
    if plan is None or plan.when is None:
        return 0
    return len(occurrences_between(when_from_text(plan.when), since, now))


def _sessions(engine: "Engine", client: Person, since: datetime) -> list[SessionEnded]:
    ended = facts.current(engine.store, SessionEnded, client.id)
    return [one for one in ended if one.at >= since and one.why in DONE]


def _in_range(plan: Plan | None, sets: list[SetDone]) -> list[bool]:
    open_ones = {one.movement for one in (plan.exercises if plan else ()) if one.scheme is Scheme.OPEN}
    aim = OPEN_AIMS[0]
    return [aim.low <= one.reps <= aim.high for one in sets if one.set_no == 1 and one.movement in open_ones]


def _quiet_days(engine: "Engine", client: Person, now: datetime) -> int:
    row = engine.store.row("SELECT max(received_at) AS at FROM inbox WHERE person = ?", [client.id])
    last = row["at"] if row and row["at"] else None
    return 0 if last is None else int((now.timestamp() * 1000 - last) // 86_400_000)


def chart_of(engine: "Engine", clients: list[Person], now: datetime) -> dict[str, Any]:
    """Set-1 reps and loads by date, for each client and movement of the last weeks."""
    panels = []
    for client in clients:
        names = loads.names(status.plan_of(engine, client.id))
        sets = facts.current(engine.store, SetDone, client.id)
        recent = [one for one in sets if one.set_no == 1 and one.at >= now - CHART_WEEKS * WEEK]
        for movement in sorted({one.movement for one in recent}):
            mine = [one for one in recent if one.movement == movement]
            panels.append(
                {
                    "title": f"{client.name}: {names.get(movement, movement)}",
                    "days": [one.at.date().isoformat() for one in mine],
                    "reps": [one.reps for one in mine],
                    "doing": [one.doing for one in mine],
                }
            )
    walks = sum(len(facts.current(engine.store, WalkDone, client.id)) for client in clients)
    return {"panels": panels, "walks": walks} if panels else {}
