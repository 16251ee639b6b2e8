"""The client's next loads: history from facts, advice from the load model, moves back into facts."""

from dataclasses import replace
from datetime import date, datetime
from itertools import groupby
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from conversations.words.advice import sentence
from conversations.words.movements import CUES, NAMES, lesson
from core.facts import CuffChecked, LoadMoved, Rated, SessionEnded, SetDone
from core.plans import Exercise, Plan, Scheme, Side
from core.progression import Action, Advice, Request, SessionRecord, advise
from core.resistance import Ladder, Loads, shown
from core.store import facts, people
from core.units import Load

if TYPE_CHECKING:
    from bot.engine.core import Engine


def new_session(engine: "Engine", client: int) -> str:
    """An id no session of this client has yet."""
    row = engine.store.row("SELECT count(*) AS n FROM thread WHERE person = ?", [client])
    return f"{client}-{(row['n'] if row else 0) + 1}"


def names(plan: Plan | None) -> dict[str, str]:
    """What the client calls each movement."""
    return {e.movement: NAMES.get(e.movement, e.movement.replace("_", " ")) for e in _of(plan)}


def cues(plan: Plan | None) -> dict[str, str]:
    """One cue for each movement."""
    return {e.movement: CUES[e.movement][0] for e in _of(plan) if CUES.get(e.movement)}


def teaching(plan: Plan | None) -> dict[str, str]:
    """How each movement is done, in one message."""
    return {e.movement: lesson(e.movement) for e in _of(plan)}


def _of(plan: Plan | None) -> tuple[Exercise, ...]:
    return () if plan is None else plan.exercises


def exercises(engine: "Engine", client: int, plan: Plan | None) -> tuple[Exercise, ...]:
    """The plan's movements at the loads that were moved since."""
    return tuple(_at_load(engine, client, exercise) for exercise in _of(plan))


def _at_load(engine: "Engine", client: int, exercise: Exercise) -> Exercise:
    moved = facts.latest(engine.store, LoadMoved, client, movement=exercise.movement, applied=True)
    if moved is None:
        return exercise
    for load in exercise.reachable:
        if str(load) == moved.use:
            return replace(exercise, load=load)
    known = {rung.name for rung in exercise.rungs}
    return replace(exercise, rung=moved.use) if moved.use in known else exercise


def expected(engine: "Engine", client: int, plan: Plan | None) -> dict[str, tuple[int, ...]]:
    """Reps to expect of each set, by the load model, where there is a load or a rung."""
    found = {}
    for exercise in exercises(engine, client, plan):
        advice = _advice(engine, client, exercise, None)
        if advice is not None and len(advice.expected_reps) >= len(exercise.aims):
            found[exercise.movement] = tuple(max(1, reps) for reps in advice.expected_reps)
    return found


def move(engine: "Engine", client: int, session: str) -> list[tuple[str, str, str, str]]:
    """Advise on every movement of the session and record it; (movement, was, use, why) of each."""
    from bot.engine import status, turns

    moves = []
    done = {one.movement for one in facts.current(engine.store, SetDone, client, session=session)}
    plan = status.plan_of(engine, client)
    for exercise in exercises(engine, client, plan):
        if exercise.movement not in done:
            continue
        advice = _advice(engine, client, exercise, session)
        if advice is None:
            continue
        why, use = sentence(advice.because), shown(advice.use)
        fact = LoadMoved(
            engine.clock(),
            session,
            exercise.movement,
            exercise.doing,
            use,
            advice.action.value,
            why,
            advice.action is not Action.PAUSE,
            " ".join(map(str, advice.expected_reps)),
        )
        turns.record(engine, client, fact)
        moves.append((names(plan)[exercise.movement], exercise.doing, use, why))
    return moves


def jump(engine: "Engine", client: int, session: str) -> float:
    """The largest share by which a load went up from the session before to this one; 0: none did."""
    from bot.engine import status

    most = 0.0
    for exercise in _of(status.plan_of(engine, client)):
        records = history(engine, client, exercise)
        used = [one.used.kilograms for one in records[-2:] if isinstance(one.used, Load)]
        if len(used) == 2 and used[0] > 0:
            most = max(most, used[1] / used[0] - 1)
    return most


def _advice(engine: "Engine", client: int, exercise: Exercise, session: str | None) -> Advice | None:
    resistance = _resistance(exercise)
    if exercise.scheme is Scheme.WALK or resistance is None:
        return None
    records = history(engine, client, exercise)
    planned: Load | str | None = exercise.load if exercise.load is not None else exercise.rung
    return advise(Request(exercise.movement, exercise.scheme, resistance, records, planned=planned))


def _resistance(exercise: Exercise) -> Loads | Ladder | None:
    if exercise.reachable:
        return Loads(exercise.reachable)
    return Ladder(exercise.rungs) if exercise.rungs else None


def history(engine: "Engine", client: int, exercise: Exercise) -> tuple[SessionRecord, ...]:
    """The client's sessions of this movement at loads that they still own, oldest first; the weaker side."""
    zone = ZoneInfo(people.by_id(engine.store, client).zone)
    sets = facts.current(engine.store, SetDone, client, movement=exercise.movement)
    side = exercise.sides[0] if exercise.sides else Side.BOTH
    mine = [one for one in sets if one.side is side and _owned(exercise, one.doing) is not None]
    by_session = groupby(sorted(mine, key=lambda one: (one.done_at, one.set_no)), key=lambda one: one.session)
    return tuple(_record(engine, client, exercise, list(group), zone) for _, group in by_session)


def _owned(exercise: Exercise, doing: str) -> Load | str | None:
    for load in exercise.reachable:
        if str(load) == doing:
            return load
    return next((rung.name for rung in exercise.rungs if rung.name == doing), None)


def _record(
    engine: "Engine", client: int, exercise: Exercise, sets: list[SetDone], zone: ZoneInfo
) -> SessionRecord:
    session, store = sets[0].session, engine.store
    ordered = sorted(sets, key=lambda one: one.set_no)
    used = _owned(exercise, ordered[0].doing)
    assert used is not None, "only owned loads are in the history"
    pain = [one.score for one in facts.current(store, Rated, client, session=session, what="pain")]
    effort = facts.latest(store, Rated, client, session=session, what="effort")
    ended = facts.latest(store, SessionEnded, client, session=session)
    checks = facts.current(store, CuffChecked, client, session=session)
    left = tuple(one.reps_left for one in ordered if one.reps_left is not None)
    return SessionRecord(
        date=_day(ordered[0].done_at, zone),
        used=used,
        reps=tuple(one.reps for one in ordered),
        tightness=ordered[0].tightness,
        rest_s=tuple(one.rest_s for one in ordered[1:] if one.rest_s is not None) or None,
        pain=max(pain, default=None),
        effort=effort.score if effort else None,
        reps_left=left or None,
        stopped=ended.why if ended and ended.why not in ("done", "time") else None,
        loose=any(one.loose for one in ordered),
        rough=any(one.rough for one in ordered),
        check_ok=all(check.verdict in ("go", "loose") for check in checks),
    )


def _day(at: datetime, zone: ZoneInfo) -> date:
    return at.astimezone(zone).date()
