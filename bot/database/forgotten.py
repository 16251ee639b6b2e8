"""Who was erased, as numbers in a small file beside the backups: a restored backup must not bring anybody back."""

import os
from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum
from pathlib import Path

from bot.database import backups
from core.store import duties, erasure
from core.store.connection import Store


class What(StrEnum):
    """What was done. Stored."""

    ERASED = "erased"
    LEFT = "left"  # all but the record that must be kept


@dataclass(frozen=True, slots=True)
class Note:
    """One line: when, what, whose number (meaningless without the database), and until when a record is kept."""

    at: datetime
    what: What
    person: int
    until: datetime | None = None


def file_of(folder: Path, db: Path) -> Path:
    """The file of this database in that folder."""
    return folder / f"{db.stem}-erased.txt"


def note(folder: Path, db: Path, one: Note) -> None:
    """Add a line, on the disk when this returns. Raises OSError."""
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    file = file_of(folder, db)
    handle = os.open(file, os.O_CREAT | os.O_APPEND | os.O_WRONLY, 0o600)
    with open(handle, "a", encoding="ascii") as out:
        out.write(
            " ".join([_time(one.at), one.what, str(one.person), *([_time(one.until)] if one.until else [])])
        )
        out.write("\n")
    backups.flushed(file)


def _time(at: datetime) -> str:
    return at.astimezone(UTC).isoformat()


def notes(file: Path) -> list[Note]:
    """All lines that can be read, oldest first."""
    if not file.is_file():
        return []
    found = []
    for line in file.read_text(encoding="ascii", errors="replace").splitlines():
        try:
            at, what, person, *until = line.split()
            day = datetime.fromisoformat(until[0]) if until else None
            found.append(Note(datetime.fromisoformat(at), What(what), int(person), day))
        except ValueError:
            continue  # a torn last line
    return sorted(found, key=lambda one: one.at)


def again(store: Store, file: Path) -> int:
    """Erase whoever the file names and the restored database still knows; how many. Raises sqlite3.Error."""
    count = 0
    with store.transaction():
        for one in notes(file):
            if erasure.known_before(store, one.person, one.at):
                _once_more(store, one)
                count += 1
    if count:
        erasure.compact(store)
    return count


def _once_more(store: Store, one: Note) -> None:
    if one.what is What.ERASED:
        erasure.erase(store, one.person)
    else:
        close(store, one.person, one.at, one.until or one.at)


def close(store: Store, person: int, at: datetime, until: datetime) -> None:
    """All but the record goes; the record goes on its day."""
    erasure.close(store, person)
    duties.plan(store, person, "erase", {"asked": at.isoformat(), "closed": True}, until, at)
