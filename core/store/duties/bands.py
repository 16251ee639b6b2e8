"""Bands that are on: a row for every spell, obeyed whatever the dialogues do."""

from dataclasses import dataclass
from datetime import datetime
from sqlite3 import Row

from core.store.connection import Store
from core.store.times import moment, ms


@dataclass(frozen=True, slots=True)
class Watch:
    """Bands are on. `calls` counts how often the client was told to take them off."""

    id: int
    person: int
    session: str
    spell: str
    region: str
    on_at: datetime
    limit_s: int
    calls: int
    next_at: datetime


def watch(store: Store, entry: Watch) -> None:
    """Bands went on: watch them. A second "on" for the same spell changes nothing."""
    store.execute(
        "INSERT OR IGNORE INTO watch (person, session, spell, region, on_at, limit_s, calls, next_at)"
        " VALUES (?, ?, ?, ?, ?, ?, 0, ?)",
        [
            entry.person,
            entry.session,
            entry.spell,
            entry.region,
            ms(entry.on_at),
            entry.limit_s,
            ms(entry.next_at),
        ],
    )


def unwatch(store: Store, person: int, session: str, spell: str) -> None:
    """Bands came off."""
    store.execute(
        "DELETE FROM watch WHERE person = ? AND session = ? AND spell = ?", [person, session, spell]
    )


def called(store: Store, entry: Watch, next_at: datetime) -> None:
    """The client was told once more to take the bands off."""
    store.execute("UPDATE watch SET calls = calls + 1, next_at = ? WHERE id = ?", [ms(next_at), entry.id])


def limit_now(store: Store, entry: Watch, limit_s: int, next_at: datetime) -> None:
    """The client was told to take the bands off before their limit: that was the first call."""
    store.execute(
        "UPDATE watch SET limit_s = ?, calls = 1, next_at = ? WHERE id = ?", [limit_s, ms(next_at), entry.id]
    )


def watch_later(store: Store, entry: Watch, next_at: datetime) -> None:
    """Try this call again later; it does not count as given."""
    store.execute("UPDATE watch SET next_at = ? WHERE id = ?", [ms(next_at), entry.id])


def watches(store: Store, person: int) -> list[Watch]:
    """Bands that are on, for this person."""
    return [_watch(row) for row in store.rows("SELECT * FROM watch WHERE person = ? ORDER BY id", [person])]


def any_watch(store: Store) -> bool:
    """Whether anybody's bands are on."""
    return store.row("SELECT 1 FROM watch LIMIT 1") is not None


def watch_by_id(store: Store, watch_id: int) -> Watch | None:
    """One watch, None: the bands are off."""
    row = store.row("SELECT * FROM watch WHERE id = ?", [watch_id])
    return None if row is None else _watch(row)


def banded(store: Store) -> list[int]:
    """Everybody who has bands on."""
    return [row["person"] for row in store.rows("SELECT DISTINCT person FROM watch ORDER BY person")]


def due_watches(store: Store, now: datetime) -> list[Watch]:
    """Watches whose next call is due."""
    return [
        _watch(row) for row in store.rows("SELECT * FROM watch WHERE next_at <= ? ORDER BY id", [ms(now)])
    ]


def _watch(row: Row) -> Watch:
    return Watch(
        row["id"],
        row["person"],
        row["session"],
        row["spell"],
        row["region"],
        moment(row["on_at"]),
        row["limit_s"],
        row["calls"],
        moment(row["next_at"]),
    )
