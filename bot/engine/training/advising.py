"""The load model asked about one client and one movement: history, limits and equipment from facts."""

from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from typing import TYPE_CHECKING

from bot.engine import status
from bot.engine.training.history import history
from core.calendar.zones import local
from core.plans import PAIN_CEILING, Exercise, Plan, Scheme
from core.progression import Advice, Request, advise
from core.resistance import Ladder, Loads
from core.safety.causes import Cause
from core.store import duties, people
from core.units import Load, load_from_text

if TYPE_CHECKING:
    from bot.engine.core import Engine

UNDER_WAY = 256  # requests that are remembered: as many as sessions begin in a few minutes
BEST = "best"  # a detail "best:goblet_squat" holds the best single lift, "40 kg"


def advice_on(
    engine: "Engine",
    client: int,
    exercise: Exercise,
    plan: Plan | None,
    *,
    now: bool = False,
) -> Advice | None:
    """What the model says, None where there is no load or rung; `now`: for a session today, so that days off and illness count."""
    resistance = resistance_of(engine, client, exercise)
    if exercise.scheme is Scheme.WALK or resistance is None:
        return None
    records = history(engine, client, exercise)
    last = records[-1].date if records else None
    day = local(engine.clock(), people.by_id(engine.store, client).zone).date()
    return _advised(
        Request(
            exercise.movement,
            exercise.scheme,
            resistance,
            records,
            today=max(day, last or day) if now else None,
            planned=exercise.load if exercise.load is not None else exercise.rung,
            pain_ceiling=plan.pain_ceiling if plan else PAIN_CEILING,
            ill=now and _ill_since(engine, client, last),
            open_last=exercise.open_last,
        )
    )


@lru_cache(maxsize=UNDER_WAY)
def _advised(request: Request) -> Advice:
    """The model has no memory, so it answers the same request the same; a session asks twice before its first set."""
    return advise(request)


def _ill_since(engine: "Engine", client: int, last: date | None) -> bool:
    """Whether the client was not well on a day after the last session."""
    if last is None:
        return False
    since = datetime.combine(last, time(), UTC) + timedelta(days=1)
    causes = {one.cause for one in duties.alerts_since(engine.store, client, since)}
    return bool(causes & {Cause.UNWELL, Cause.FEVER_AFTER})


def resistance_of(engine: "Engine", client: int, exercise: Exercise) -> Loads | Ladder | None:
    """What the client owns for this movement, with their best lift; None: neither loads nor a ladder."""
    if exercise.reachable:
        best = tested(engine, client, exercise.movement)
        same = best is not None and best.unit is exercise.reachable[0].unit
        return Loads(exercise.reachable, best if same else None)
    return Ladder(exercise.rungs) if exercise.rungs else None


def tested(engine: "Engine", client: int, movement: str) -> Load | None:
    """The client's best single lift of this movement as estimated or told; None: not known."""
    best = status.detail(engine, client, f"{BEST}:{movement}", "")
    load = load_from_text(best) if best else None
    return load if load is not None and load.value > 0 else None  # 0 could be typed once
