"""Properties draw the same examples on every run, so that green stays green; sweeps draw new ones.

`HYPOTHESIS_PROFILE=sweep bash deploy/test.sh` draws afresh and more; what it finds becomes a test of its own.
"""

import os
import sqlite3

from hypothesis import settings
from sqlite_utils import Database

from core.store import connection
from core.store.migrations import migrations

settings.register_profile("same", max_examples=60, derandomize=True, deadline=None)
settings.register_profile("sweep", max_examples=1000, deadline=None)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))


class FromTemplate:
    """A new store in memory gets today's schema as a copy: the migrations take 47 ms, and thousands of tests make one.

    Files, and whatever holds tables already, are migrated as ever.
    """

    def __init__(self) -> None:
        self.template: sqlite3.Connection | None = None

    def apply(self, database: Database) -> None:
        """As the real one."""
        place = database.execute("SELECT file FROM pragma_database_list WHERE name = 'main'").fetchone()[0]
        if place or database.execute("SELECT 1 FROM sqlite_master").fetchone():
            migrations.apply(database)
            return
        if self.template is None:
            self.template = sqlite3.connect(":memory:", check_same_thread=False)
            migrations.apply(Database(self.template))
        self.template.backup(database.conn)


connection.migrations = FromTemplate()  # type: ignore[assignment]  # it needs no more of it than `apply`
