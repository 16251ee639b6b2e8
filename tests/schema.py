"""Today's schema for new stores, copied instead of migrated."""

import sqlite3

from sqlite_utils import Database

from core.store import connection
from core.store.migrations import migrations


class FromTemplate:
    """A new store gets today's schema as a copy: the migrations take 47 ms, and thousands of tests make one.

    Encrypted ones, and whatever holds tables already, are migrated as ever. So are the stores of real processes.
    """

    def __init__(self) -> None:
        self.template: sqlite3.Connection | None = None

    def apply(self, database: Database) -> None:
        """As the real one."""
        empty = database.execute("SELECT 1 FROM sqlite_master").fetchone() is None
        if not empty or not isinstance(database.conn, sqlite3.Connection):
            migrations.apply(database)
            return
        if self.template is None:
            self.template = sqlite3.connect(":memory:", check_same_thread=False)
            migrations.apply(Database(self.template))
        database.conn.execute("COMMIT")  # SQLite copies into no open transaction
        self.template.backup(database.conn)
        database.conn.execute("BEGIN")


def copied() -> None:
    """From now on new stores of this process copy it."""
    connection.migrations = FromTemplate()  # type: ignore[assignment]  # it needs no more of it than `apply`
