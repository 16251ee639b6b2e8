"""The coach's week from facts: one client's numbers, whether alerts led to anything, the data of the picture."""

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any

from bot.engine import status, turns
from bot.engine.coach import clients as whose
from bot.engine.coach import loads_asked, pauses
from bot.engine.days import calendar
from bot.engine.joining import clearances, screenings
from bot.engine.numbers import trends
from bot.making.charts import MOST_PANELS
from conversations.words import coach as coach_words
from conversations.words import digest as words
from conversations.words import report as report_words
from core.alert_use import ACTED_WITHIN, AlertSeen, idle_causes, led_to
from core.calendar.missed import Attendance, missed_in_a_row
from core.calendar.zones import local
from core.digest import REVIEW_WEEKS, ClientWeek, Digest, digest
from core.facts import (
    WORKED,
    Cleared,
    CoachDid,
    LoadMoved,
    Rated,
    SessionEnded,
    SessionStarted,
    SetDone,
    WalkDone,
)
from core.plans import Aim, Plan, Scheme
from core.safety.causes import WEEKLY, Tier
from core.store import duties, facts
from core.store.people import Person
from core.store.times import moment

if TYPE_CHECKING:
    from bot.engine.core import Engine

WEEK = timedelta(days=7)
CHART_WEEKS = 6
LOOKED_BACK = 4 * WEEK  # for sessions missed in a row
ALERTS_WEEKS = 8  # how far back a cause is looked at that never led to an action; own caution, no source


def digest_of(engine: "Engine", coach: Person, now: datetime) -> tuple[str, list[Person], dict[str, Any]]:
    """All of it as one text, the clients who need the coach, and the chart's data ({}: nothing to draw)."""
    made = week_of_practice(engine, coach, now)
    clients = {client.id: client for client in whose.seen_by(engine, coach, now)}
    needing = [clients[week.client] for week, _ in made.needs_you]
    everyone = [words.everybody(made, page) for page in range(words.pages(made))] if made.weeks else []
    return (
        "\n".join([words.render(made), *everyone]),
        needing,
        chart_of(engine, list(clients.values()), now, made.by_need),
    )


def week_of_practice(engine: "Engine", coach: Person, now: datetime) -> Digest:
    """The last seven days of all clients this coach looks after."""
    clients = whose.seen_by(engine, coach, now)
    seen = [
        alert for client in clients for alert in alerts_of(engine, client, now - ALERTS_WEEKS * WEEK, now)
    ]
    fresh = [alert for client in clients for alert in alerts_of(engine, client, now - WEEK, now)]
    return digest(weeks_of(engine, clients, now), fresh, idle_causes(seen))


def weeks_of(engine: "Engine", clients: list[Person], now: datetime) -> list[ClientWeek]:
    """A week for each, in the order given; two of one name are told apart."""
    names = whose.told_apart(clients)
    return [week_of(engine, client, now, names[client.id]) for client in clients]


def week_of(engine: "Engine", client: Person, now: datetime, name: str = "") -> ClientWeek:
    """One client's last seven days."""
    week = _trained(engine, client, now, name or client.name)
    return _standing(engine, client, _alerted(engine, client, week, now - WEEK), now)


def _trained(engine: "Engine", client: Person, now: datetime, name: str) -> ClientWeek:
    """Sessions, sets, loads and pain."""
    since, store = now - WEEK, engine.store
    firsts = facts.since(store, SetDone, client.id, since, set_no=1)
    moved = [one for one in facts.since(store, LoadMoved, client.id, since) if one.applied]
    kept = calendar.kept(engine, client, now - LOOKED_BACK, now)
    load = trends.week_of(engine, client, now)
    pain = [one.score for one in facts.since(store, Rated, client.id, since, what="pain")]
    return ClientWeek(
        name=name,
        client=client.id,
        planned=sum(one.occurrence.at >= since for one in kept if one.attendance is not Attendance.AHEAD),
        done=sum(one.why in WORKED for one in facts.since(store, SessionEnded, client.id, since)),
        loads_moved=sum(one.was != one.use for one in moved),
        loads_asked=len(loads_asked.waiting(engine, client.id)),
        in_range=[one.in_range for one in firsts if one.in_range is not None],
        off_expected=[one.reps - one.expected for one in firsts if one.expected is not None],
        pain_max=max(pain, default=None),
        load=load.load if load is not None else None,
        missed_in_a_row=missed_in_a_row(kept),
        next_at=calendar.next_at(engine, client),
    )


def _alerted(engine: "Engine", client: Person, week: ClientWeek, since: datetime) -> ClientWeek:
    """Alerts of the week and those still open; what is for the digest only opens none."""
    alerts = duties.alerts_since(engine.store, client.id, since)
    still_open = duties.open_alerts(engine.store, client.id)
    return replace(
        week,
        alerts_now=sum(alert.tier is Tier.NOW for alert in alerts),
        alerts_today=sum(alert.tier is Tier.TODAY for alert in alerts),
        urgent=any(alert.tier is Tier.NOW for alert in still_open),
        open_alert=any(alert.cause not in WEEKLY for alert in still_open),
    )


def _standing(engine: "Engine", client: Person, week: ClientWeek, now: datetime) -> ClientWeek:
    """Clearance, plan, pause: what the client waits for, or the coach for the client."""
    plan = status.plan_of(engine, client.id)
    cleared = clearances.decision(engine, client.id)
    barred, waits = turns.barred(engine, client), _waits(engine, client, cleared)
    finished = pauses.is_finished(engine, client.id)
    return replace(
        week,
        quiet_days=_quiet_days(engine, client, now),
        declined=barred == "declined",
        held=cleared is not None and cleared.decision == "held",
        answering=cleared is None and not waits,
        waiting=barred == "clearance_over" or waits,
        no_plan=plan is None and not finished and cleared is not None and bool(cleared.regions),
        paused=pauses.paused_until(engine, client.id, now) is not None,
        finished=finished,
        screening_due=screenings.is_old(engine, client, now),
        review_due=plan is not None and review_due(engine, client, now),
    )


def review_due(engine: "Engine", client: Person, now: datetime) -> bool:
    """Whether the plan was built, or last reviewed, six weeks ago or more."""
    began = pauses.plan_began(engine, client.id)
    reviewed = facts.latest(engine.store, CoachDid, client.id, action="reviewed")
    looked_at = [at for at in (began, reviewed.at if reviewed else None) if at is not None]
    return began is not None and now - max(looked_at) >= REVIEW_WEEKS * WEEK


def _waits(engine: "Engine", client: Person, cleared: Cleared | None) -> bool:
    """Whether a screening was finished that nobody has decided on."""
    done = clearances.screened(engine, client.id)
    return done is not None and (cleared is None or cleared.screening != done.screening)


def _quiet_days(engine: "Engine", client: Person, now: datetime) -> int:
    """Whole days since anything came from the client: words (forgotten after a month), a session, joining."""
    row = engine.store.row("SELECT max(received_at) AS at FROM inbox WHERE person = ?", [client.id])
    trained = facts.latest(engine.store, SessionStarted, client.id)
    heard = [client.joined]
    heard += [moment(row["at"])] if row is not None and row["at"] is not None else []
    heard += [trained.at] if trained is not None else []
    return max(0, (now - max(heard)).days)


def alerts_of(engine: "Engine", client: Person, since: datetime, now: datetime) -> list[AlertSeen]:
    """The client's alerts since then, and whether a coach did something for the client because of them."""
    did, ripe = facts.since(engine.store, CoachDid, client.id, since), now - ACTED_WITHIN
    return [
        AlertSeen(
            alert.cause,
            alert.tier,
            led_to(alert.cause, alert.raised_at, alert.last_at, did),
            alert.raised_at <= ripe,
        )
        for alert in duties.alerts_since(engine.store, client.id, since)
    ]


# --- the picture -----------------------------------------------------------------------------------------
def chart_of(engine: "Engine", clients: list[Person], now: datetime, order: list[int]) -> dict[str, Any]:
    """Set-1 reps and loads by date, for each client and movement of the last weeks; `order`: person ids.

    Only what is drawn, and how much "more" there is: all of a large practice would be megabytes to hand on.
    """
    names = whose.told_apart(clients)
    panels: list[dict[str, Any]] = []
    for client in sorted(clients, key=lambda client: order.index(client.id)):
        if len(panels) < MOST_PANELS:
            panels += panels_of(engine, client, names[client.id], now)
    everyone, since = [client.id for client in clients], now - CHART_WEEKS * WEEK
    there = facts.distinct_since(engine.store, SetDone, everyone, "movement", since, set_no=1)
    walks = sum(len(facts.current(engine.store, WalkDone, client)) for client in everyone)
    more = max(0, there - MOST_PANELS)
    return {"panels": panels[:MOST_PANELS], "more": more, "walks": walks} if panels else {}


def panels_of(engine: "Engine", client: Person, name: str, now: datetime) -> list[dict[str, Any]]:
    """One panel a movement: "title", "days", "reps", "doing", the range of each day, "low" and "high", and "held":
    whether the set was held to it, as gentle ones, that end with reps left, are not.
    """
    plan = status.plan_of(engine, client.id)
    recent = facts.since(engine.store, SetDone, client.id, now - CHART_WEEKS * WEEK, set_no=1)
    return [
        _panel(
            f"{name}: {coach_words.movement(movement)}",
            [one for one in recent if one.movement == movement],
            plan,
            client.zone,
        )
        | {"code": report_words.CODE.format(number=client.id)}
        for movement in sorted({one.movement for one in recent})
    ]


def _panel(title: str, sets: list[SetDone], plan: Plan | None, zone: str) -> dict[str, Any]:
    aims = [_aim(one, plan) for one in sets]
    return {
        "title": title,
        "days": [local(one.at, zone).date().isoformat() for one in sets],
        "reps": [one.reps for one in sets],
        "doing": [one.doing for one in sets],
        "low": [aim.low if aim else None for aim in aims],
        "high": [aim.high if aim else None for aim in aims],
        "held": [one.aim_low is not None for one in sets],
    }


def _aim(one: SetDone, plan: Plan | None) -> Aim | None:
    """The range stored with the set, else the plan's; None: a movement that the plan no longer has."""
    if one.aim_low is not None and one.aim_high is not None:
        return Aim(one.aim_low, one.aim_high)
    mine = [exercise for exercise in (plan.exercises if plan else ()) if exercise.movement == one.movement]
    return mine[0].aims[0] if mine and mine[0].scheme is not Scheme.WALK else None
