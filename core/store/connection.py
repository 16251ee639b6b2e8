"""Opening the file and owning its transactions. Every file of a practice is opened by `connect`, with the key or plain.

WAL with `synchronous=FULL`: a confirmed commit survives a power cut. One connection writes, because SQLite
libraries before 3.51.3 can corrupt a WAL that is reset while another connection writes. Anything slow
(backup, charts, terminal commands) reads a snapshot file instead.
"""

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import sqlite_utils

from core.store import keys
from core.store.migrations import migrations

# What keeps a database from being written, whatever is written: no bug of ours, and tried again later.
UNWRITABLE = {
    *(sqlite3.SQLITE_FULL, sqlite3.SQLITE_IOERR, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN),
    *(sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED),
}

STATEMENTS = 512  # prepared ones that are kept: more than there are on the way of an update


def cannot_write(problem: BaseException) -> bool:
    """Whether the disk (or another program) is in the way, rather than a mistake in a statement."""
    code = getattr(problem, "sqlite_errorcode", None)
    return isinstance(code, int) and code & 0xFF in UNWRITABLE


def is_busy(problem: BaseException) -> bool:
    """Whether somebody else has the file open, which passes by itself."""
    code = getattr(problem, "sqlite_errorcode", None)
    return isinstance(code, int) and code & 0xFF == sqlite3.SQLITE_BUSY


def connect(place: str, *, uri: bool = False) -> sqlite3.Connection:
    """A connection in autocommit, encrypted where a key is in force. Raises sqlite3.Error."""
    key = keys.held()
    if key is None or place == ":memory:":
        return sqlite3.connect(place, uri=uri, isolation_level=None, cached_statements=STATEMENTS)
    from core.store import cipher  # only where the optional library is needed

    return cipher.connect(place, key, uri=uri, isolation_level=None)


class Store:
    """An open database. Not shared between threads; no `await` inside a transaction."""

    def __init__(self, path: str | Path, *, synchronous: str = "FULL") -> None:
        """Open `path` (":memory:" for tests) and bring it up to date. Raises sqlite3.Error."""
        self.path = str(path)
        self.synchronous = synchronous
        self.ahead: dict[Any, dict[int, list[Any]]] = {}  # by kind and person: `core.store.ahead`
        self._open()
        with (
            self.utils.atomic()
        ):  # all steps or none: between two of them no version of the program could go on
            migrations.apply(self.utils)

    def _open(self) -> None:
        self.connection = connect(self.path)
        self.connection.row_factory = getattr(self.connection, "Row", sqlite3.Row)
        self.connection.execute("PRAGMA journal_mode = WAL")
        self.connection.execute(f"PRAGMA synchronous = {self.synchronous}")
        self.connection.execute("PRAGMA foreign_keys = ON")
        self.connection.execute("PRAGMA secure_delete = ON")  # what is deleted is overwritten with zeros
        self.connection.execute("PRAGMA busy_timeout = 5000")
        self.utils = sqlite_utils.Database(self.connection)

    def execute(self, sql: str, values: Sequence[Any] = ()) -> sqlite3.Cursor:
        """Run one statement on the writer connection."""
        return self.connection.execute(sql, values)

    def rows(self, sql: str, values: Sequence[Any] = ()) -> list[sqlite3.Row]:
        """All rows of a query."""
        return self.connection.execute(sql, values).fetchall()

    def row(self, sql: str, values: Sequence[Any] = ()) -> sqlite3.Row | None:
        """The first row of a query, or None."""
        found: sqlite3.Row | None = self.connection.execute(sql, values).fetchone()
        return found

    def added(self, sql: str, values: Sequence[Any] = ()) -> int:
        """Run an INSERT and return the new row's id."""
        row_id = self.connection.execute(sql, values).lastrowid
        assert row_id is not None, "an INSERT always has a row id"
        return row_id

    @contextmanager
    def transaction(self) -> Iterator[None]:
        """All or nothing. IMMEDIATE: a lock that cannot be had fails here, not at the commit."""
        self.connection.execute("BEGIN IMMEDIATE")
        try:
            yield
            self.connection.execute("COMMIT")  # inside: a commit that fails leaves the transaction open
        except BaseException:
            if self.connection.in_transaction:
                self.connection.execute("ROLLBACK")
            raise

    @contextmanager
    def savepoint(self) -> Iterator[None]:
        """One event inside a transaction: an exception undoes this event only, and goes on up."""
        self.connection.execute("SAVEPOINT event")
        try:
            yield
        except BaseException:
            if self.connection.in_transaction:
                self.connection.execute("ROLLBACK TO event")
                self.connection.execute("RELEASE event")
            raise
        self.connection.execute("RELEASE event")

    def snapshot(self, path: str | Path) -> None:
        """Copy the database as it is now to `path`, by SQLite's online backup."""
        target = connect(str(path))
        try:
            self.connection.backup(target)
        finally:
            target.close()

    @contextmanager
    def exchanging(self) -> Iterator[None]:
        """Inside, another file of the same schema may take this one's place by a rename; then that one is open.

        First the log goes into the file and away: it would be taken for the other file's. Whoever opens the old file
        at that moment waits, and reads it to its end. Raises sqlite3.OperationalError when somebody has it open.
        """
        self.execute("PRAGMA busy_timeout = 0")
        try:
            self.execute("PRAGMA journal_mode = DELETE")
            self.execute("BEGIN EXCLUSIVE")
            yield
        finally:
            self.connection.close()
            self._open()

    def close(self) -> None:
        """Close the connection."""
        self.connection.close()
