"""What the program keeps about itself, by name."""

from core.store.connection import Store

PROBE = 65_536  # bytes; own choice


def get(store: Store, name: str) -> str | None:
    """A stored value."""
    row = store.row("SELECT value FROM setting WHERE name = ?", [name])
    return None if row is None else row["value"]


def put(store: Store, name: str, value: str) -> None:
    """Store a value."""
    store.execute("INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)", [name, value])


def forget(store: Store, name: str) -> None:
    """The value is not set any more."""
    store.execute("DELETE FROM setting WHERE name = ?", [name])


def try_to_write(store: Store) -> None:
    """Write as much as a few messages need, and take it away again. Raises sqlite3.Error when that cannot be."""
    with store.transaction():
        put(store, "probe", "." * PROBE)
    with store.transaction():
        forget(store, "probe")
