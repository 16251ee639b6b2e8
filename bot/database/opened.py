"""A practice opened beside the running bot: a copy to read from, or the file itself while no bot holds it."""

import os
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bot.clocks.clock import Clock
from bot.config import Config, Wrong, coaches_in, zone_in
from bot.database import held, room
from bot.database.sound import usable
from bot.engine import Engine
from core.store import copies, people
from core.store.connection import Store

NO_TOKEN, NO_SERVER = "0:none", "http://127.0.0.1"  # nothing is sent from here


@contextmanager
def reading(db: Path) -> Iterator[Engine]:
    """An engine on a private copy: consistent, of today's schema, and the bot may go on. Raises `Wrong`."""
    usable(db)
    with tempfile.TemporaryDirectory(prefix="cuffline-", dir=room.anywhere(db)) as folder:
        copied = Path(folder) / "copy.db"
        try:
            copies.copy(db, copied, lasting=False)
            store = Store(copied, synchronous="OFF")
        except (sqlite3.Error, OSError) as problem:
            raise Wrong([f"{db}: {problem}"]) from None
        try:
            yield _engine(store, db)
        except copies.UNREADABLE as problem:
            raise Wrong([f"{db}: {problem}; `cuffline check` looks for damage"]) from None
        finally:
            store.close()


@contextmanager
def writing(db: Path) -> Iterator[Engine]:
    """An engine on the file itself. Raises `Wrong` while a bot holds it."""
    usable(db)
    with held.by_this_process(db):
        try:
            store = Store(db)
        except sqlite3.Error as problem:
            raise Wrong([f"{db}: {problem}"]) from None
        try:
            yield _engine(store, db)
        finally:
            store.close()


def _engine(store: Store, db: Path) -> Engine:
    known = tuple(coach.chat for coach in people.coaches(store) if coach.chat is not None)
    coaches = coaches_in(os.environ.get("CUFFLINE_COACH", ""), []) or known or (0,)
    return Engine(store, Config(NO_TOKEN, NO_SERVER, db, coaches, zone_in()), Clock().now)
