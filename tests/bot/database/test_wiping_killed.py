"""A wiping that is killed or ended at any moment costs nothing, and is done after the restart."""

import asyncio
import os
import shutil
import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from bot.database import held, wiping
from core.store import changes, copies, erasure, settings
from core.store.connection import Store
from tests.bot.database.wiping_room import MARK, NOW, bytes_of, db_of, during, made, rows_of, wipe

CAP_S = 10


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = made(tmp_path)
    yield opened
    opened.close()


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
