"""What is left of a story in the store: every row, without the numbers and times that a crash may shift."""

import re
from collections import Counter
from typing import Any

from core.store import tables
from core.store.connection import Store
from tests.simulation.world import World

Outcome = Counter[tuple[Any, ...]]
NOT_KEPT = ("inbox", "outbox", "thread", "setting")  # looked at by what matters of them
SHIFTS = re.compile(r"^(id|at|.*_at|message|replaces|person|hash|rest_s|floor|on_at|failures)$")

INBOX = "SELECT handled_at IS NULL AS open, failed FROM inbox"
VARIES = re.compile(r"[A-Z2-7]{26}|\d+ min\b")  # the code of an invitation, and minutes since something


def outcome(world: World) -> Outcome:
    """Rows by how often they are there."""
    store = world.store
    found: Outcome = Counter()
    for table in tables.names(store):
        if table not in NOT_KEPT:
            found.update(_rows(store, table))
    found.update(
        ("thread", row["dialogue"], row["state"] is None) for row in store.rows("SELECT * FROM thread")
    )
    found.update(("setting", row["name"]) for row in store.rows("SELECT * FROM setting"))
    # People answer a question that comes twice: how many updates there are is not part of it.
    found.update({("inbox", row["open"], row["failed"]) for row in store.rows(INBOX)})
    return found


def letters(world: World) -> set[tuple[int, str]]:
    """All that reached anybody's phone."""
    phones = world.line.phones.items()
    return {
        (chat, VARIES.sub("~", one.text)) for chat, phone in phones for one in phone.history if not one.mine
    }


def _rows(store: Store, table: str) -> list[tuple[Any, ...]]:
    kept = [name for name in tables.columns(store, table) if not SHIFTS.match(name)]
    who = "chat" if table == "person" else "person" if "person" in tables.columns(store, table) else "NULL"
    columns = ", ".join((who, *(f'"{name}"' for name in kept)))
    return [(table, *row) for row in store.rows(f"SELECT {columns} FROM {table}")]


def differences(wanted: Outcome, found: Outcome) -> list[str]:
    """Rows that are missing, and rows that are too many."""
    lost = [f"lost {number} x {row}" for row, number in (wanted - found).items()]
    return [*lost, *(f"too many by {number}: {row}" for row, number in (found - wanted).items())]
