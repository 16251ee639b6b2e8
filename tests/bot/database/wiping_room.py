"""A store with something to wipe from its file, and a way to step in meanwhile."""

import asyncio
import random
from collections import Counter
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.database import wiping
from core.store import people, tables
from core.store.connection import Store
from core.store.people import Role

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
MARK = "Zmarkerq"

Rows = dict[str, Counter[tuple[object, ...]]]


def rows_of(store: Store) -> Rows:
    """Every row of every table."""
    names = [*tables.names(store), "button"]
    return {name: Counter(tuple(row) for row in store.rows(f"SELECT * FROM {name}")) for name in names}


def bytes_of(db: Path) -> bytes:
    """Of the file, its log and whatever stands beside it under its name."""
    return b"".join(file.read_bytes() for file in db.parent.glob(f"{db.name}*"))


def made(place: Path) -> Store:
    """A few clients with notes of many lengths, so that rows have moved from page to page."""
    store = Store(place / "cuffline.db", synchronous="OFF")
    dice = random.Random(1)
    people.add(store, 1001, "Coach", Role.COACH, "UTC", NOW)
    for number in range(4):
        people.add(store, 2001 + number, f"Client {number}", Role.CLIENT, "UTC", NOW, 1)
    with store.transaction():
        for number in range(1500):
            session = f"{dice.randrange(10**6)}-{MARK if number % 4 == 0 else 'other'}"
            store.execute(
                "INSERT INTO session_ended (person, noted_at, at, session, why) VALUES (?, 0, 0, ?, ?)",
                [2 + number % 4, session, "x" * dice.randrange(200)],
            )
    return store


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
