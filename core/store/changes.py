"""Which rows change while a copy of the file is made, and the same changes made in the copy.

Triggers of the writing connection keep table and key of every row that is touched; they go with the connection, so a
kill leaves nothing of them. A key may stand there twice or for nothing: what counts is how the row is at the end.
"""

from collections.abc import Iterable
from contextlib import closing
from pathlib import Path

from core.store import copies
from core.store.connection import Store, connect

Touched = tuple[str, int | str]  # a table and the key of a row

EVENTS = (("insert", "NEW"), ("update", "NEW"), ("update", "OLD"), ("delete", "OLD"))


def note(store: Store) -> None:
    """From now on keep which rows are touched. Outside a transaction."""
    forget(store)
    store.execute("CREATE TEMP TABLE touched (tab TEXT, key, PRIMARY KEY (tab, key)) WITHOUT ROWID")
    for table, key in _tables(store):
        for event, which in EVENTS:
            store.execute(
                f"CREATE TEMP TRIGGER touched_{table}_{event}_{which} AFTER {event} ON main.{table} BEGIN"
                f" INSERT OR IGNORE INTO touched VALUES ('{table}', {which}.{key}); END"
            )


def forget(store: Store) -> None:
    """Keep no longer what is touched."""
    rows = store.rows("SELECT name FROM temp.sqlite_schema WHERE type = 'trigger' AND name GLOB 'touched_*'")
    for row in rows:
        store.execute(f"DROP TRIGGER temp.{row['name']}")
    store.execute("DROP TABLE IF EXISTS temp.touched")


def count(store: Store) -> int:
    """How many rows are touched and not taken yet."""
    row = store.row("SELECT count(*) AS n FROM temp.touched")
    return 0 if row is None else row["n"]


def take(store: Store) -> list[Touched]:
    """What was touched since the last time."""
    taken = [(row["tab"], row["key"]) for row in store.rows("SELECT tab, key FROM temp.touched")]
    store.execute("DELETE FROM temp.touched")
    return taken


def repeat(db: Path, copy: Path, touched: Iterable[Touched]) -> None:
    """Make each of these rows in the copy what it is in the database by now. Raises sqlite3.Error.

    All are taken away before any is put in: two rows may have changed places in an index that is unique.
    """
    touched = list(touched)
    with closing(connect(str(copy), uri=True)) as database:
        copies.attach(database, db)
        database.execute("PRAGMA secure_delete = ON")
        keys = {row[0]: row[1] for row in database.execute(KEYS)}
        database.execute("BEGIN IMMEDIATE")
        for table, key in touched:
            database.execute(f"DELETE FROM main.{table} WHERE {keys[table]} = ?", [key])
        for table, key in touched:
            database.execute(
                f"INSERT INTO main.{table} SELECT * FROM live.{table} WHERE {keys[table]} = ?", [key]
            )
        database.execute("COMMIT")


KEYS = (
    "SELECT t.name, c.name FROM main.sqlite_schema AS t, pragma_table_info(t.name, 'main') AS c"
    " WHERE t.type = 'table' AND t.name NOT GLOB 'sqlite_*' AND t.name NOT GLOB '_sqlite_*' AND c.pk = 1"
)


def _tables(store: Store) -> list[tuple[str, str]]:
    """Every table with the column that is its key; the schema's own record does not change while we run."""
    return [(row[0], row[1]) for row in store.rows(KEYS)]
