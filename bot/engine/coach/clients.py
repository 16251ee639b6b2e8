"""Whose clients a coach sees, how two of one name are told apart, and finding one by what was typed."""

from collections import Counter
from datetime import datetime
from typing import TYPE_CHECKING, Any

from conversations.words import coach as words
from core.facts import CoachDid
from core.store import facts, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def seen_by(engine: "Engine", coach: Person, now: datetime) -> list[Person]:
    """The coach's own clients and those they stand in for now, by name."""
    coaches = [coach, *people.stood_in_for(engine.store, coach.id, now)]
    found = {client.id: client for one in coaches for client in people.clients_of(engine.store, one.id)}
    return sorted(found.values(), key=lambda client: (client.name.casefold(), client.id))


def told_apart(clients: list[Person]) -> dict[int, str]:
    """What each is called in a list: the name, with the day of joining where two share it, else a number."""
    names = Counter(client.name.casefold() for client in clients)
    dated = {
        client.id: _dated(client) if names[client.name.casefold()] > 1 else client.name for client in clients
    }
    same = Counter(name.casefold() for name in dated.values())
    return {
        client.id: f"{client.name} #{client.id}"
        if same[dated[client.id].casefold()] > 1
        else dated[client.id]
        for client in clients
    }


def _dated(client: Person) -> str:
    return words.SINCE.format(name=client.name, day=client.joined.strftime("%-d %b %Y"))


def name_of(engine: "Engine", coach: Person, client: Person, now: datetime) -> str:
    """What this coach reads for this client."""
    return told_apart(seen_by(engine, coach, now)).get(client.id, client.name)


def rename(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """What a client is called from now on."""
    people.rename(engine.store, details["client"], details["name"])
    facts.put(engine.store, details["client"], CoachDid(now, coach.id, "renamed", details["name"]), now)
    return False


def found(engine: "Engine", coach: Person, typed: str, now: datetime) -> list[Person]:
    """Clients whose name is meant: the whole name, else the beginning of a word of it, else a part of it."""
    wanted = " ".join(typed.casefold().split()).rstrip(" ?!.,")
    clients = seen_by(engine, coach, now)
    shown = told_apart(clients)
    if not wanted:
        return []
    for fits in (_whole, _begins, _contains):
        fitting = [client for client in clients if fits(wanted, client.name, shown[client.id])]
        if fitting:
            return fitting
    return []


def _whole(wanted: str, name: str, shown: str) -> bool:
    return wanted in (name.casefold(), shown.casefold())


def _begins(wanted: str, name: str, shown: str) -> bool:
    flat = name.casefold()
    return flat.startswith(wanted) or any(word.startswith(wanted) for word in flat.split())


def _contains(wanted: str, name: str, shown: str) -> bool:
    return wanted in name.casefold()
