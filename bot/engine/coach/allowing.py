"""How often a client may train: on the card, and told to the client."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import quiet
from bot.engine.training import recovery
from conversations.words import allowing as words
from core.calendar.limits import USUAL, Limits
from core.facts import CoachDid
from core.store import facts, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def told(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The client hears what holds from now on."""
    client = people.by_id(engine.store, details["client"])
    limits = Limits(details["sessions"], details["hours"])
    quiet.note(engine, client, words.told_client(limits), now)
    return False


def card_lines(engine: "Engine", client: Person) -> list[str]:
    """More than usual, and why; nothing where the usual limits hold."""
    allowed = recovery.allowed(engine, client.id)
    if allowed == USUAL:
        return []
    last = facts.latest(engine.store, CoachDid, client.id, action="limits")
    return [words.CARD.format(limits=words.limits(allowed), note=last.note if last else "-")]
