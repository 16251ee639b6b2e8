"""One program at a time on one database: an exclusive lock on a small file beside it.

The system lets go of the lock when the process ends, however it ends. The database file itself is never opened
for it: closing it again would drop the locks that SQLite holds on it in this process.
"""

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
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
        _take(handle, f"{db}: another cuffline is running on this database; stop it first")
        _clear(db)
        yield
    finally:
        os.close(handle)


@contextmanager
def backups_by_this_process(folder: Path, db: Path) -> Iterator[None]:
    """Keep others with a database of the same name off the backups' folder: they would thin out and restore ours.

    Raises `Wrong` when one of them runs. A folder that cannot be had is told with the first backup.
    """
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle = os.open(folder / f"{db.stem}.lock", os.O_RDWR | os.O_CREAT, 0o600)
    except OSError:
        yield
        return
    other = (
        f"CUFFLINE_BACKUPS: another practice whose database has the same name keeps its backups in {folder}"
    )
    try:
        with suppress(OSError):  # a disk in the network may have no locks
            _take(handle, f"{other}; set another folder")
        yield
    finally:
        os.close(handle)


def _take(handle: int, otherwise: str) -> None:
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        raise Wrong([otherwise]) from None


def _clear(db: Path) -> None:
    """What was left unfinished goes: nobody is at it now."""
    wiping.clear(db)
    for end in (work + log for work in UNFINISHED for log in LOGS):
        db.with_name(db.name + end).unlink(missing_ok=True)
