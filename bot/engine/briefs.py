"""What dialogues need to know, read from the store at their beginning and frozen.

A brief's field is filled from what the beginner said about it, else from the maker of that name below, else
from its default. So a new field of a brief needs one maker, and old briefs in old states still open.
"""

from collections.abc import Callable
from dataclasses import MISSING, fields
from datetime import datetime
from functools import cached_property
from typing import TYPE_CHECKING, Any

import msgspec

from bot.engine import calendar, checks, clearances, clips, kit, loads, recovery, screenings, status, testing
from bot.engine.coach import reading_plans
from conversations.catalogue import CATALOGUE
from conversations.pulse import CEILING
from conversations.words.details import LINES as DETAILS
from core.cuffs.limbs import banded, places_of
from core.facts import (
    Answered,
    BandsOff,
    Cleared,
    CuffChecked,
    Noticed,
    Rated,
    SessionEnded,
    SessionStarted,
    SetDone,
    WalkDone,
)
from core.plans import PAIN_CEILING, Goal, Plan, Scheme
from core.progression.travel import swaps
from core.safety.aftercare import asks_about
from core.safety.pain import too_much
from core.store import facts, people
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

LOOKED_BACK = 30  # ratings of joint pain; own choice
GENTLE_SESSIONS = 2  # own caution, no source


class About:
    """Reads what a brief asks for. `client` is the person it is about: the one talked to, unless named."""

    engine: "Engine"
    person: Person
    about: dict[str, Any]
    client: Person

    def __init__(self, engine: "Engine", person: Person, about: dict[str, Any]) -> None:
        self.engine = engine
        self.person = person
        self.about = about
        named = about.get("client")
        self.client = people.by_id(engine.store, named) if isinstance(named, int) else person

    def detail(self, name: str, otherwise: str = "") -> str:
        """A stored detail of the client."""
        return status.detail(self.engine, self.client.id, name, otherwise)

    @cached_property
    def plan(self) -> Plan | None:
        """The client's plan in force."""
        return status.plan_of(self.engine, self.client.id)

    @cached_property
    def today(self) -> loads.Today:
        """What a session now would be; three fields of a brief come of it."""
        return loads.today(self.engine, self.client.id, self.plan)

    @cached_property
    def number(self) -> int:
        """The number of the session that is under way or comes next, from 1: those with work done count."""
        this = self.about.get("session", "")
        store, client = self.engine.store, self.client.id
        done = facts.sessions(store, SetDone, client) | facts.sessions(store, WalkDone, client)
        return len(done - {this}) + 1


Maker = Callable[[About], Any]


def _coach_name(about: About) -> str:
    coach = about.engine.coach_of(about.client)
    return coach.name if coach else "Your coach"


def _regions(about: About) -> tuple[str, ...]:
    return places_of(clearances.limbs(about.engine, about.client.id))


def _age(about: About) -> int | None:
    text = about.detail("age")
    return int(text) if text.isdigit() else None


def _pulse_below(about: About) -> int | None:
    text = about.detail(CEILING)
    return int(text) if text.isdigit() else None


def _slow(about: About) -> bool:
    """Whether any limb was slow in the last check; its other findings and the other limb do not hide it."""
    store, client = about.engine.store, about.client.id
    last = facts.latest(store, CuffChecked, client)
    if last is None:
        return False
    where = {"session": last.session, "spell": last.spell, "check_no": last.check_no}
    rows = facts.current(store, CuffChecked, client, **where)
    return any("slow_refill" in one.because.split(",") for one in rows)


def _drill_done(about: About) -> bool:
    return facts.latest(about.engine.store, Answered, about.client.id, question="drill") is not None


def _off_at(about: About) -> datetime | None:
    off = checks.last_off(about.engine, about.client.id, about.about.get("session", ""))
    return None if off is None else off.at


def _worked(about: About) -> bool:
    store, client, session = about.engine.store, about.client.id, about.about.get("session", "")
    return any(facts.latest(store, kind, client, session=session) is not None for kind in (SetDone, WalkDone))


def _joint(about: About) -> bool:
    """Whether there is a joint to look after: in rehab, or since one was said to hurt."""
    rehab = about.plan is not None and about.plan.goal is Goal.REHAB
    rated = facts.newest(about.engine.store, Rated, about.client.id, LOOKED_BACK, what="pain", where="joint")
    return rehab or any(one.score > 0 for one in rated)


def _noticed(about: About) -> tuple[str, str]:
    """The newest thing since the session began that the questions after it ask about, until it is gone: kind and words."""
    store, client, session = about.engine.store, about.client.id, about.about.get("session", "")
    before = facts.latest(store, Answered, client, session=session, question="stopped")
    if before is not None and before.answer == "better":
        return "", ""
    began = facts.latest(store, SessionStarted, client, session=session)
    found = facts.since(store, Noticed, client, began.at) if began is not None else []
    asked = [one for one in found if asks_about(one.kind)]
    return (asked[-1].kind, asked[-1].said) if asked else ("", "")


def _bands_off_at(about: About) -> datetime | None:
    off = facts.latest(about.engine.store, BandsOff, about.client.id)
    return None if off is None else off.at


def _goal(about: About) -> Goal | None:
    return about.plan.goal if about.plan else None


def _movements(about: About) -> tuple[str, ...]:
    """What the next session trains, as the client calls it: the very first one only the first movement."""
    names = tuple(loads.names(about.plan).values())
    return names[:1] if about.number == 1 else names


def _parts(about: About) -> tuple[tuple[str, bool], ...]:
    exercises = about.plan.exercises if about.plan else ()
    return tuple(sorted({(one.region.value, one.scheme is Scheme.WALK) for one in exercises}))


def _open_sets_forbidden(about: About) -> bool:
    """A plan from before, with sets until the form goes, under a clearance that forbids them."""
    open_sets = any(one.to_failure for one in (about.plan.exercises if about.plan else ()))
    return open_sets and status.no_failure(about.engine, about.client.id)


def _gentle(about: About) -> bool:
    """The first sessions, a plan from before that may not go to failure, and the one after too much pain."""
    session = about.about.get("session", "")
    days = checks.pain_days(about.engine, about.client.id, session)[:-1]
    ceiling = about.plan.pain_ceiling if about.plan else PAIN_CEILING
    eased = bool(days) and too_much(days[-1], ceiling)
    return about.number <= GENTLE_SESSIONS or eased or _open_sets_forbidden(about)


def _limbs(about: About) -> tuple[str, ...]:
    """Where bands sit in the next session, as stored names of pairs or limbs."""
    exercises = about.plan.exercises if about.plan else ()
    coming = exercises[:1] if about.number == 1 else exercises
    return places_of({limb for one in coming for limb in banded(one)})


def _current(about: About) -> str:
    from core.plan_text import plan_to_text

    plan = status.home_plan_of(about.engine, about.client.id)
    return plan_to_text(plan) if plan else ""


def _swaps(about: About) -> tuple[tuple[str, str], ...]:
    plan = status.open_plan_of(about.engine, about.client.id)
    return tuple((swap.was, swap.now or "") for swap in swaps(plan)) if plan else ()


MAKERS: dict[str, Maker] = {
    "client": lambda about: about.client.id,
    "client_name": lambda about: about.client.name,
    "coach": lambda about: about.person.id if about.person.role is Role.COACH else about.client.coach,
    "coach_name": _coach_name,
    "zone": lambda about: about.client.zone,
    "today": lambda about: about.engine.clock().date().isoformat(),
    "regions": _regions,
    "current": _current,
    "swaps": _swaps,
    "bests": lambda about: testing.bests(about.engine, about.client),
    "may_test": lambda about: testing.against(about.engine, about.client) is None,
    "at_loads": lambda about: reading_plans.home_text(about.engine, about.client.id),
    "own": lambda about: tuple(reading_plans.own(about.engine, about.person.id)),
    "age": _age,
    "first": lambda about: not facts.current(about.engine.store, Cleared, about.client.id),
    "earlier": lambda about: screenings.tier(about.engine, about.client.id),
    "screening": lambda about: f"{about.client.id}-{about.engine.clock().timestamp():.0f}",
    "session": lambda about: loads.new_session(about.engine, about.client.id),
    "number": lambda about: about.number,
    "plan_name": lambda about: about.plan.name if about.plan else "",
    "pain_ceiling": lambda about: about.plan.pain_ceiling if about.plan else PAIN_CEILING,
    "gentle": _gentle,
    "limbs": _limbs,
    "no_failure": lambda about: status.no_failure(about.engine, about.client.id),
    "exercises": lambda about: about.today.exercises,
    "first_lines": lambda about: about.today.lines,
    "names": lambda about: loads.names(about.plan),
    "cues": lambda about: {**loads.cues(about.plan), **clips.cues_of(about.engine, about.client.id)},
    "clips": lambda about: clips.of_coach(about.engine, about.client),
    "teaching": lambda about: loads.teaching(about.plan),
    "movements": _movements,
    "expected": lambda about: about.today.expected,
    "last_check_slow": _slow,
    "unseen_allowed": lambda about: about.detail("unseen_allowed") == "yes",
    "drill_done": _drill_done,
    "pain_days": lambda about: checks.pain_days(
        about.engine, about.client.id, about.about.get("session", "")
    ),
    "off_at": _off_at,
    "worked": _worked,
    "joint": _joint,
    "stopped": lambda about: _noticed(about)[0],
    "stopped_said": lambda about: _noticed(about)[1],
    "bands_off_at": _bands_off_at,
    "owned": lambda about: kit.lines(about.engine, about.client.id),
    "bands": lambda about: kit.bands(about.engine, about.client.id),
    "marks": lambda about: kit.marks(about.engine, about.client.id),
    "last_band": lambda about: kit.last_bands(about.engine, about.client.id),
    "emergency_number": lambda about: status.emergency_number(about.engine, about.client.id),
    "helper": lambda about: about.detail("helper"),
    "goal": _goal,
    "by_coach": lambda about: about.person.role is Role.COACH,
    "planned_when": lambda about: (about.plan.when or "") if about.plan else "",
    "date_order": lambda about: status.detail(about.engine, about.person.id, "date_order", ""),
    "clock_face": lambda about: status.detail(about.engine, about.person.id, "clock_face", ""),
    "remind_before": lambda about: status.detail(about.engine, about.person.id, "remind_before", ""),
    "quiet_hours": lambda about: status.detail(about.engine, about.person.id, "quiet_hours", ""),
    "digest_at": lambda about: status.detail(about.engine, about.person.id, calendar.DIGEST_AT, ""),
    "last_digest": lambda about: calendar.last_digest(about.engine, about.person),
    "parts": _parts,
    "pulse_below": _pulse_below,
    "known": lambda about: {name: about.detail(name) for name in DETAILS},
    "allowed": lambda about: recovery.allowed(about.engine, about.client.id),
    "done": lambda about: recovery.done(about.engine, about.client.id),
    "ended": lambda about: facts.latest(about.engine.store, SessionEnded, about.client.id) is not None,
}


def make(engine: "Engine", person: Person, name: str, about: dict[str, Any]) -> Any:
    """The brief of a dialogue. Raises ValueError when a field has neither a maker nor a default."""
    kind = CATALOGUE[name].brief
    reader = About(engine, person, about)
    values: dict[str, Any] = {}
    for field in fields(kind):
        if field.name in about:
            values[field.name] = about[field.name]
        elif field.name in MAKERS:
            values[field.name] = MAKERS[field.name](reader)
        elif field.default is MISSING and field.default_factory is MISSING:
            raise ValueError(f"{name}: nothing to fill {field.name} with")
    return msgspec.convert(msgspec.to_builtins(values), kind, strict=False)
