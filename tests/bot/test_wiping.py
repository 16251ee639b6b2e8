"""What was erased goes from the file while everybody goes on, and a kill at any moment costs nothing."""

import asyncio
import errno
import os
import random
import shutil
import threading
from collections import Counter
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from types import SimpleNamespace

import pytest

from bot import watchdog
from bot.database import held, wiping
from bot.watchdog import Pulse
from core.facts import Noticed
from core.store import changes, copies, erasure, facts, people, settings, tables
from core.store.connection import Store
from core.store.people import Role
from tests.practice import CLIENT, Practice

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
MARK = "Zmarkerq"
CAP_S = 10

Rows = dict[str, Counter[tuple[object, ...]]]


def rows_of(store: Store) -> Rows:
    """Every row of every table."""
    names = [*tables.names(store), "button"]
    return {name: Counter(tuple(row) for row in store.rows(f"SELECT * FROM {name}")) for name in names}


def bytes_of(db: Path) -> bytes:
    """Of the file, its log and whatever stands beside it under its name."""
    return b"".join(file.read_bytes() for file in db.parent.glob(f"{db.name}*"))


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """A few clients with notes of many lengths, so that rows have moved from page to page."""
    made = Store(tmp_path / "cuffline.db", synchronous="OFF")
    dice = random.Random(1)
    people.add(made, 1001, "Coach", Role.COACH, "UTC", NOW)
    for number in range(4):
        people.add(made, 2001 + number, f"Client {number}", Role.CLIENT, "UTC", NOW, 1)
    with made.transaction():
        for number in range(1500):
            session = f"{dice.randrange(10**6)}-{MARK if number % 4 == 0 else 'other'}"
            made.execute(
                "INSERT INTO session_ended (person, noted_at, at, session, why) VALUES (?, 0, 0, ?, ?)",
                [2 + number % 4, session, "x" * dice.randrange(200)],
            )
    yield made
    made.close()


def db_of(store: Store) -> Path:
    return Path(store.path)


def wipe(store: Store) -> None:
    asyncio.run(wiping.wipe(store))


def during(
    monkeypatch: pytest.MonkeyPatch, act: Callable[[], None], name: str = "_write", times: int = 1
) -> None:
    """Do this in the loop after a part of the wiping: `_write` has written the copy, `_follow` has caught up."""
    before, left = getattr(wiping, name), [act] * times

    async def then(*values: object) -> None:
        await before(*values)
        if left:
            left.pop()()

    monkeypatch.setattr(wiping, name, then)


# --- no trace ---
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


# --- everybody goes on ---
def test_what_is_written_meanwhile_is_in_the_new_file(store: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    def writes() -> None:
        settings.put(store, "one", "1")
        settings.put(store, "one", "2")
        settings.put(store, "gone", "1")
        settings.forget(store, "gone")
        store.execute("UPDATE session_ended SET why = 'changed' WHERE id = 7")
        store.execute("UPDATE session_ended SET id = 9999 WHERE id = 8")
        store.execute("DELETE FROM session_ended WHERE id = 9")
        people.add(store, 3001, "New", Role.CLIENT, "UTC", NOW, 1)
        with pytest.raises(ZeroDivisionError), store.transaction():
            settings.put(store, "undone", str(1 / 0))

    settings.put(store, "gone", "0")
    during(monkeypatch, writes)
    during(monkeypatch, lambda: settings.put(store, "last", "yes"), "_follow")
    seen: list[Rows] = []
    during(monkeypatch, lambda: seen.append(rows_of(store)), "_follow")
    wipe(store)
    assert settings.get(store, "last") == "yes"
    assert rows_of(store) == seen[0]
    assert store.rows("PRAGMA integrity_check")[0][0] == "ok"


def test_two_who_change_places_in_a_unique_index_do_not_stop_it(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    def swap() -> None:
        for chat, person in ((None, 2), (2001, 3), (2002, 2)):
            store.execute("UPDATE person SET chat = ? WHERE id = ?", [chat, person])

    during(monkeypatch, swap)
    wipe(store)
    assert [row["chat"] for row in store.rows("SELECT chat FROM person WHERE id IN (2, 3)")] == [2002, 2001]


@pytest.mark.parametrize("count", [wiping.AT_ONCE, wiping.AT_ONCE + 1])
def test_much_that_changed_is_changed_in_a_thread_before_everybody_waits_for_the_rest(
    store: Store, monkeypatch: pytest.MonkeyPatch, count: int
) -> None:
    where: list[tuple[int, bool]] = []
    before = changes.repeat

    def repeat(db: Path, copy: Path, touched: list[changes.Touched]) -> None:
        where.append((len(touched), threading.current_thread() is threading.main_thread()))
        before(db, copy, touched)

    monkeypatch.setattr(changes, "repeat", repeat)
    during(
        monkeypatch,
        lambda: store.execute("UPDATE session_ended SET why = 'new' WHERE id <= ?", [count]) and None,
    )
    wipe(store)
    if count == wiping.AT_ONCE:
        assert where == [(count, True)]
    else:
        assert where == [(count, False), (0, True)]
    assert store.rows("SELECT count(*) FROM session_ended WHERE why = 'new'")[0][0] == count


def test_who_writes_in_the_middle_of_it_is_answered_and_the_watchdog_is_fed(
    practice: Practice, monkeypatch: pytest.MonkeyPatch
) -> None:
    store, go_on = practice.stage.engine.store, threading.Event()
    begun, fed = asyncio.Event(), asyncio.Event()
    run = wiping.Writing.run

    def slow(writing: wiping.Writing) -> None:
        loop.call_soon_threadsafe(begun.set)
        assert go_on.wait(CAP_S), "the loop did not go on meanwhile"
        run(writing)

    async def talk() -> None:
        nonlocal loop
        loop = asyncio.get_running_loop()
        task = asyncio.ensure_future(wiping.wipe(store))
        await begun.wait()
        facts.put(store, practice.client, Noticed(NOW, "note", "in the middle"), NOW)
        pulse = Pulse(lambda: 0.0)
        pulse.beat()
        feeding = asyncio.ensure_future(watchdog.feed(pulse, lambda _: asyncio.sleep(0), fed.set))
        await asyncio.wait_for(fed.wait(), CAP_S)
        feeding.cancel()
        assert not task.done()
        go_on.set()
        await task

    loop: asyncio.AbstractEventLoop
    monkeypatch.setattr(wiping.Writing, "run", slow)
    asyncio.run(talk())
    assert [one.said for one in facts.current(store, Noticed, practice.client)][-1] == "in the middle"


def test_a_message_in_the_middle_of_it_raises_its_alert_at_once(
    practice: Practice, monkeypatch: pytest.MonkeyPatch
) -> None:
    practice.in_a_set()
    store = practice.stage.engine.store
    changes.note(store)
    practice.types(CLIENT, "stop, my leg is numb")
    assert any("numb" in text for text in practice.heard(1001))
    db, copy = Path(store.path), Path(f"{store.path}.copy")
    before = rows_of(store)
    copies.copy(db, copy)
    practice.types(CLIENT, "better now")
    changes.repeat(db, copy, changes.take(store))
    changes.forget(store)
    copied = Store(copy, synchronous="OFF")
    assert rows_of(copied) == rows_of(store) != before
    copied.close()


# --- kills ---
def points(store: Store, folder: Path, monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The files as they are at each point of the wiping: what a kill there would leave."""
    kept: list[Path] = []

    def keep(*_: object) -> None:
        place = folder / str(len(kept))
        place.mkdir()
        for file in db_of(store).parent.glob("cuffline.db*"):
            shutil.copy(file, place / file.name)
        kept.append(place)

    for module, name in (
        *((changes, name) for name in ("note", "take", "repeat", "forget")),
        *((copies, "rewrite"), (wiping, "flushed"), (wiping, "clear"), (os, "replace"), (os, "link")),
    ):
        monkeypatch.setattr(module, name, around(getattr(module, name), keep))
    return kept


def around(act: Callable[..., object], keep: Callable[[], None]) -> Callable[..., object]:
    def done(*values: object) -> object:
        keep()
        outcome = act(*values)
        keep()
        return outcome

    return done


def test_killed_at_any_moment_the_file_is_whole_and_the_wiping_is_done_after_the_restart(
    store: Store, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings.put(store, erasure.TO_WIPE, NOW.isoformat())
    with store.transaction():
        erasure.erase(store, 2)
    during(monkeypatch, lambda: settings.put(store, "meanwhile", "kept"))
    before = rows_of(store)
    with monkeypatch.context() as patched:
        kept = points(store, tmp_path_factory.mktemp("killed"), patched)
        wipe(store)
    after = rows_of(store)
    assert len(kept) >= 16
    ended = []
    for place in kept:
        db = place / "cuffline.db"
        with held.by_this_process(db):
            assert sorted(file.name for file in place.iterdir() if "wiped" in file.name) == []
            again = Store(db, synchronous="OFF")
            found = rows_of(again)
            assert found in (before, after)
            ended.append(found == after)
            assert settings.get(again, erasure.TO_WIPE) == NOW.isoformat()
            wipe(again)
            assert rows_of(again) == found
            again.close()
        assert MARK.encode() not in bytes_of(db)
    assert ended == sorted(ended), "what is confirmed stays"
    assert {*ended} == {False, True}


def test_whoever_ends_the_program_does_not_wait_for_it(store: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    ended: list[str] = []

    def endless(database: object, target: Path) -> None:
        begun.set()
        try:
            database.execute(  # type: ignore[attr-defined]
                "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT count(*) FROM n"
            ).fetchall()
        except Exception as problem:
            ended.append(str(problem))

    async def stopped() -> None:
        task = asyncio.ensure_future(wiping.wipe(store))
        await asyncio.to_thread(begun.wait, CAP_S)
        task.cancel()
        with pytest.raises(asyncio.CancelledError):
            await task

    begun = threading.Event()
    monkeypatch.setattr(copies, "rewrite", endless)
    asyncio.run(stopped())  # waits for its threads
    assert ended == ["interrupted"]
    settings.put(store, "still", "open")


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
