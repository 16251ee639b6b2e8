"""Database files as files: copied while in use, looked over, never changed.

A connection made here cannot write, so it cannot meet the bug of SQLite libraries before 3.51.3 that takes two
connections that write or tidy up at the same moment.
"""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import get_args

import sqlite_utils

from core.facts import Fact
from core.store.facts import table_of
from core.store.migrations import migrations

PAGES = 1_000  # a step of a copy, 4 MB at the usual page size; own choice
MOST_FINDINGS = 5  # shown; own choice
NOT_ERASED = (
    "old.person IN (SELECT id FROM live.person)"
    " AND old.person NOT IN (SELECT person FROM live.planned WHERE dialogue = 'erase')"
)

Progress = Callable[[int, int], None]  # pages done, pages in all


def reading(path: Path) -> sqlite3.Connection:
    """A connection that cannot write. Raises sqlite3.Error."""
    return sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True, isolation_level=None)


def copy(source: Path, target: Path, tell: Progress = lambda done, total: None) -> None:
    """Copy `source` as it is at this moment to the new file `target`, by SQLite's online backup.

    The copy is one file without a log beside it. Raises sqlite3.Error.
    """
    with closing(reading(source)) as old, closing(sqlite3.connect(target, isolation_level=None)) as new:
        old.execute("BEGIN")  # holds this moment, so that a busy bot cannot make the copy begin again
        old.execute("SELECT count(*) FROM sqlite_schema").fetchone()
        old.backup(new, pages=PAGES, progress=lambda _, left, total: tell(total - left, total))
        new.execute("PRAGMA journal_mode = DELETE")


def tidy(path: Path) -> None:
    """Put what stands in the log into the file itself; nobody else may have it open. Raises sqlite3.Error."""
    with closing(sqlite3.connect(path, isolation_level=None)) as database:
        database.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def damage(path: Path, quick: bool = False) -> list[str]:
    """What SQLite itself finds wrong, [] when nothing. `quick` leaves out indexes and references."""
    try:
        with closing(reading(path)) as database:
            check = "quick_check" if quick else "integrity_check"
            found = [row[0] for row in database.execute(f"PRAGMA {check}({MOST_FINDINGS})") if row[0] != "ok"]
            return found if quick else [*found, *_dangling(database)]
    except sqlite3.DatabaseError as problem:
        return [str(problem)]


def _dangling(database: sqlite3.Connection) -> list[str]:
    rows = database.execute("PRAGMA foreign_key_check").fetchmany(MOST_FINDINGS)
    return [f"{table} row {row} names a {parent} that is not there" for table, row, parent, _ in rows]


def applied(path: Path) -> list[str]:
    """Names of the schema's steps in this file, in order; [] when it is none of ours. Raises sqlite3.Error."""
    with closing(reading(path)) as database:
        known = database.execute("SELECT 1 FROM sqlite_schema WHERE name = '_sqlite_migrations'").fetchone()
        if known is None:
            return []
        steps = "SELECT name FROM _sqlite_migrations WHERE migration_set = 'cuffline' ORDER BY id"
        return [row[0] for row in database.execute(steps)]


def unknown_steps(path: Path) -> list[str]:
    """Steps of a later version of the program that this one does not know. Raises sqlite3.Error."""
    known = {step.name for step in migrations.pending(sqlite_utils.Database(memory=True))}
    return [name for name in applied(path) if name not in known]


def changed(kept: Path, live: Path) -> list[str]:
    """Rows that say another thing in `live` than in the older copy `kept`, or are gone, although they never change.

    SQLite does not notice a damaged value; two copies do. Facts of people who had their records erased may be gone.
    Raises sqlite3.Error.
    """
    with closing(reading(kept)) as database:
        database.text_factory = bytes  # damaged text need not be text
        database.execute("ATTACH ? AS live", [f"{live.resolve().as_uri()}?mode=ro"])
        tables = [table_of(kind) for kind in get_args(Fact)]
        found = [line for table in tables for line in _changed_in(database, table)]
        return found[:MOST_FINDINGS]


def _changed_in(database: sqlite3.Connection, table: str) -> list[str]:
    columns = [row[1].decode() for row in database.execute(f"PRAGMA main.table_info({table})")]
    if not columns:
        return []  # a table that the older copy does not have yet
    differs = " OR ".join(f'old."{name}" IS NOT new."{name}"' for name in columns)
    rows = database.execute(
        f"SELECT old.id FROM main.{table} AS old LEFT JOIN live.{table} AS new ON new.id = old.id"
        f" WHERE (new.id IS NOT NULL AND ({differs})) OR (new.id IS NULL AND {NOT_ERASED})"
        " ORDER BY old.id"
    )
    return [
        f"{table} row {row} is not what it was in the last backup" for (row,) in rows.fetchmany(MOST_FINDINGS)
    ]


def setting(path: Path, name: str) -> str | None:
    """A stored value of the program itself. Raises sqlite3.Error."""
    with closing(reading(path)) as database:
        row = database.execute("SELECT value FROM setting WHERE name = ?", [name]).fetchone()
        return None if row is None else row[0]


def zones(path: Path) -> list[str]:
    """The zones that people live in. Raises sqlite3.Error."""
    with closing(reading(path)) as database:
        return [row[0] for row in database.execute("SELECT DISTINCT zone FROM person ORDER BY zone")]
