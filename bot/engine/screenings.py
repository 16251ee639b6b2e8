"""A finished screening as the coach's clearing dialogue wants it."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import clearances
from core.facts import ScreeningAnswer, ScreeningDone
from core.screening import due
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def about(engine: "Engine", client: Person, screening: str | None) -> dict[str, Any] | None:
    """What the brief is filled with; None: no screening was finished."""
    where = {} if screening is None else {"screening": screening}
    done = facts.latest(engine.store, ScreeningDone, client.id, **where)
    if done is None:
        return None
    answers = facts.current(engine.store, ScreeningAnswer, client.id, screening=done.screening)
    return {
        "client": client.id,
        "screening": done.screening,
        "tier": done.tier,
        "closed": [limb for limb in done.closed.split(",") if limb],
        "findings": [rule for rule in done.because.split(",") if rule],
        "answers": [[one.question, one.answer] for one in answers],
        "decided": clearances.decided(engine, client),
    }


def is_old(engine: "Engine", client: Person, now: datetime) -> bool:
    """Whether the last screening is due again (twelve weeks)."""
    done = facts.latest(engine.store, ScreeningDone, client.id)
    return done is not None and due(done.at.date(), now.date()) is not None
