"""What a brief may ask about a client, read from the store."""

from datetime import datetime
from functools import cached_property
from typing import TYPE_CHECKING, Any

from bot.engine import status
from bot.engine.joining import clearances
from bot.engine.safety import checks
from bot.engine.training import loads
from conversations.coach.pulse import CEILING
from core.cuffs.limbs import banded, places_of
from core.facts import (
    NOTHING_WRONG,
    Answered,
    BandsOff,
    CuffChecked,
    Noticed,
    Rated,
    SessionStarted,
    SetDone,
    WalkDone,
)
from core.plans import PAIN_CEILING, Goal, Plan, Scheme
from core.progression import travel
from core.progression.prior import GENTLE_SESSIONS
from core.safety.aftercare import asks_about
from core.safety.pain import too_much
from core.store import facts, people
from core.store.people import Person
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine

UNREAD = "said_unsure"  # `Noticed.kind` of words about which it was asked whether something is wrong
LOOKED_BACK = 30  # ratings of joint pain; own choice


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


def coach_name(about: About) -> str:
    """Who looks after the client now."""
    coach = about.engine.coach_of(about.client)
    return coach.name if coach else "Your coach"


def regions(about: About) -> tuple[str, ...]:
    """Where bands may sit, as stored names."""
    return places_of(clearances.limbs(about.engine, about.client.id))


def age(about: About) -> int | None:
    """In years, as told."""
    text = about.detail("age")
    return int(text) if text.isdigit() else None


def pulse_below(about: About) -> int | None:
    """The pulse to walk below, beats a minute."""
    text = about.detail(CEILING)
    return int(text) if text.isdigit() else None


def slow(about: About) -> bool:
    """Whether any limb was slow in the last check; its other findings and the other limb do not hide it."""
    store, client = about.engine.store, about.client.id
    last = facts.latest(store, CuffChecked, client)
    if last is None:
        return False
    where = {"session": last.session, "spell": last.spell, "check_no": last.check_no}
    rows = facts.current(store, CuffChecked, client, **where)
    return any("slow_refill" in names_in(one.because) for one in rows)


def drill_done(about: About) -> bool:
    """Whether the bands were once taken off in time."""
    return facts.latest(about.engine.store, Answered, about.client.id, question="drill") is not None


def off_at(about: About) -> datetime | None:
    """When the bands of this session came off last."""
    off = checks.last_off(about.engine, about.client.id, about.about.get("session", ""))
    return None if off is None else off.at


def worked(about: About) -> bool:
    """Whether anything of this session was done."""
    store, client, session = about.engine.store, about.client.id, about.about.get("session", "")
    return any(facts.latest(store, kind, client, session=session) is not None for kind in (SetDone, WalkDone))


def joint(about: About) -> bool:
    """Whether there is a joint to look after: in rehab, or since one was said to hurt."""
    rehab = about.plan is not None and about.plan.goal is Goal.REHAB
    rated = facts.newest(about.engine.store, Rated, about.client.id, LOOKED_BACK, what="pain", where="joint")
    return rehab or any(one.score > 0 for one in rated)


def noticed(about: About) -> tuple[str, str]:
    """The newest thing since the session began that the questions after it ask about, until it is gone: kind and words."""
    store, client, session = about.engine.store, about.client.id, about.about.get("session", "")
    before = facts.latest(store, Answered, client, session=session, question="stopped")
    if before is not None and before.answer == "better":
        return "", ""
    began = facts.latest(store, SessionStarted, client, session=session)
    found = facts.since(store, Noticed, client, began.at) if began is not None else []
    asked: list[Noticed] = []
    for one in found:
        if asks_about(one.kind):
            asked.append(one)
        while one.kind == NOTHING_WRONG and asked and asked[-1].kind == UNREAD:
            asked.pop()  # nobody could read them, and nothing was wrong: no reason to quote them next morning
    return (asked[-1].kind, asked[-1].said) if asked else ("", "")


def bands_off_at(about: About) -> datetime | None:
    """When any bands came off last."""
    off = facts.latest(about.engine.store, BandsOff, about.client.id)
    return None if off is None else off.at


def goal(about: About) -> Goal | None:
    """The plan's goal."""
    return about.plan.goal if about.plan else None


def movements(about: About) -> tuple[str, ...]:
    """What the next session trains, as the client calls it: the very first one only the first movement."""
    names = tuple(loads.names(about.plan).values())
    return names[:1] if about.number == 1 else names


def parts(about: About) -> tuple[tuple[str, bool], ...]:
    """Each region that is trained, and whether by walking."""
    exercises = about.plan.exercises if about.plan else ()
    return tuple(sorted({(one.region.value, one.scheme is Scheme.WALK) for one in exercises}))


def open_sets_forbidden(about: About) -> bool:
    """A plan from before, with sets until the form goes, under a clearance that forbids them."""
    open_sets = any(one.to_failure for one in (about.plan.exercises if about.plan else ()))
    return open_sets and status.no_failure(about.engine, about.client.id)


def gentle(about: About) -> bool:
    """The first sessions, a plan from before that may not go to failure, and the one after too much pain."""
    session = about.about.get("session", "")
    days = checks.pain_days(about.engine, about.client.id, session)[:-1]
    ceiling = about.plan.pain_ceiling if about.plan else PAIN_CEILING
    eased = bool(days) and too_much(days[-1], ceiling)
    return about.number <= GENTLE_SESSIONS or eased or open_sets_forbidden(about)


def limbs(about: About) -> tuple[str, ...]:
    """Where bands sit in the next session, as stored names of pairs or limbs."""
    exercises = about.plan.exercises if about.plan else ()
    coming = exercises[:1] if about.number == 1 else exercises
    return places_of({limb for one in coming for limb in banded(one)})


def current(about: About) -> str:
    """The usual plan as stored text."""
    from core.plan_text import plan_to_text

    plan = status.home_plan_of(about.engine, about.client.id)
    return plan_to_text(plan) if plan else ""


def swaps(about: About) -> tuple[tuple[str, str], ...]:
    """What a travel plan does with each movement."""
    plan = status.open_plan_of(about.engine, about.client.id)
    return tuple((swap.was, swap.now or "") for swap in travel.swaps(plan)) if plan else ()
