"""Walks with leg bands: the next one from what was walked, and back into facts as text ("2 x 10 min, 4.5 km/h")."""

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from conversations.words.advice import WALKS
from core.facts import LoadMoved, Rated, WalkDone
from core.plans import Exercise, Plan, Scheme
from core.progression import Action
from core.store import facts
from core.walking import MOST_MIN, START_KMH, Walk, after_walk, gentle

if TYPE_CHECKING:
    from bot.engine.core import Engine

WRITTEN = re.compile(r"(?:(?P<bouts>\d) x )?(?P<minutes>\d+) min, (?P<kmh>[\d.]+) km/h")
DAYS_A_WEEK = 7


def shown(walk: Walk) -> str:
    """ "10 min, 4 km/h" or "2 x 10 min, 4.5 km/h": as said and as stored."""
    times = f"{walk.bouts} x " if walk.bouts > 1 else ""
    return f"{times}{walk.minutes} min, {walk.kmh:g} km/h"


def read(text: str) -> Walk | None:
    """A walk as `shown` wrote it; None: it is none."""
    found = WRITTEN.fullmatch(text)
    if found is None:
        return None
    return Walk(int(found["minutes"]), float(found["kmh"]), int(found["bouts"] or 1))


def planned(exercise: Exercise) -> Walk:
    """The walk of a plan."""
    return Walk(min(exercise.walk_min, MOST_MIN), exercise.walk_kmh or START_KMH)


def number(engine: "Engine", client: int, session: str = "") -> int:
    """The number of this walking session, else of the next one, from 1."""
    return len(facts.sessions(engine.store, WalkDone, client) - {session}) + 1


def at(engine: "Engine", client: int, exercise: Exercise) -> Walk:
    """The walk the client is at."""
    moved = facts.latest(engine.store, LoadMoved, client, movement=exercise.movement, applied=True)
    return (read(moved.use) if moved else None) or planned(exercise)


def now(engine: "Engine", client: int, exercise: Exercise, *, today: bool = False) -> list[Exercise]:
    """The movement as it is walked now, once for each bout: bands come off between.

    `today`: what is walked of it in a session today, as the first ones are gentle.
    """
    walk = at(engine, client, exercise)
    walk = gentle(walk, number(engine, client)) if today else walk
    return [replace(exercise, walk_min=walk.minutes, walk_kmh=walk.kmh)] * walk.bouts


def moved(engine: "Engine", client: int, session: str, plan: Plan | None) -> LoadMoved | None:
    """What comes after the walk of this session; None: nobody walked."""
    walked = facts.current(engine.store, WalkDone, client, session=session)
    exercise = next((one for one in plan.exercises if one.scheme is Scheme.WALK), None) if plan else None
    if exercise is None or not walked:
        return None
    meant, this = at(engine, client, exercise), number(engine, client, session)
    was = gentle(meant, this)
    effort = facts.latest(engine.store, Rated, client, session=session, what="effort")
    if sum(one.minutes for one in walked) < was.minutes * was.bouts:
        use, because = was, WALKS["not_all"]
    else:
        weeks, score = _weeks_at(engine, client, was.kmh), effort.score if effort else None
        use, reason = after_walk(was, meant, this, weeks, score)
        because = WALKS[reason]
    action = _action(was, use, meant)
    told = because.format(use=shown(use))
    return LoadMoved(
        engine.clock(), session, exercise.movement, shown(was), shown(use), action.value, told, True
    )


def _action(was: Walk, use: Walk, meant: Walk) -> Action:
    """What the coach planned needs no further yes of theirs."""
    if use == was:
        return Action.HOLD
    planned = use.minutes <= meant.minutes and use.bouts <= meant.bouts and use.kmh <= meant.kmh
    return Action.START if planned else Action.RAISE


def _weeks_at(engine: "Engine", client: int, kmh: float) -> int:
    """Whole weeks since the first walk at this pace."""
    there = [one.at for one in facts.current(engine.store, WalkDone, client) if one.kmh == kmh]
    return (engine.clock() - min(there)).days // DAYS_A_WEEK if there else 0
