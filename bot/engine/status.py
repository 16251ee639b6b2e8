"""Short lines about a client, computed from facts."""

from dataclasses import replace
from typing import TYPE_CHECKING

from bot.engine.joining import clearances
from conversations.words import consent, safety
from conversations.words import status as words
from conversations.words.common import counted
from conversations.words.counts import counts_text
from core.calendar.zones import local
from core.facts import (
    LAPSED,
    NOT_ON,
    WORKED,
    CalendarChanged,
    Detail,
    PlanEnded,
    PlanGiven,
    SessionEnded,
    SessionStarted,
    SetDone,
    Travelling,
    WalkDone,
)
from core.plan_text import plan_from_text
from core.plans import Plan, Side
from core.progression.travel import travel_plan
from core.screening import Restriction
from core.store import duties, facts
from core.store.people import Person
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine


CONSENT = "consent"  # a detail: how it came that there is none (a stored name of `consent.WITHOUT`), or ASKED
ASKED = "asked"  # once more, since then


def without_consent(engine: "Engine", client: int) -> str | None:
    """How it came that this client's consent is missing; None: it is not, or it is being asked for."""
    how = detail(engine, client, CONSENT, ASKED)
    return how if how in consent.WITHOUT else None


def company(engine: "Engine", client: int) -> str:
    """ "alone", "with somebody", "alone, Tomas types for them"."""
    where = detail(engine, client, "company", "-").replace("_", " ")
    helper = detail(engine, client, "helper", "")
    helped = words.HELPED.format(helper=helper) if helper else ""
    return ", ".join(part for part in ("" if where == "-" else where, helped) if part) or "-"


def no_failure(engine: "Engine", client: int) -> bool:
    """Whether the clearance in force forbids sets to failure."""
    cleared = clearances.decision(engine, client)
    return cleared is not None and Restriction.NO_FAILURE in names_in(cleared.limits)


def last_sessions(engine: "Engine", client: Person, most: int = 1) -> str:
    """The last sessions, the newest first, a line each."""
    started = facts.newest(engine.store, SessionStarted, client.id, most)
    return "\n".join(_session_line(engine, client, one) for one in started) or words.NO_SESSION


def _session_line(engine: "Engine", client: Person, started: SessionStarted) -> str:
    sets = facts.current(engine.store, SetDone, client.id, session=started.session)
    walks = facts.current(engine.store, WalkDone, client.id, session=started.session)
    parts = [sets_line(sets), *(words.WALKED.format(minutes=walk.minutes) for walk in walks)]
    day = local(started.at, client.zone).strftime("%a %d %b")
    done = "; ".join(filter(None, parts)) or words.NO_SETS
    return words.SESSION_LINE.format(day=day, sets=done, ended=_ended(engine, client, started.session))


def _ended(engine: "Engine", client: Person, session: str) -> str:
    """How it ended when not as planned."""
    end = facts.latest(engine.store, SessionEnded, client.id, session=session)
    if end is None or end.why in WORKED:
        return ""
    return {LAPSED: words.LEFT, NOT_ON: words.NEVER_ON}.get(end.why, words.STOPPED)


def sets_line(sets: list[SetDone]) -> str:
    """ "goblet_squat 12 kg: 31, 16, 8" for each movement."""
    lines: dict[str, list[tuple[Side, int]]] = {}
    for one in sorted(sets, key=lambda each: (each.exercise_no, each.set_no)):
        lines.setdefault(f"{one.movement.replace('_', ' ')} {one.doing}".strip(), []).append(
            (one.side, one.reps)
        )
    return "; ".join(f"{name}: {counts_text(counts)}" for name, counts in lines.items())


def detail(engine: "Engine", person: int, name: str, otherwise: str) -> str:
    """One stored detail of a client."""
    found = facts.latest(engine.store, Detail, person, name=name)
    return otherwise if found is None or not found.value else found.value


def emergency_number(engine: "Engine", person: int) -> str:
    """What this client calls in an emergency, as a phrase."""
    return safety.emergency(detail(engine, person, "emergency_number", "") or None)


def plan_of(engine: "Engine", client: int) -> Plan | None:
    """The plan in force now, on open limbs: the usual one, or without equipment while the client travels."""
    plan = open_plan_of(engine, client)
    away = facts.latest(engine.store, Travelling, client)
    if plan is None or away is None or not away.since <= engine.clock() < away.until:
        return plan
    return travel_plan(plan) or plan


def open_plan_of(engine: "Engine", client: int) -> Plan | None:
    """The usual plan without bands on a limb that is closed; None: none, or nothing of it is left."""
    plan = home_plan_of(engine, client)
    return None if plan is None else clearances.on_open_limbs(engine, client, plan)


def home_plan_of(engine: "Engine", client: int) -> Plan | None:
    """The plan in force, on the days to which they were changed since it was given; None: none, or it ended."""
    given = facts.latest(engine.store, PlanGiven, client)
    ended = facts.latest(engine.store, PlanEnded, client)
    if given is None or (ended is not None and given.at <= ended.at):
        return None
    return last_plan_of(engine, client)


def last_plan_of(engine: "Engine", client: int) -> Plan | None:
    """The plan given last, whether it ended or not, on the days to which they were changed since."""
    given = facts.latest(engine.store, PlanGiven, client)
    if given is None:
        return None
    plan = plan_from_text(given.plan)
    changed = facts.latest(engine.store, CalendarChanged, client)
    if changed is None or changed.at < given.at:
        return plan
    return replace(plan, when=changed.when or None)


def sessions_done(engine: "Engine", client: int) -> int:
    """Sessions that came to their end."""
    return sum(len(facts.current(engine.store, SessionEnded, client, why=why)) for why in WORKED)


def state_line(engine: "Engine", client: Person) -> str:
    """What matters most about this client, in a few words."""
    from bot.engine import turns

    alerts = duties.open_alerts(engine.store, client.id)
    if any(alert.tier == "now" for alert in alerts):
        return words.OPEN_ALERT
    why = turns.barred(engine, client)
    if why is not None:
        return words.WAITING[why]
    if plan_of(engine, client.id) is None:
        return words.WAITING["no_plan"]
    return words.DOING_WELL.format(sessions=counted(sessions_done(engine, client.id), "session"))
