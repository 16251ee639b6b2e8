"""From a plain file to an encrypted one and back, and whether both say the same."""

import hashlib
import sqlite3
from contextlib import closing
from pathlib import Path

from core.store.copies import reading, to_read
from core.store.keys import Key

MAGIC = b"SQLite format 3\x00"  # how a plain file begins: https://www.sqlite.org/fileformat.html, 1.3.1


def is_plain(path: Path) -> bool:
    """Whether the file begins as one of SQLite's own does. Never while this process has it open. Raises OSError."""
    with path.open("rb") as content:
        return content.read(len(MAGIC)) == MAGIC


def contents(path: Path) -> dict[str, tuple[int, str]]:
    """How many rows each table has, and a SHA-256 of them in their order; of the schema too. Raises sqlite3.Error."""
    with closing(reading(path)) as database:
        database.execute("BEGIN")
        kept = "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name"
        names = ["sqlite_schema", *(row[0] for row in database.execute(kept))]
        return {name: _content(database, name) for name in names}


def _content(database: sqlite3.Connection, table: str) -> tuple[int, str]:
    # Pages have other numbers elsewhere.
    what = "type, name, tbl_name, sql" if table == "sqlite_schema" else "*"
    order = "type, name" if table == "sqlite_schema" else "rowid"
    count, digest = 0, hashlib.sha256()
    for row in database.execute(f'SELECT {what} FROM "{table}" ORDER BY {order}'):
        digest.update(repr(tuple(row)).encode())
        count += 1
    return count, digest.hexdigest()


def convert(source: Path, old: Key | None, target: Path, new: Key | None) -> None:
    """Write what stands in `source`, of one key or plain, to the new file `target`, of another key or plain.

    Raises sqlite3.Error.
    """
    from core.store import cipher  # only where the optional library is needed

    cipher.convert(to_read(source), old, str(target), new)
