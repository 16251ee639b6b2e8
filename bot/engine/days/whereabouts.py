"""A client shares where they are without being asked: the question about the clock there begins."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import status, turns
from bot.engine.updates import Incoming
from conversations.dates.nearby import near
from conversations.protocol import Media
from core.store import threads
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine


def shared(engine: "Engine", person: Person, incoming: Incoming, at: datetime) -> bool:
    """Whether this was a location out of the blue that changes the clock; then it is said back first."""
    zones = near(incoming.file) if incoming.media is Media.LOCATION else ()
    if not zones or zones[0] == person.zone or person.role is not Role.CLIENT:
        return False
    if threads.floor(engine.store, person.id) is not None or status.plan_of(engine, person.id) is None:
        return False
    turns.begin(engine, person, "changing", {"said": f"I am in {zones[0]}", "said_at": at.isoformat()}, at)
    return True
