"""SQLCipher behind the face of `sqlite3`: encrypted pages and log, the same calls, the same errors.

Imported only where there is a key: the library comes with `pip install cuffline[encrypted]`. Its errors are classes
of its own, so each is raised again as the one of `sqlite3` that everybody here and in sqlite-utils catches.
"""

import sqlite3
from collections.abc import Callable
from functools import wraps
from typing import Any, cast

from sqlcipher3 import dbapi2

from core.store.keys import Key

Method = Callable[..., Any]


def connect(place: str, key: Key | None, **more: Any) -> sqlite3.Connection:
    """A connection to a file of this key (None: a plain file). Raises sqlite3.Error."""
    made = _retold(dbapi2.connect)(place, factory=Connection, **more)
    made.execute("PRAGMA cipher_log_level = NONE")  # else it writes to standard error by itself
    if key is not None:
        made.set_key(key.raw)  # no statement: it cannot turn up in a trace
    return cast(sqlite3.Connection, made)


def _retold(method: Method) -> Method:
    """The same call; what it raises is an error of `sqlite3` with the same words and number."""

    @wraps(method)
    def call(*values: Any, **more: Any) -> Any:
        try:
            return method(*values, **more)
        except dbapi2.Error as problem:
            raise _told(problem) from None

    return call


def _told(problem: Exception) -> sqlite3.Error:
    kind: type[sqlite3.Error] = getattr(sqlite3, type(problem).__name__, sqlite3.Error)
    told = kind(*problem.args)
    for name in ("sqlite_errorcode", "sqlite_errorname"):
        if hasattr(problem, name):
            setattr(told, name, getattr(problem, name))
    return told


class Cursor(dbapi2.Cursor):  # type: ignore[misc]  # the library ships no types
    """A cursor with the errors of `sqlite3`."""

    execute = _retold(dbapi2.Cursor.execute)
    executemany = _retold(dbapi2.Cursor.executemany)
    executescript = _retold(dbapi2.Cursor.executescript)
    fetchone = _retold(dbapi2.Cursor.fetchone)
    fetchmany = _retold(dbapi2.Cursor.fetchmany)
    fetchall = _retold(dbapi2.Cursor.fetchall)
    __next__ = _retold(dbapi2.Cursor.__next__)


class Connection(dbapi2.Connection):  # type: ignore[misc]  # the library ships no types
    """A connection with the errors of `sqlite3`."""

    Row = dbapi2.Row

    def cursor(self, factory: type[Cursor] = Cursor) -> Cursor:
        """A cursor of ours."""
        return cast(Cursor, super().cursor(factory))

    def execute(self, *values: Any) -> Cursor:
        """One statement, by a cursor of ours."""
        return cast(Cursor, self.cursor().execute(*values))

    def executemany(self, *values: Any) -> Cursor:
        """One statement for many rows, by a cursor of ours."""
        return cast(Cursor, self.cursor().executemany(*values))

    def executescript(self, *values: Any) -> Cursor:
        """Several statements, by a cursor of ours."""
        return cast(Cursor, self.cursor().executescript(*values))

    set_key = _retold(dbapi2.Connection.set_key)
    backup = _retold(dbapi2.Connection.backup)
    commit = _retold(dbapi2.Connection.commit)
    rollback = _retold(dbapi2.Connection.rollback)
    close = _retold(dbapi2.Connection.close)
    __exit__ = _retold(dbapi2.Connection.__exit__)


def convert(source: str, old: Key | None, target: str, new: Key | None) -> None:
    """Write what stands in `source` (an address that SQLite understands) into the new file `target`.

    Rows and schema are the same, the pages are written afresh. Raises sqlite3.Error.
    """
    database = connect(target, new, uri=True, isolation_level=None)
    try:
        database.execute("ATTACH ? AS source KEY ?", [source, old.raw if old else ""])
        database.execute("SELECT sqlcipher_export('main', 'source')")
    finally:
        database.close()
