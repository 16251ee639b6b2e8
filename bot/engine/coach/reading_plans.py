"""A coach's plans as they are now: at the loads reached, and those kept as templates."""

from dataclasses import replace
from typing import TYPE_CHECKING

from bot.engine import status
from bot.engine.training import loads
from core.facts import TemplateSaved
from core.plan_text import plan_to_text
from core.plans import Exercise, Plan
from core.store import facts

if TYPE_CHECKING:
    from bot.engine.core import Engine


def at_loads(engine: "Engine", client: int, plan: Plan) -> Plan:
    """The plan with each movement at the load, rung or walk of now; one entry a movement."""
    return replace(plan, exercises=tuple(now(engine, client, one) for one in plan.exercises))


def now(engine: "Engine", client: int, exercise: Exercise) -> Exercise:
    """One movement at the load, rung or walk of now."""
    return loads.exercises(engine, client, Plan("", (exercise,)))[0]


def home_text(engine: "Engine", client: int) -> str:
    """The usual plan at the loads of now, as stored text; "": there is none."""
    plan = status.home_plan_of(engine, client)
    return plan_to_text(at_loads(engine, client, plan)) if plan is not None else ""


def own(engine: "Engine", coach: int) -> list[tuple[str, str]]:
    """The coach's templates, the newest first."""
    saved = facts.current(engine.store, TemplateSaved, coach)
    return [(one.name, one.plan) for one in reversed(saved) if one.plan]
