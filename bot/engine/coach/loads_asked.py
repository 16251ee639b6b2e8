"""Loads that wait for the coach's tap, for clients whose next loads the coach wants to be asked about."""

from typing import TYPE_CHECKING

from core.facts import LoadMoved
from core.progression import Action
from core.store import facts

if TYPE_CHECKING:
    from bot.engine.core import Engine


def waiting(engine: "Engine", client: int) -> list[LoadMoved]:
    """The newest move of each movement, where it waits for a tap."""
    newest = {one.movement: one for one in facts.current(engine.store, LoadMoved, client)}
    return [one for one in newest.values() if is_asked(one)]


def is_asked(move: LoadMoved) -> bool:
    """Whether this move waits for a tap; a movement at rest does not wait for one."""
    return not move.applied and move.use != move.was and move.action != Action.PAUSE
