"""Properties draw the same examples on every run, so that green stays green; sweeps draw new ones.

`HYPOTHESIS_PROFILE=sweep bash deploy/test.sh` draws afresh and more; what it finds becomes a test of its own.
"""

import os
import sqlite3

import pytest
from hypothesis import settings
from sqlite_utils import Database

from core.store import connection
from core.store.migrations import migrations
from tests import played

settings.register_profile("same", max_examples=60, derandomize=True, deadline=None)
settings.register_profile("sweep", max_examples=1000, deadline=None)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))


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
        self.template.backup(database.conn)


connection.migrations = FromTemplate()  # type: ignore[assignment]  # it needs no more of it than `apply`


def pytest_runtest_setup(item: pytest.Item) -> None:
    """What a test puts in the code's place must meet the opening, too."""
    played.patched = "monkeypatch" in getattr(item, "fixturenames", ())
