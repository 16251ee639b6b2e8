"""What dialogues need to know, read from the store at their beginning and frozen.

A brief's field is filled from what the beginner said about it, else from the maker of that name below, else
from its default. So a new field of a brief needs one maker, and old briefs in old states still open.
"""

from collections.abc import Callable
from dataclasses import MISSING, fields
from typing import TYPE_CHECKING, Any

import msgspec

from bot.engine import reading_briefs as read
from bot.engine import status
from bot.engine.coach import reading_plans, replaced
from bot.engine.days import calendar
from bot.engine.joining import clearances, screenings
from bot.engine.safety import checks, unseen
from bot.engine.training import clips, clips_asked, kit, loads, recovery, testing
from conversations.catalogue import CATALOGUE
from conversations.client.preferences import DIGEST_AT, REMIND_BEFORE
from conversations.words.details import LINES as DETAILS
from core.facts import (
    SessionEnded,
)
from core.plans import PAIN_CEILING
from core.store import facts
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

Maker = Callable[[read.About], Any]

MAKERS: dict[str, Maker] = {
    "client": lambda about: about.client.id,
    "client_name": lambda about: about.client.name,
    "coach": lambda about: about.person.id if about.person.role is Role.COACH else about.client.coach,
    "coach_name": read.coach_name,
    "zone": lambda about: about.client.zone,
    "today": lambda about: about.engine.clock().date().isoformat(),
    "regions": read.regions,
    "current": read.current,
    "swaps": read.swaps,
    "bests": lambda about: testing.bests(about.engine, about.client),
    "may_test": lambda about: testing.against(about.engine, about.client) is None,
    "at_loads": lambda about: reading_plans.home_text(about.engine, about.client.id),
    "begun_on": lambda about: replaced.newest(about.engine, about.client.id),
    "own": lambda about: tuple(reading_plans.own(about.engine, about.person.id)),
    "age": read.age,
    "first": lambda about: clearances.screened(about.engine, about.client.id) is None,
    "earlier": lambda about: screenings.earlier_tier(about.engine, about.client.id),
    "screening": lambda about: f"{about.client.id}-{about.engine.clock().timestamp():.0f}",
    "session": lambda about: loads.new_session(about.engine, about.client.id),
    "number": lambda about: about.number,
    "plan_name": lambda about: about.plan.name if about.plan else "",
    "pain_ceiling": lambda about: about.plan.pain_ceiling if about.plan else PAIN_CEILING,
    "gentle": read.gentle,
    "limbs": read.limbs,
    "no_failure": lambda about: status.no_failure(about.engine, about.client.id),
    "exercises": lambda about: about.today.exercises,
    "first_lines": lambda about: about.today.lines,
    "names": lambda about: loads.names(about.plan),
    "cues": lambda about: {**loads.cues(about.plan), **clips.cues_of(about.engine, about.client.id)},
    "clips": lambda about: clips.of_coach(about.engine, about.client),
    "teaching": lambda about: clips_asked.with_wishes(
        about.engine, about.client.id, loads.teaching(about.plan)
    ),
    "movements": read.movements,
    "expected": lambda about: about.today.expected,
    "last_check_slow": read.slow,
    "unseen_limbs": lambda about: unseen.allowed(about.engine, about.client.id),
    "drill_done": read.drill_done,
    "pain_days": lambda about: checks.pain_days(
        about.engine, about.client.id, about.about.get("session", "")
    ),
    "off_at": read.off_at,
    "worked": read.worked,
    "joint": read.joint,
    "stopped": lambda about: read.noticed(about)[0],
    "stopped_said": lambda about: read.noticed(about)[1],
    "bands_off_at": read.bands_off_at,
    "owned": lambda about: kit.lines(about.engine, about.client.id),
    "bands": lambda about: kit.bands(about.engine, about.client.id),
    "marks": lambda about: kit.marks(about.engine, about.client.id),
    "last_band": lambda about: kit.last_bands(about.engine, about.client.id),
    "emergency_number": lambda about: status.emergency_number(about.engine, about.client.id),
    "helper": lambda about: about.detail("helper"),
    "goal": read.goal,
    "by_coach": lambda about: about.person.role is Role.COACH,
    "planned_when": lambda about: (about.plan.when or "") if about.plan else "",
    "clock_moves": lambda about: calendar.clock_moves(about.engine, about.client.id),
    "date_order": lambda about: status.detail(about.engine, about.person.id, "date_order", ""),
    "clock_face": lambda about: status.detail(about.engine, about.person.id, "clock_face", ""),
    "remind_before": lambda about: status.detail(about.engine, about.person.id, REMIND_BEFORE, ""),
    "quiet_hours": lambda about: status.detail(about.engine, about.person.id, "quiet_hours", ""),
    "digest_at": lambda about: status.detail(about.engine, about.person.id, DIGEST_AT, ""),
    "last_digest": lambda about: calendar.last_digest(about.engine, about.person),
    "parts": read.parts,
    "pulse_below": read.pulse_below,
    "known": lambda about: {name: about.detail(name) for name in DETAILS},
    "allowed": lambda about: recovery.allowed(about.engine, about.client.id),
    "done": lambda about: recovery.done(about.engine, about.client.id),
    "ended": lambda about: facts.latest(about.engine.store, SessionEnded, about.client.id) is not None,
}


def make(engine: "Engine", person: Person, name: str, about: dict[str, Any]) -> Any:
    """The brief of a dialogue. Raises ValueError when a field has neither a maker nor a default."""
    kind = CATALOGUE[name].brief
    reader = read.About(engine, person, about)
    values: dict[str, Any] = {}
    for field in fields(kind):
        if field.name in about:
            values[field.name] = about[field.name]
        elif field.name in MAKERS:
            values[field.name] = MAKERS[field.name](reader)
        elif field.default is MISSING and field.default_factory is MISSING:
            raise ValueError(f"{name}: nothing to fill {field.name} with")
    return msgspec.convert(msgspec.to_builtins(values), kind, strict=False)
