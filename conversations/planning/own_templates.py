"""A coach's own templates in the plan builder: a saved plan without its loads, dressed again once it is built."""

from collections.abc import Collection
from dataclasses import replace

from conversations.protocol import Choice
from core.cuffs.limbs import Limb
from core.plan_text import plan_from_text
from core.plans import Exercise, Plan
from core.templates import Template

OWN = "own:"  # before the name, where the stored name of a template is expected
MOST = 6  # of the newest, so that the usual ones stay in sight

Saved = tuple[tuple[str, str], ...]  # (name, plan as JSON), the newest first


def choices(saved: Saved, limbs: Collection[Limb]) -> tuple[Choice, ...]:
    """Those whose bands sit only where the client is cleared."""
    fit = [name for name, text in saved if template(name, text).fits(limbs)]
    return tuple(Choice(name, f"{OWN}{name}") for name in fit[:MOST])


def plan_of(saved: Saved, value: str) -> Plan | None:
    """The saved plan behind a chosen value; None: it names none of the coach's own."""
    text = dict(saved).get(value.removeprefix(OWN)) if value.startswith(OWN) else None
    return None if text is None else plan_from_text(text)


def template(name: str, text: str) -> Template:
    """The saved plan as a template: movements with their schemes."""
    plan = plan_from_text(text)
    return Template(name, tuple((one.movement, one.scheme) for one in plan.exercises), plan.goal)


def dressed(built: Plan, saved: Plan, name: str) -> Plan:
    """The built plan with what the coach had set: sets, rests, tempo, minutes and the pain ceiling."""
    exercises = tuple(_dressed(*pair) for pair in zip(built.exercises, saved.exercises, strict=True))
    return replace(built, name=name, exercises=exercises, pain_ceiling=saved.pain_ceiling, weeks=saved.weeks)


def _dressed(built: Exercise, saved: Exercise) -> Exercise:
    return replace(
        built,
        aims=saved.aims,
        rest_s=saved.rest_s,
        tempo_s=saved.tempo_s,
        limit_min=saved.limit_min,
        walk_min=saved.walk_min,
        walk_kmh=saved.walk_kmh,
    )
