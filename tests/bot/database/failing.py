"""A connection to a disk that is full at one chosen moment."""

import sqlite3
from typing import Any

WRITES = ("INSERT", "UPDATE", "DELETE", "COMMIT")


def full() -> sqlite3.OperationalError:
    """As SQLite says it."""
    problem = sqlite3.OperationalError("database or disk is full")
    problem.sqlite_errorcode = sqlite3.SQLITE_FULL
    return problem


class FullAt:
    """Passes everything on; the `at`-th write fails, and with it, as SQLite does it, the whole transaction."""

    def __init__(self, real: sqlite3.Connection, at: int) -> None:
        self.real = real
        self.at = at
        self.writes = 0

    def execute(self, sql: str, values: Any = ()) -> sqlite3.Cursor:
        """One statement."""
        if sql.startswith(WRITES):
            self.writes += 1
            if self.writes == self.at:
                if self.real.in_transaction:
                    self.real.execute("ROLLBACK")
                raise full()
        return self.real.execute(sql, values)

    def __getattr__(self, name: str) -> Any:
        return getattr(self.real, name)
