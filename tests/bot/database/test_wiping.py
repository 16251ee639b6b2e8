"""What was erased goes from the file, which is as it was otherwise; what stops that, and what is then left."""

import errno
import os
import shutil
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace

import pytest

from bot.database import wiping
from core.store import copies, erasure, settings
from core.store.connection import Store
from tests.bot.database.wiping_room import MARK, bytes_of, db_of, made, rows_of, wipe


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = made(tmp_path)
    yield opened
    opened.close()


def test_overwritten_rows_leave_copies_in_the_file_that_only_the_wiping_takes_away(store: Store) -> None:
    with store.transaction():
        erasure.erase(store, 2)
    store.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    assert MARK.encode() in db_of(store).read_bytes(), "the control: overwriting rows is not enough"
    before = rows_of(store)
    wipe(store)
    assert MARK.encode() not in bytes_of(db_of(store))
    assert rows_of(store) == before
    assert store.rows("PRAGMA foreign_key_check") == []
    assert copies.damage(db_of(store)) == []


def test_the_file_is_as_durable_and_as_private_as_before(store: Store) -> None:
    db_of(store).chmod(0o640)
    wipe(store)
    assert db_of(store).stat().st_mode & 0o777 == 0o640
    names = ("journal_mode", "synchronous", "foreign_keys", "secure_delete", "busy_timeout")
    found = [store.rows(f"PRAGMA {name}")[0][0] for name in names]
    assert found == ["wal", 0, 1, 1, 5000]
    assert sorted(file.name for file in db_of(store).parent.iterdir() if "wiped" in file.name) == []


def test_a_database_behind_a_link_stays_behind_it(tmp_path: Path, store: Store) -> None:
    link = tmp_path / "link.db"
    link.symlink_to(store.path)
    other = Store(link, synchronous="OFF")
    store.close()
    wipe(other)
    assert link.is_symlink()
    assert len(rows_of(other)["person"]) == 5
    other.close()
    store.connection = Store(":memory:").connection


# --- what stops it ---
def test_a_file_that_somebody_reads_stays_and_all_is_as_it_was(store: Store) -> None:
    before = rows_of(store)
    other = copies.reading(db_of(store))
    other.execute("SELECT * FROM person").fetchone()
    with pytest.raises(Exception, match="locked"):
        wipe(store)
    assert rows_of(store) == before
    settings.put(store, "still", "open")
    assert [tuple(row) for row in other.execute("SELECT value FROM setting WHERE name = 'still'")] == [
        ("open",)
    ]
    other.close()
    wipe(store)
    assert settings.get(store, "still") == "open"


@pytest.mark.parametrize(("times", "fits"), [(wiping.ROOM, True), (wiping.ROOM - 0.01, False)])
def test_a_disk_is_not_filled_by_it(
    store: Store, monkeypatch: pytest.MonkeyPatch, times: float, fits: bool
) -> None:
    free = times * db_of(store).stat().st_size
    monkeypatch.setattr(shutil, "disk_usage", lambda _: SimpleNamespace(free=free))
    if fits:
        wipe(store)
        return
    with pytest.raises(OSError, match=os.strerror(errno.ENOSPC)):
        wipe(store)
    assert not wiping.beside(db_of(store)).exists()
