"""`cuffline clients`: everybody, and what they wait for."""

import argparse
import json
from typing import Any

from bot.database.opened import reading
from bot.engine import Engine, status
from core.store import people
from core.store.people import Person


def main(options: argparse.Namespace) -> int:
    """Print one line a client, or JSON."""
    with reading(options.db) as engine:
        found = [
            _about(engine, coach, client)
            for coach in people.coaches(engine.store)
            for client in people.clients_of(engine.store, coach.id)
        ]
    print(json.dumps(found, indent=2, ensure_ascii=False) if options.json else _table(found))
    return 0


def _about(engine: Engine, coach: Person, client: Person) -> dict[str, Any]:
    return {
        "id": client.id,
        "name": client.name,
        "coach": coach.name,
        "zone": client.zone,
        "state": status.state_line(engine, client),
        "sessions": status.sessions_done(engine, client.id),
        "reachable": client.unreachable_at is None,
    }


def _table(found: list[dict[str, Any]]) -> str:
    if not found:
        return "No clients yet."
    width = max(len(one["name"]) for one in found)
    lines = [f"{one['name']:{width}}  {one['state']}{_gone(one)}" for one in found]
    return "\n".join(lines)


def _gone(one: dict[str, Any]) -> str:
    return "" if one["reachable"] else "  (can't be reached by chat)"
