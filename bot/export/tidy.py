"""One row a set, with all that belongs to it side by side: what a spreadsheet or a statistics program wants."""

import re
from collections.abc import Iterator
from datetime import datetime
from typing import Any, TypeVar

from conversations.words.movements import NAMES
from core.calendar.zones import local
from core.cuffs import Limb
from core.facts import CuffChecked, LoadMoved, PlanGiven, Rated, SetDone
from core.plan_text import plan_from_text
from core.plans import Plan, Side
from core.store import facts
from core.store.connection import Store
from core.store.people import Person

COLUMNS = (
    *(
        "client",
        "client_id",
        "session",
        "date",
        "time",
        "zone",
        "movement",
        "side",
        "scheme",
        "set",
        "load",
        "unit",
    ),
    *("reps", "rough", "reps_left", "tightness", "refill", "rest_s", "effort", "pain", "next_load"),
)
F = TypeVar("F", CuffChecked, Rated)
WITH_UNIT = re.compile(r"(?P<load>[0-9.]+) (?P<unit>kg|lb)")


def sets_of(store: Store, client: Person) -> Iterator[dict[str, Any]]:
    """The client's sets, oldest first. `load` is a number with its `unit`, or the name of a rung without one.

    `time` is local to the client; `pain` the worst said about the session, 0-10.
    """
    plans = [(one.at, plan_from_text(one.plan)) for one in facts.current(store, PlanGiven, client.id)]
    checks = _by_session(facts.current(store, CuffChecked, client.id))
    ratings = _by_session(facts.current(store, Rated, client.id))
    moves = {(one.session, one.movement): one.use for one in facts.current(store, LoadMoved, client.id)}
    for one in sorted(facts.current(store, SetDone, client.id), key=lambda each: each.done_at):
        of_session = ratings.get(one.session, [])
        yield {
            "client": client.name,
            "client_id": client.id,
            **_about(one, client.zone),
            "scheme": _scheme(one, plans),
            "refill": _refill(one, checks.get(one.session, [])),
            "effort": next((rating.score for rating in of_session if rating.what == "effort"), None),
            "pain": max((rating.score for rating in of_session if rating.what == "pain"), default=None),
            "next_load": moves.get((one.session, one.movement)),
        }


def _by_session(found: list[F]) -> dict[str, list[F]]:
    """The facts of each session in their order: years of them are looked through once, not once a set."""
    grouped: dict[str, list[F]] = {}
    for one in found:
        grouped.setdefault(one.session, []).append(one)
    return grouped


def _about(one: SetDone, zone: str) -> dict[str, Any]:
    here = local(one.done_at, zone)
    found = WITH_UNIT.fullmatch(one.doing)
    return {
        "session": one.session,
        "date": here.date().isoformat(),
        "time": here.strftime("%H:%M:%S"),
        "zone": zone,
        "movement": NAMES.get(one.movement, one.movement),
        "side": one.side.value,
        "set": one.set_no,
        "load": found["load"] if found else one.doing,
        "unit": found["unit"] if found else "",
        "reps": one.reps,
        "rough": "yes" if one.rough else "no",
        "reps_left": one.reps_left,
        "tightness": one.tightness,
        "rest_s": one.rest_s,
    }


def _scheme(one: SetDone, plans: list[tuple[datetime, Plan]]) -> str:
    """By the plan that was in force."""
    before = [plan for at, plan in plans if at <= one.done_at]
    exercises = before[-1].exercises if before else ()
    return next((exercise.scheme.value for exercise in exercises if exercise.movement == one.movement), "")


def _refill(one: SetDone, checks: list[CuffChecked]) -> str:
    """As answered in the last check before the set; of both limbs where they differ."""
    mine = [
        check
        for check in checks
        if check.spell.startswith(f"{one.exercise_no}.")
        and check.at <= one.done_at
        and one.side in (Side.BOTH, Limb(check.limb).side)
    ]
    last = {check.limb: check.refill for check in sorted(mine, key=lambda check: check.at)}
    return " / ".join(dict.fromkeys(last.values()))
