"""A coach's export of an encrypted database: the process that makes it has the key, and shows it to nobody."""

import asyncio
from pathlib import Path

import pytest

from bot.database import keyed
from bot.making.slow_work import Failed, SlowWork
from core.store.converting import is_plain
from core.store.keys import Key
from tests.bot.coach.exported import asks, opened, table
from tests.bot.coach_room import COACH, RUTA, RoomOnFile
from tests.bot.terminal.practice import MONDAY
from tests.encrypted.conftest import DIGITS


def wanted(db: Path) -> dict[str, object]:
    """What the process is given for the one client there is."""
    now = MONDAY.replace(year=MONDAY.year + 1).isoformat()
    return {"coach": 1, "clients": [2], "db": str(db), "now": now, "asked": now}


def test_it_is_asked_for_and_opened_as_ever(key: Key) -> None:
    room = RoomOnFile()
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (31, 18), room.now)
    assert not is_plain(Path(room.store.path))
    files = opened(asks(room, COACH)[-1])
    assert [row["reps"] for row in table(files, "sessions")] == ["31", "18"]
    room.stage.close()


def test_it_is_made_in_a_process_of_its_own(db: Path) -> None:
    assert asyncio.run(SlowWork().draw("export", wanted(db))).startswith(b"PK")


def test_without_the_key_it_fails_and_says_nothing_of_it(db: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(keyed.KEY, "f" * 64)
    with pytest.raises(Failed) as problem:
        asyncio.run(SlowWork().draw("export", wanted(db)))
    assert "f" * 64 not in str(problem.value)
    assert DIGITS not in str(problem.value)
