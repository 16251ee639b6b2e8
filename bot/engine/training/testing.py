"""Strength tests: whether one is advised, asking for it, and its numbers for the coach."""

from datetime import datetime
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from bot.engine import status, turns
from bot.engine.safety import checks
from bot.engine.training.advising import tested
from conversations.protocol import Choice, Say
from conversations.words import testing as words
from conversations.words.movements import NAMES
from core.facts import ScreeningDone
from core.plans import Goal
from core.store import duties, facts, people
from core.store.people import Person
from core.stored_names import names_in
from core.strength import estimate, may_test
from core.units import load_from_text

if TYPE_CHECKING:
    from bot.engine.core import Engine

START_SHARE = Decimal("0.30")  # common practice, no source
SCREENED = {  # rules of the screening, as reasons against a test
    "after_surgery": "after_surgery",
    "weak_bones": "osteoporosis",
    "pressure_high": "high_blood_pressure",
    "pressure_too_high": "high_blood_pressure",
    "high_pressure": "high_blood_pressure",
}


def against(engine: "Engine", client: Person) -> str | None:
    """Why no test is advised (a stored name); None: it may be offered."""
    plan = status.plan_of(engine, client.id)
    found = {"rehab"} if plan is not None and plan.goal is Goal.REHAB else set()
    done = facts.latest(engine.store, ScreeningDone, client.id)
    found |= {SCREENED[rule] for rule in names_in(done.because if done else "") if rule in SCREENED}
    days = checks.pain_days(engine, client.id, "")[:-1]
    if plan is not None and days and days[-1].during > plan.pain_ceiling:
        found.add("irritable_joint")
    if turns.barred(engine, client) is not None:
        found.add("not_cleared")
    if may_test(frozenset(found)) and "not_cleared" not in found:
        return None
    return min(found)


def ask(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The coach wants a test; it waits for nobody in a session."""
    client = people.by_id(engine.store, details["client"])
    name = NAMES[details["movement"]]
    why = against(engine, client)
    if why is not None:
        engine.say(coach, Say(words.NOT_ADVISED.format(name=client.name, why=words.WHY_NOT[why])), now)
        return False
    about = {"movement": details["movement"], "movement_name": name, "unit": details["unit"]}
    duties.plan(engine.store, client.id, "testing", about, now, now)
    engine.say(coach, Say(words.ASKED.format(name=client.name, movement=name.lower())), now)
    return False


def done(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """The test is done or left: the coach hears it, and makes the plan."""
    coach = engine.coach_of(client)
    if coach is None:
        return False
    plan = (Choice(words.NEW_PLAN, f"menu:planning:{client.id}"),)
    engine.say(coach, Say(_result(engine, client, details), plan), now)
    return False


def _result(engine: "Engine", client: Person, details: dict[str, Any]) -> str:
    movement, name = details["movement"], NAMES[details["movement"]].lower()
    best = tested(engine, client.id, movement)
    if not details["load"] or best is None:
        return words.NO_RESULT.format(name=client.name, movement=name)
    load = load_from_text(details["load"])
    range_ = estimate(load, details["reps"])
    share = float(load.value) / load.kilograms
    return words.RESULT.format(
        name=client.name,
        movement=name,
        load=load,
        reps=details["reps"],
        best=best,
        low=f"{range_.low * share:.0f}",
        high=f"{range_.high * share:.0f}",
        start=f"{best.value * START_SHARE:.1f} {best.unit}",
    )


def bests(engine: "Engine", client: Person) -> dict[str, str]:
    """Best single lifts as known, by movement."""
    found = {name: tested(engine, client.id, name) for name in NAMES}
    return {name: str(best) for name, best in found.items() if best is not None}
