"""Who was erased, as numbers in a small file beside the backups: a restored backup must not bring anybody back."""

import os
from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum
from pathlib import Path

from bot import backups
from core.store import erasure
from core.store.connection import Store


class What(StrEnum):
    """What was done. Stored."""

    ERASED = "erased"
    LEFT = "left"  # all but the record that must be kept


@dataclass(frozen=True, slots=True)
class Note:
    """One line: when, what, whose number (meaningless without the database)."""

    at: datetime
    what: What
    person: int


def file_of(folder: Path, db: Path) -> Path:
    """The file of this database in that folder."""
    return folder / f"{db.stem}-erased.txt"


def note(folder: Path, db: Path, one: Note) -> None:
    """Add a line, on the disk when this returns. Raises OSError."""
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    file = file_of(folder, db)
    handle = os.open(file, os.O_CREAT | os.O_APPEND | os.O_WRONLY, 0o600)
    with open(handle, "a", encoding="ascii") as out:
        out.write(f"{one.at.astimezone(UTC).isoformat()} {one.what} {one.person}\n")
    backups.flushed(file)


def notes(file: Path) -> list[Note]:
    """All lines that can be read, oldest first."""
    if not file.is_file():
        return []
    found = []
    for line in file.read_text(encoding="ascii", errors="replace").splitlines():
        try:
            at, what, person = line.split()
            found.append(Note(datetime.fromisoformat(at), What(what), int(person)))
        except ValueError:
            continue  # a torn last line
    return sorted(found, key=lambda one: one.at)


def again(store: Store, file: Path) -> int:
    """Erase whoever the file names and the restored database still knows; how many. Raises sqlite3.Error."""
    count = 0
    with store.transaction():
        for one in notes(file):
            if erasure.known_before(store, one.person, one.at):
                do = erasure.erase if one.what is What.ERASED else erasure.close
                do(store, one.person)
                count += 1
    if count:
        erasure.compact(store)
    return count
