"""`cuffline encrypt` and `cuffline decrypt`: the database and its backups in the other form.

Each file is written anew beside the old one, opened, checked, compared row by row, and only then takes its place;
the database comes last. Whenever it is killed every file is whole, in the one form or the other, and a second run
goes on where the first one ended.
"""

import argparse
import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from bot.clocks.clock import Clock
from bot.config import Wrong, backups_in
from bot.database import backups, held
from bot.database.keyed import KEY_FILE
from bot.database.sound import usable
from conversations.words.common import counted
from core.store import converting, copies, keys
from core.store.keys import Key

CHUNK = 1 << 20  # bytes written at once
BESIDE = ("-wal", "-shm")
SURE = (
    "The old bytes were overwritten where they stood. An SSD, a file system that copies on write, and snapshots "
    "may hold them still; only an encrypted or a wiped disk is sure."
)
ELSEWHERE = (
    "Copies in other places (a second disk) are as they were: delete them, or keep them as safe as before."
)


@dataclass(frozen=True, slots=True)
class Way:
    """From the one key to the other; None: plain."""

    old: Key | None
    new: Key | None
    word: str

    def ahead(self, file: Path) -> bool:
        """Whether this file is still in the old form."""
        return converting.is_plain(file) == (self.old is None)


def main(options: argparse.Namespace) -> int:
    """Convert all; 1 when a damaged backup had to be left as it is, 2 when nothing could be done."""
    key = keys.held()
    if key is None:
        raise Wrong([f"set {KEY_FILE} to a file with the key (`openssl rand -hex 32` makes one)"])
    way = Way(None, key, "encrypted") if options.command == "encrypt" else Way(key, None, "plain")
    db: Path = options.db
    with held.by_this_process(db):
        rows, done, left = _all(db, way)
    print(f"{db}: {way.word}, {rows} rows compared; {counted(done, 'backup')} too")
    _say_the_rest(db, way)
    print("\n".join(f"{file}: damaged, left as it was; delete it" for file in left), end="\n" if left else "")
    return 1 if left else 0


def _all(db: Path, way: Way) -> tuple[int, int, list[Path]]:
    """Rows of the database, backups converted, backups that are damaged."""
    folder = backups_in(db)
    with _explained(db):
        if not db.is_file() or way.ahead(db):
            _backed_up(db, folder, way)
        files = [one.path for one in backups.found(folder, db) if way.ahead(one.path)]
        if not files and not way.ahead(db):
            raise Wrong([f"{db}: it is {way.word} already"])
        left = [file for file in files if not _backup(file, way)]
        # Behind a link the file itself, or that one would stay as it was.
        return _database(db.resolve(), way), len(files) - len(left), left


@contextmanager
def _explained(db: Path) -> Iterator[None]:
    try:
        yield
    except OSError as problem:
        raise Wrong([f"{problem.filename or db}: {problem.strerror}; run it again"]) from None
    except (sqlite3.Error, backups.Faulty) as problem:
        raise Wrong([f"{db}: not changed: {problem}"]) from None


def _backed_up(db: Path, folder: Path, way: Way) -> None:
    with keys.using(way.old):
        usable(db)
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        backups.write(db, backups.path_for(folder, db, Clock().now()))


def _backup(file: Path, way: Way) -> bool:
    """False: it is damaged. For a moment it has no checksum rather than a wrong one."""
    try:
        with keys.using(way.old):
            backups.verify(file)
    except backups.Faulty:
        return False
    ready, _ = _ready(file, way)
    backups.checksum_of(file).unlink(missing_ok=True)
    _in_place(ready, file, way)
    backups.note_checksum(file)
    return True


def _database(db: Path, way: Way) -> int:
    if not way.ahead(db):
        return sum(rows for rows, _ in _contents(db, way.new).values())
    with keys.using(way.old):
        if not copies.tidy(db):
            raise Wrong([f"{db}: another program reads it; try again when it has ended"])
    ready, rows = _ready(db, way)
    # All of it is in the file now; the log of the old one must not be read into the new one.
    for end in BESIDE:
        db.with_name(db.name + end).unlink(missing_ok=True)
    _in_place(ready, db, way)
    return rows


def _ready(file: Path, way: Way) -> tuple[Path, int]:
    """The file in its new form, beside the old one, checked and compared; and how many rows it has."""
    ready = file.with_name(file.name + ".converting")
    ready.unlink(missing_ok=True)
    os.close(os.open(ready, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))  # health data: for its owner only
    converting.convert(file, way.old, ready, way.new)
    with keys.using(way.new):
        backups.verify(ready)
    found = _contents(ready, way.new)
    if found != _contents(file, way.old):
        raise backups.Faulty(f"{ready}: not what is in {file}")
    backups.flushed(ready)
    return ready, sum(rows for rows, _ in found.values())


def _contents(file: Path, key: Key | None) -> dict[str, tuple[int, str]]:
    with keys.using(key):
        return converting.contents(file)


def _in_place(ready: Path, file: Path, way: Way) -> None:
    """The old file has no name any more before it is overwritten: no moment has neither the one nor the other."""
    handle = os.open(file, os.O_RDWR)
    try:
        os.replace(ready, file)
        backups.flushed(file.parent)
        if way.old is None and os.fstat(handle).st_nlink == 0:
            _overwritten(handle)
    finally:
        os.close(handle)


def _overwritten(handle: int) -> None:
    left = os.fstat(handle).st_size
    while left > 0:
        left -= os.write(handle, bytes(min(left, CHUNK)))
    os.fsync(handle)


def _say_the_rest(db: Path, way: Way) -> None:
    if way.new is None:
        print(
            f"Take {KEY_FILE} out of the settings, and keep the key as long as an encrypted copy is somewhere."
        )
        return
    place = db.resolve()
    aside = [
        file for file in sorted(place.parent.glob(f"{place.name}.before-*")) if converting.is_plain(file)
    ]
    print(SURE)
    print("\n".join([f"{file}: still plain; delete it" for file in aside] + [ELSEWHERE]))
    print(
        "Without the key nobody opens the database or a backup, you neither: keep a second copy of it elsewhere."
    )
