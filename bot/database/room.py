"""Where a copy of the database lies that is read and thrown away."""

import os
import shutil
import tempfile
from pathlib import Path

ROOM = 1.2  # times the file's size must be free for another one: a full disk would stop everybody; own choice
IN_MEMORY = Path("/dev/shm")  # where the system has such a place
# Bytes of a file whose copies may be in memory; own choice. A practice of 1,000 clients is at 30 MB.
SMALL = 64 * 2**20


def beside_sets(db: Path) -> Path:
    """For a copy beside a bot that answers: in memory while it is small.

    On the disk its bytes are written out together with what the bot commits meanwhile, and that commit waits for them.
    """
    return _first([IN_MEMORY, *_usual()] if _size(db) <= SMALL else _usual(), db)


def anywhere(db: Path) -> Path:
    """The usual folder for what is thrown away, or the database's own where that one has no room (a small /tmp)."""
    return _first(_usual(), db)


def _usual() -> list[Path]:
    return [Path(tempfile.gettempdir())]


def _first(folders: list[Path], db: Path) -> Path:
    needed = ROOM * _size(db)
    return next((one for one in folders if _has_room(one, needed)), db.resolve().parent)


def _has_room(folder: Path, needed: float) -> bool:
    return folder.is_dir() and os.access(folder, os.W_OK) and shutil.disk_usage(folder).free >= needed


def _size(db: Path) -> int:
    """With the log, which may hold what the file does not yet."""
    return sum(one.stat().st_size for one in (db, db.with_name(f"{db.name}-wal")) if one.is_file())
