"""Wiping from the database's file what was erased, while everybody goes on.

SQLite overwrites deleted rows, but where rows moved from page to page old copies stay in unused corners; only a file
that is written anew is free of them. So it is written anew in a thread, beside the old one, what changed meanwhile is
changed in it, too, and then it takes the old one's place by a rename: killed at any moment there is one whole file
with all that was confirmed. Everybody waits only for that last step.
"""

import asyncio
import errno
import os
import shutil
from contextlib import closing, suppress
from pathlib import Path

from bot.database.backups import flushed
from bot.database.room import ROOM
from core.store import changes, copies
from core.store.connection import Store

AT_ONCE = 200  # rows that are changed again while everybody waits: some milliseconds; own choice
ROUNDS = 20  # of changing what changed meanwhile; the last one takes all that is left; own choice
STEPS = 100_000  # of SQLite's machine between two looks whether to stop: a fraction of a second; own choice
OLD = "-old"  # the end of the old file's second name


class Writing:
    """The slow part, for a thread; `stop` from another one."""

    def __init__(self, db: Path, target: Path) -> None:
        self.db = db
        self.target = target
        self.stopped = False

    def run(self) -> None:
        """Write the new file, on the disk when this returns. Raises sqlite3.Error."""
        with closing(copies.reading(self.db)) as reading:
            # Asked again and again: an interruption would go unheard just before a statement begins.
            reading.set_progress_handler(lambda: self.stopped, STEPS)
            copies.rewrite(reading, self.target)
        flushed(self.target)

    def stop(self) -> None:
        """Write no further."""
        self.stopped = True


def beside(db: Path) -> Path:
    """Where the new file is made."""
    return db.with_name(db.name + ".wiped")


def clear(db: Path) -> None:
    """Take away what a wiping leaves, also one that was killed: it holds health data."""
    for end in ("", "-journal", OLD):
        Path(f"{beside(db)}{end}").unlink(missing_ok=True)


async def wipe(store: Store) -> None:
    """Write the file anew. Raises sqlite3.Error or OSError: all is as it was, and it can be tried again."""
    db = _make_room(store.path)
    changes.note(store)
    try:
        await _write(db)
        await _follow(store, db)
        _exchange(store, db)
    finally:
        changes.forget(store)
        await asyncio.to_thread(clear, db)


def _make_room(path: str) -> Path:
    """The database's own place, links followed, with an empty file beside it."""
    db = Path(path).resolve()
    clear(db)
    if shutil.disk_usage(db.parent).free < ROOM * db.stat().st_size:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
    flags = os.O_CREAT | os.O_EXCL | os.O_WRONLY
    os.close(os.open(beside(db), flags, 0o600))
    beside(db).chmod(db.stat().st_mode & 0o777)  # `open` alone would obey the umask
    return db


async def _write(db: Path) -> None:
    writing = Writing(db, beside(db))
    try:
        await asyncio.to_thread(writing.run)
    except asyncio.CancelledError:
        writing.stop()  # else the process would not end before it is through
        raise


async def _follow(store: Store, db: Path) -> None:
    """Change what changed meanwhile, until so little is left that everybody can wait for it."""
    for _ in range(ROUNDS):
        if changes.count(store) <= AT_ONCE:
            return
        await asyncio.to_thread(changes.repeat, db, beside(db), changes.take(store))


def _exchange(store: Store, db: Path) -> None:
    """No `await` in here: nobody may write between the last change and the rename."""
    changes.repeat(db, beside(db), changes.take(store))
    # Under a second name the old file goes in a thread: with a large one it takes a second.
    with suppress(OSError):
        os.link(db, f"{beside(db)}{OLD}")
    with store.exchanging():
        os.replace(beside(db), db)
        flushed(db.parent)
