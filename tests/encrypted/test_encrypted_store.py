"""An encrypted database does all that a plain one does, and its bytes say nothing."""

import asyncio
import random
import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest
import sqlite_utils

from bot.database import backups, wiping
from core.facts import Noticed, SetDone
from core.store import copies, erasure, facts, keys, people
from core.store.connection import Store, cannot_write, connect
from core.store.keys import Key
from tests.bot.terminal.practice import CLIENT
from tests.encrypted.conftest import DIGITS
from tests.encrypted.pages import PAGE, decrypted

NOW = datetime(2026, 2, 2, 12, 0, tzinfo=UTC)
MARK = "Zmarkerq"

pytestmark = pytest.mark.usefixtures("key")


def all_bytes(folder: Path) -> bytes:
    return b"".join(file.read_bytes() for file in sorted(folder.rglob("*")) if file.is_file())


def note(store: Store, text: str) -> None:
    client = people.by_chat(store, CLIENT)
    assert client is not None
    facts.put(store, client.id, Noticed(NOW, "note", text), NOW)


def test_nothing_that_is_stored_can_be_read_in_file_log_or_backup(db: Path, tmp_path: Path) -> None:
    store = Store(db)
    note(store, MARK)
    backups.write(db, tmp_path / "kept.db")
    on_disk = all_bytes(tmp_path)
    assert (tmp_path / "cuffline.db-wal").stat().st_size > 0
    assert MARK.encode() not in on_disk
    assert b"SQLite format 3" not in on_disk
    assert b"Ruta" not in on_disk
    store.close()


def test_it_is_as_durable_and_as_forgetful_as_a_plain_one(db: Path) -> None:
    store = Store(db)
    found = {
        name: store.connection.execute(f"PRAGMA {name}").fetchone()[0]
        for name in ("journal_mode", "synchronous", "foreign_keys", "secure_delete", "busy_timeout")
    }
    assert found == {
        "journal_mode": "wal",
        "synchronous": 2,
        "foreign_keys": 1,
        "secure_delete": 1,
        "busy_timeout": 5000,
    }
    options = {row[0] for row in store.rows("PRAGMA compile_options")}
    assert "TEMP_STORE=2" in options, "a sort or a VACUUM would write plain rows to a temporary file"
    store.close()


def test_what_was_committed_is_there_after_a_kill(db: Path, tmp_path: Path) -> None:
    store = Store(db)
    note(store, MARK)
    crashed = tmp_path / "crashed"
    crashed.mkdir()
    for path in tmp_path.glob("cuffline.db*"):
        shutil.copy(path, crashed / path.name)
    store.close()
    again = Store(crashed / "cuffline.db")
    assert [row["said"] for row in again.rows("SELECT said FROM noticed")] == [MARK]
    again.close()


def test_sqlite_utils_reads_and_writes_it(db: Path) -> None:
    store = Store(db)
    assert isinstance(store.utils, sqlite_utils.Database)
    store.utils["extra"].insert({"id": 1, "said": MARK}, pk="id")
    assert list(store.utils.query("SELECT said FROM extra")) == [{"said": MARK}]
    with pytest.raises(sqlite3.OperationalError):
        store.utils.execute("SELECT * FROM nowhere")
    store.close()


def test_its_errors_are_those_that_everybody_catches(db: Path) -> None:
    store, other = Store(db), connect(str(db))
    with pytest.raises(sqlite3.IntegrityError):
        store.execute("INSERT INTO planned (person) VALUES (99)")
    other.execute("PRAGMA busy_timeout = 0")
    with store.transaction(), pytest.raises(sqlite3.OperationalError) as busy:
        other.execute("BEGIN IMMEDIATE")
    assert busy.value.sqlite_errorcode == sqlite3.SQLITE_BUSY
    other.close()
    store.execute(f"PRAGMA max_page_count = {store.rows('PRAGMA page_count')[0][0]}")
    with pytest.raises(sqlite3.OperationalError) as full, store.transaction():
        note(store, "x" * PAGE * 4)
    assert full.value.sqlite_errorcode == sqlite3.SQLITE_FULL
    assert cannot_write(full.value)
    store.close()


def test_an_error_while_rows_are_read_is_one_of_them_too(db: Path) -> None:
    with closing(connect(str(db))) as database:
        rows = database.execute("SELECT 1 UNION ALL SELECT abs(-9223372036854775808)")
        with pytest.raises(sqlite3.Error):
            list(rows)


@pytest.mark.parametrize("seed", range(8))
def test_a_changed_bit_anywhere_is_noticed(db: Path, seed: int) -> None:
    content = bytearray(db.read_bytes())
    dice = random.Random(seed)
    content[dice.randrange(len(content))] ^= 1 << dice.randrange(8)
    db.write_bytes(content)
    assert copies.damage(db) != []


def test_a_whole_one_is_not_called_damaged(db: Path) -> None:
    assert copies.damage(db) == []
    assert copies.damage(db, quick=True) == []


def test_two_copies_are_compared_under_the_key(db: Path, tmp_path: Path) -> None:
    backups.write(db, tmp_path / "kept.db")
    assert copies.changed(tmp_path / "kept.db", db) == []
    store = Store(db)
    store.execute("UPDATE set_done SET reps = reps + 1 WHERE set_no = 1")
    store.close()
    assert copies.changed(tmp_path / "kept.db", db) != []


def test_a_snapshot_of_an_open_store_has_the_key_too(db: Path, tmp_path: Path) -> None:
    store = Store(db)
    store.snapshot(tmp_path / "copy.db")
    store.close()
    copied = Store(tmp_path / "copy.db")
    assert len(facts.current(copied, SetDone, 2)) == 3
    copied.close()
    assert b"Ruta" not in (tmp_path / "copy.db").read_bytes()


def test_another_key_opens_nothing_and_changes_nothing(db: Path) -> None:
    before = db.read_bytes()
    for other in (Key("f" * 64), None):
        with keys.using(other), pytest.raises(sqlite3.DatabaseError):
            Store(db)
    assert db.read_bytes() == before


@pytest.mark.skipif(not shutil.which("openssl"), reason="no openssl to decrypt single pages with")
def test_after_an_erasure_no_byte_of_it_is_left_in_any_decrypted_page(db: Path) -> None:
    store = Store(db)
    note(store, MARK)
    assert erasure.compact(store)
    assert MARK.encode() in decrypted(db, DIGITS), "the control: pages can be decrypted"
    client = people.by_chat(store, CLIENT)
    assert client is not None
    with store.transaction():
        erasure.erase(store, client.id)
    store.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    asyncio.run(wiping.wipe(store))
    assert MARK.encode() not in decrypted(db, DIGITS)
    assert [file.name for file in db.parent.iterdir() if "wiped" in file.name] == []
    store.close()


def test_a_file_that_was_wiped_is_encrypted_and_has_what_was_written_meanwhile(
    db: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store, rewrite = Store(db), copies.rewrite

    def and_look(reading: sqlite3.Connection, target: Path) -> None:
        rewrite(reading, target)
        assert b"SQLite format 3" not in target.read_bytes()
        assert b"Ruta" not in target.read_bytes()

    async def wiped() -> None:
        task = asyncio.ensure_future(wiping.wipe(store))
        await asyncio.sleep(0)
        note(store, MARK)
        await task

    monkeypatch.setattr(copies, "rewrite", and_look)
    asyncio.run(wiped())
    assert [row["said"] for row in store.rows("SELECT said FROM noticed")] == [MARK]
    assert len(facts.current(store, SetDone, 2)) == 3
    store.close()
    assert copies.damage(db) == []
    assert b"SQLite format 3" not in db.read_bytes()
