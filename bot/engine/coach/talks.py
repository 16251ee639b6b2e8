"""What the coach's side planned for later, by its stored name."""

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine.coach import away, covering, holding, resting
from bot.engine.training import starting
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

Talk = Callable[["Engine", Person, dict[str, Any], datetime], None]

TALKS: dict[str, Talk] = {
    "pause_over": resting.pause_over,
    "hold_over": holding.hold_over,
    "travel_begins": away.travel_begins,
    "travel_over": away.travel_over,
    "cover_begins": covering.cover_begins,
    "cover_over": covering.cover_over,
    "screening": lambda engine, person, about, now: starting.screen(engine, person, now),
}
