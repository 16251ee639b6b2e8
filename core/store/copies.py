"""Database files as files: copied while in use, looked over, never changed.

A connection made here cannot write, so it cannot meet the bug of SQLite libraries before 3.51.3 that takes two
connections that write or tidy up at the same moment.
"""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from functools import partial
from pathlib import Path
from typing import get_args

import sqlite_utils

from core.facts import Fact
from core.store import keys
from core.store.connection import connect
from core.store.facts import table_of
from core.store.migrations import migrations

PAGES = 1_000  # a step of a copy, 4 MB at the usual page size; own choice
MOST_FINDINGS = 5  # shown; own choice
NOT_ERASED = (
    "old.person IN (SELECT id FROM live.person)"
    " AND old.person NOT IN (SELECT person FROM live.planned WHERE dialogue = 'erase')"
)

# What never changes in tables whose other columns do; first the time at which a row was made.
FIXED = {
    "alert": ("raised_at", "person", "said", "told"),
    "inbox": ("received_at", "body"),
    "invitation": ("made_at", "hash", "coach", "name", "expires_at"),
    "outbox": ("created_at", "person", "chat", "kind", "body", "thread", "question"),
    "person": ("created_at", "chat"),
    "planned": ("made_at", "person", "dialogue", "about"),
    "thread": ("begun_at", "person", "dialogue", "brief"),
}
# Taken back and planned again, often word for word under the same number: with every session, change of days or plan.
AGAIN = ("planned",)
UNREADABLE = (sqlite3.DatabaseError, UnicodeDecodeError)  # SQLite's own message may hold the damaged name

Progress = Callable[[int, int], None]  # pages done, pages in all


def reading(path: Path) -> sqlite3.Connection:
    """A connection that cannot write. Raises sqlite3.Error."""
    made = connect(to_read(path), uri=True)
    made.text_factory = partial(str, encoding="utf-8", errors="replace")  # damaged text need not be text
    return made


def to_read(path: Path) -> str:
    """The address of a file that is opened without the right to write."""
    return f"{path.resolve().as_uri()}?mode=ro"


def copy(
    source: Path, target: Path, tell: Progress = lambda done, total: None, *, lasting: bool = True
) -> None:
    """Copy `source` as it is at this moment to the new file `target`, by SQLite's online backup.

    The copy is one file without a log beside it. One that is not `lasting`, read and thrown away, is left to the
    system to write: forced to the disk, it would hold up every commit of the bot beside it. Raises sqlite3.Error.
    """
    with closing(reading(source)) as old, closing(connect(str(target))) as new:
        if not lasting:
            new.execute("PRAGMA synchronous = OFF")
        old.execute("BEGIN")  # holds this moment, so that a busy bot cannot make the copy begin again
        old.execute("SELECT count(*) FROM sqlite_schema").fetchone()
        old.backup(new, pages=PAGES, progress=lambda _, left, total: tell(total - left, total))
        new.execute("PRAGMA journal_mode = DELETE")


def rewrite(database: sqlite3.Connection, target: Path) -> None:
    """Write what stands in it, as it is at this moment, into the empty file `target`, without what was deleted.

    Others go on reading and writing. Raises sqlite3.Error.
    """
    database.execute("VACUUM INTO ?", [str(target)])


def tidy(path: Path) -> bool:
    """Put what stands in the log into the file itself. False: somebody has it open. Raises sqlite3.Error."""
    with closing(connect(str(path))) as database:
        busy: int = database.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()[0]
        return not busy


def damage(path: Path, quick: bool = False) -> list[str]:
    """What SQLite itself finds wrong, [] when nothing. `quick` leaves out indexes and references."""
    try:
        with closing(reading(path)) as database:
            return [*_pages(database, quick), *(() if quick else _dangling(database))]
    except UNREADABLE as problem:
        return [str(problem)]


def _pages(database: sqlite3.Connection, quick: bool) -> list[str]:
    check = "quick_check" if quick else "integrity_check"
    found = [row[0] for row in database.execute(f"PRAGMA {check}({MOST_FINDINGS})") if row[0] != "ok"]
    lines = [line for text in found for line in text.splitlines() if not line.startswith("***")]
    return lines if quick else [*lines, *_forged(database)]


def _forged(database: sqlite3.Connection) -> list[str]:
    """Pages that are not what was encrypted; a plain file has no code to hold a page to and finds none."""
    return [row[0] for row in database.execute("PRAGMA cipher_integrity_check").fetchmany(MOST_FINDINGS)]


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
    """Rows that say another thing in `live` than in the older copy `kept`, although they never change.

    SQLite does not notice a damaged value; two copies do. Facts of people who had their records erased may be gone,
    and so may old letters. Copies of different schemas are not compared: a step may have changed rows. Raises
    sqlite3.Error.
    """
    if applied(kept) != applied(live):
        return []
    with closing(reading(kept)) as database:
        attach(database, live)
        found = [line for kind in get_args(Fact) for line in _changed_facts(database, table_of(kind))]
        found += [
            line for table, columns in FIXED.items() for line in _changed_columns(database, table, columns)
        ]
        return found[:MOST_FINDINGS]


def attach(database: sqlite3.Connection, live: Path) -> None:
    """Put another file of the same key beside this one, as "live", to read only. Raises sqlite3.Error."""
    key = keys.held()
    if key is None:
        database.execute("ATTACH ? AS live", [to_read(live)])
    else:
        database.execute("ATTACH ? AS live KEY ?", [to_read(live), key.raw])


def _changed_facts(database: sqlite3.Connection, table: str) -> list[str]:
    columns = [row[1] for row in database.execute(f"PRAGMA main.table_info({table})")]
    others = _any("old.{0} IS NOT new.{0}", [name for name in columns if name != "noted_at"])
    gone = f"new.id IS NULL AND {NOT_ERASED}"
    return _found(
        database, table, f"({gone}) OR (new.id IS NOT NULL AND {_differs(table, 'noted_at', others)})"
    )


def _changed_columns(database: sqlite3.Connection, table: str, columns: tuple[str, ...]) -> list[str]:
    """Such a column may become NULL, and its row may go; it never says another thing."""
    made, *rest = columns
    return _found(database, table, _differs(table, made, _any("old.{0} <> new.{0}", rest)))


def _any(differ: str, columns: list[str]) -> str:
    return "coalesce(" + " OR ".join(differ.format(f'"{name}"') for name in columns) + ", 0)"


def _differs(table: str, made: str, others: str) -> str:
    """A row's number may be used again: then it is newer than the copy, and but for `AGAIN` in more than its time."""
    used_again = f"new.{made} > (SELECT max({made}) FROM main.{table})"
    if table not in AGAIN:
        used_again += f" AND {others}"
    return f"((old.{made} <> new.{made} OR {others}) AND NOT ({used_again}))"


def _found(database: sqlite3.Connection, table: str, where: str) -> list[str]:
    rows = database.execute(
        f"SELECT old.rowid FROM main.{table} AS old LEFT JOIN live.{table} AS new ON new.rowid = old.rowid"
        f" WHERE {where} ORDER BY old.rowid LIMIT {MOST_FINDINGS}"
    )
    return [f"{table} row {row} is not what it was in the last backup" for (row,) in rows]


def setting(path: Path, name: str) -> str | None:
    """A stored value of the program itself. Raises sqlite3.Error."""
    with closing(reading(path)) as database:
        row = database.execute("SELECT value FROM setting WHERE name = ?", [name]).fetchone()
        return None if row is None else row[0]


def zones(path: Path) -> list[str]:
    """The zones that people live in. Raises sqlite3.Error."""
    with closing(reading(path)) as database:
        return [row[0] for row in database.execute("SELECT DISTINCT zone FROM person ORDER BY zone")]


def coaches(path: Path) -> set[int]:
    """The numbers of the coaches in this file. Raises sqlite3.Error."""
    with closing(reading(path)) as database:
        return {row[0] for row in database.execute("SELECT chat FROM person WHERE role = 'coach'")}
