"""One program at a time on one database: an exclusive lock on a small file beside it.

The system lets go of the lock when the process ends, however it ends. The database file itself is never opened
for it: closing it again would drop the locks that SQLite holds on it in this process.
"""

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bot.config import Wrong
from bot.database import wiping

# Whole copies, and their logs, that a killed restore or encryption leaves: health data that nobody asks for again.
UNFINISHED = (".restoring", ".converting")
LOGS = ("", "-journal", "-wal", "-shm")


@contextmanager
def by_this_process(db: Path) -> Iterator[None]:
    """Hold the database. Raises `Wrong` when another process does, or when its folder cannot be written."""
    db = db.resolve()  # by whatever name or link it is called
    lock = db.with_name(db.name + ".lock")
    try:
        handle = os.open(lock, os.O_RDWR | os.O_CREAT, 0o600)
    except OSError as problem:
        raise Wrong([f"{lock}: {problem.strerror}"]) from None
    try:
        _take(handle, db)
        _clear(db)
        yield
    finally:
        os.close(handle)


def _take(handle: int, db: Path) -> None:
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        raise Wrong([f"{db}: another cuffline is running on this database; stop it first"]) from None


def _clear(db: Path) -> None:
    """What was left unfinished goes: nobody is at it now."""
    wiping.clear(db)
    for end in (work + log for work in UNFINISHED for log in LOGS):
        db.with_name(db.name + end).unlink(missing_ok=True)
