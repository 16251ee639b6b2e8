"""Every older schema opens, whole, and an upgrade that is killed or finds the disk full leaves the old one or the new one."""

import os
import signal
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
import sqlite_utils

from core.store import connection, copies
from core.store.connection import Store
from core.store.migrations import migrations

STEPS = [step.name for step in migrations.pending(sqlite_utils.Database(memory=True))]
VALUES = {"INTEGER": 1, "TEXT": "1", "REAL": 1.0, "BLOB": b"1", "ANY": 1}


@pytest.fixture
def folder() -> Iterator[Path]:
    """In memory where that can be: no power is cut here, and each opening would flush a dozen times."""
    memory = "/dev/shm" if Path("/dev/shm").is_dir() else None
    with tempfile.TemporaryDirectory(dir=memory) as name:
        yield Path(name)


def older(file: Path, before: str) -> dict[str, int]:
    """A database as it was before this step, with one row in every table; how many rows each has."""
    with closing(sqlite3.connect(file, isolation_level=None)) as database:
        migrations.apply(sqlite_utils.Database(database), stop_before=before)
        for name in tables(database):
            columns = database.execute(f"PRAGMA table_info({name})").fetchall()
            marks = ", ".join("?" for _ in columns)
            database.execute(
                f"INSERT INTO {name} VALUES ({marks})", [VALUES[column[2]] for column in columns]
            )
        return counts(database)


def tables(database: sqlite3.Connection) -> list[str]:
    ours = "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '\\_%' ESCAPE '\\'"
    return [row[0] for row in database.execute(ours + " AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")]


def counts(database: sqlite3.Connection) -> dict[str, int]:
    return {name: database.execute(f"SELECT count(*) FROM {name}").fetchone()[0] for name in tables(database)}


def schema(file: Path) -> set[tuple[str, str]]:
    with closing(copies.reading(file)) as database:
        return {
            (name, sql)
            for name, sql in database.execute("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL")
        }


@pytest.mark.parametrize("step", STEPS[1:])
def test_a_database_from_before_any_step_becomes_todays_with_every_row(folder: Path, step: str) -> None:
    before = older(folder / "old.db", step)
    Store(folder / "old.db").close()
    Store(folder / "new.db").close()
    assert {name for name, _ in schema(folder / "old.db")} == {name for name, _ in schema(folder / "new.db")}
    assert copies.applied(folder / "old.db") == STEPS
    with closing(copies.reading(folder / "old.db")) as database:
        after = counts(database)
    assert {name: after[name] for name in before} == before


def opened_and_killed(file: Path, number: int) -> bool:
    """Open it in a process of its own that is killed at its n-th statement. False: it ended before that."""
    child = os.fork()
    if child == 0:

        class Doomed(sqlite3.Connection):
            said = 0

            def execute(self, *values: Any) -> sqlite3.Cursor:
                self.said += 1
                if self.said == number:
                    os.kill(os.getpid(), signal.SIGKILL)
                return super().execute(*values)

        connection.connect = lambda place: sqlite3.connect(place, isolation_level=None, factory=Doomed)  # type: ignore[assignment,misc]
        try:
            Store(file)
        finally:
            os._exit(0)
    return os.WIFSIGNALED(os.waitpid(child, 0)[1])


def test_killed_at_any_statement_it_is_the_old_schema_or_todays_and_the_next_start_ends_it(
    folder: Path,
) -> None:
    file, number, seen = folder / "old.db", 1, set()
    older(file, STEPS[4])
    old = file.read_bytes()
    while opened_and_killed(file, number):
        steps = copies.applied(file)
        assert steps in (STEPS[:4], STEPS), "between two steps neither version could go on"
        assert copies.damage(file, quick=True) == []
        seen.add(len(steps))
        Store(file).close()
        assert copies.applied(file) == STEPS
        for path in folder.glob("old.db*"):
            path.unlink()
        file.write_bytes(old)
        number += 13
    assert number > 50
    assert 4 in seen


def test_an_upgrade_that_finds_the_disk_full_leaves_what_the_earlier_version_can_open(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The roll-back page says so: if the new version never started, nothing has to be restored."""

    def full(db: object) -> None:
        raise sqlite3.OperationalError("database or disk is full")

    older(folder / "old.db", STEPS[4])
    last = migrations.pending(sqlite_utils.Database(memory=True))[-1]
    with monkeypatch.context() as patched:
        patched.setattr(last, "fn", full)
        with pytest.raises(sqlite3.OperationalError):
            Store(folder / "old.db")
    assert copies.applied(folder / "old.db") == STEPS[:4]
