"""While the file is wiped everybody goes on, and what they write is in the new one."""

import asyncio
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from bot import watchdog
from bot.database import wiping
from bot.watchdog import Pulse
from core.facts import Noticed
from core.store import changes, copies, facts, people, settings
from core.store.connection import Store
from core.store.people import Role
from tests.bot.database.wiping_room import NOW, Rows, during, made, rows_of, wipe
from tests.practice import CLIENT, Practice

CAP_S = 10


@pytest.fixture
def practice(practice_on_file: Practice) -> Practice:
    """Its file is wiped."""
    return practice_on_file


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = made(tmp_path)
    yield opened
    opened.close()


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
