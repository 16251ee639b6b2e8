"""Database files as files: copied while in use, looked over, never changed.

A connection made here cannot write, so it cannot meet the bug of SQLite libraries before 3.51.3 that takes two
connections that write or tidy up at the same moment.
"""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import sqlite_utils

from core.store.migrations import migrations

PAGES = 1_000  # a step of a copy, 4 MB at the usual page size; own choice
MOST_FINDINGS = 5  # shown; own choice

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
