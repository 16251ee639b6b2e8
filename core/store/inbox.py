"""What came in: kept before it is dealt with, and to whose talk it went."""

import json
from datetime import datetime
from typing import Any

from core.store.connection import Store
from core.store.times import ms


def receive(store: Store, update_id: int, body: dict[str, Any], now: datetime) -> bool:
    """Keep a raw update. False: it is here already."""
    cursor = store.execute(
        "INSERT OR IGNORE INTO inbox (update_id, body, received_at) VALUES (?, ?, ?)",
        [update_id, json.dumps(body), ms(now)],  # all ASCII: half a character in it must not stop the intake
    )
    return cursor.rowcount == 1


def unhandled(store: Store, limit: int = 50) -> list[tuple[int, dict[str, Any]]]:
    """Raw updates not dealt with yet, in the order of arrival; so many that their answers are soon on their way."""
    rows = store.rows(
        "SELECT update_id, body FROM inbox WHERE handled_at IS NULL ORDER BY received_at, rowid LIMIT ?",
        [limit],
    )
    return [(row["update_id"], json.loads(row["body"])) for row in rows]


def handled(
    store: Store,
    update_id: int,
    now: datetime,
    *,
    failed: str | None = None,
) -> None:
    """The update is dealt with; `failed` names the error it ended in."""
    store.execute(
        "UPDATE inbox SET handled_at = ?, failed = ? WHERE update_id = ?", [ms(now), failed, update_id]
    )


def heard_from(store: Store, update_id: int, person: int) -> None:
    """Remember who an update came from."""
    store.execute("UPDATE inbox SET person = ? WHERE update_id = ?", [person, update_id])


def heard_in(store: Store, update_id: int, person: int, message: int, thread: int | None) -> None:
    """Remember which thread a client's message went to, for later edits."""
    store.execute(
        "UPDATE inbox SET person = ?, message = ?, thread = ? WHERE update_id = ?",
        [person, message, thread, update_id],
    )


def thread_of_heard(store: Store, person: int, message: int) -> int | None:
    """The thread that got this message of the client."""
    row = store.row(
        "SELECT thread FROM inbox WHERE person = ? AND message = ? AND thread IS NOT NULL LIMIT 1",
        [person, message],
    )
    return None if row is None else row["thread"]
