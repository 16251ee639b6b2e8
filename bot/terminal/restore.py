"""`cuffline restore FILE`: a backup takes the database's place; the old one stays beside it under a dated name."""

import argparse
import os
import shutil
import sqlite3
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from bot.clocks.clock import Clock
from bot.config import Wrong, backups_in
from bot.database import backups, forgotten, held
from bot.database.sound import usable
from bot.terminal.progress import bar
from core.store import copies
from core.store.connection import Store

BESIDE = ("-wal", "-shm")  # the log of the old database must not be read into the new one


def main(options: argparse.Namespace) -> int:
    """Check the backup, put it in place, say where the old one is."""
    db, file = options.db, options.file
    usable(file)
    if db.exists() and file.samefile(db):
        raise Wrong([f"{file}: that is the database itself, no backup of it"])
    place = db.resolve()  # behind a link the file itself, or it would stay as it was
    with held.by_this_process(db):
        try:
            how = backups.verify(file)
            ready = _ready(file, place)
            forgotten_again = _forget(ready, db, file)  # before anybody can start a bot on it
            aside = _aside(place, Clock().now())
            _in_place(ready, place)
        except OSError as problem:
            raise Wrong([f"{problem.filename or db}: {problem.strerror}"]) from None
        except (sqlite3.Error, backups.Faulty) as problem:
            raise Wrong([f"nothing was changed: {problem}"]) from None
    print(f"{db}: now as in {file}, {how}")
    if forgotten_again:
        print(f"erased again, as asked since that backup: {forgotten_again}")
    if aside is not None:
        print(f"the database before is kept for {backups.DAYS} days as {aside}")
    return 0


def _ready(file: Path, db: Path) -> Path:
    """A checked copy of the backup, beside the database."""
    ready = db.with_name(db.name + ".restoring")
    ready.unlink(missing_ok=True)
    with bar("restore") as tell:
        copies.copy(file, ready, tell)
    ready.chmod(0o600)
    backups.verify(ready)
    return ready


def _aside(db: Path, now: datetime) -> Path | None:
    """The old database under a second, dated name, with its log; None: there was none."""
    if not db.exists():
        return None
    with suppress(sqlite3.Error):  # a damaged one keeps its log as it is
        copies.tidy(db)
    aside = db.with_name(f"{db.name}.before-{now:{backups.STAMP}}")
    _second_name(db, aside)
    for end in BESIDE:
        if (log := db.with_name(db.name + end)).exists():
            shutil.copy2(log, aside.with_name(aside.name + end))
    return aside


def _second_name(db: Path, aside: Path) -> None:
    try:
        os.link(db, aside)
    except FileExistsError:
        raise
    except OSError:  # a file system without second names
        shutil.copy2(db, aside)


def _in_place(ready: Path, db: Path) -> None:
    for end in BESIDE:
        db.with_name(db.name + end).unlink(missing_ok=True)
    os.replace(ready, db)
    backups.flushed(db.parent)


def _forget(ready: Path, db: Path, file: Path) -> int:
    """Who was erased since the backup is erased again; opening brings it to today's schema. All of it in one file."""
    made_of = backups.database_of(file)  # another name than ours, when a practice moved
    known = {
        forgotten.file_of(backups_in(db).resolve(), db),
        forgotten.file_of(file.resolve().parent, db),
        *((forgotten.file_of(file.resolve().parent, made_of),) if made_of else ()),
    }
    store = Store(ready)
    try:
        count = sum(forgotten.again(store, one) for one in known)
    finally:
        store.close()
    if not copies.tidy(ready):
        raise backups.Faulty(f"{ready}: another program reads it")
    return count
