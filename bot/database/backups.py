"""Backups: copies of the database in a folder, each one opened and checked, with its checksum beside it.

SQLite does not notice a damaged value inside a row, so every backup has a SHA-256 in the form that `sha256sum -c`
reads. Kept are the last 24 hours' and the last of each of 30 days.
"""

import hashlib
import os
import re
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from core.store import copies

HOURS, DAYS = 24, 30  # kept: each backup of so many hours, the last one of each of so many days
STAMP, MOMENT = "%Y%m%dT%H%M%SZ", r"\d{8}T\d{6}Z"
LAST_GOOD = (
    "last_good_backup"  # the setting that names it, while later ones differ where nothing ever changes
)
AHEAD = timedelta(minutes=1)  # a smaller step of a clock makes no difference; own choice
CHUNK = 1 << 20  # bytes read at once


class Faulty(Exception):
    """A file that must not be relied on; says why."""


@dataclass(frozen=True, slots=True, order=True)
class Backup:
    """One file of the folder, made at `at`."""

    at: datetime
    path: Path


def to_compare(folder: Path, db: Path, good: str | None) -> Backup | None:
    """The backup that the database is held to: the one named `good` as long as it is there, else the newest."""
    kept = found(folder, db)
    return next((one for one in kept if one.path.name == good), kept[-1] if kept else None)


def path_for(folder: Path, db: Path, at: datetime) -> Path:
    """Where the backup of this moment goes."""
    return folder / f"{db.stem}-{at.astimezone(UTC):{STAMP}}.db"


def database_of(file: Path) -> Path | None:
    """The database that a backup is named after; None: it has another name."""
    match = re.fullmatch(rf"(.+)-{MOMENT}\.db", file.name)
    return Path(f"{match[1]}.db") if match else None


def found(folder: Path, db: Path) -> list[Backup]:
    """The backups of this database, oldest first."""
    form = re.compile(rf"{re.escape(db.stem)}-({MOMENT})\.db")
    matched = ((form.fullmatch(path.name), path) for path in folder.glob("*.db"))
    return sorted(Backup(_moment(match[1]), path) for match, path in matched if match)


def put_right(folder: Path, db: Path, now: datetime) -> None:
    """After a clock that ran ahead was set back: backups of times that have not come yet are called by now.

    Else the newest one would stand in the way of the next ones, be offered for a restore, and outlive its 30 days.
    Raises OSError.
    """
    ahead = [backup.path for backup in found(folder, db) if backup.at > now + AHEAD]
    for file in reversed(ahead):
        while path_for(folder, db, now).exists():
            now -= timedelta(seconds=1)
        _call(file, path_for(folder, db, now))


def _call(file: Path, name: Path) -> None:
    """Under another name, with its checksum; killed between, it has none rather than a wrong one."""
    beside = checksum_of(file)
    text = beside.read_text(encoding="ascii", errors="replace") if beside.is_file() else ""
    file.rename(name)
    if text:
        _keep(checksum_of(name), text.replace(file.name, name.name))
        beside.unlink()


def checksum_of(file: Path) -> Path:
    """The small file beside a backup."""
    return file.with_name(file.name + ".sha256")


def write(db: Path, file: Path, tell: copies.Progress = lambda done, total: None) -> None:
    """Back up `db` to `file`, complete or not at all. Raises Faulty, sqlite3.Error or OSError."""
    part = file.with_name(file.name + ".part")
    part.unlink(missing_ok=True)
    os.close(os.open(part, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))  # health data: for its owner only
    try:
        copies.copy(db, part, tell)
        _check(part)
        note_checksum(file, part)
        flushed(part)
        os.replace(part, file)
        flushed(file.parent)
    finally:
        part.unlink(missing_ok=True)


def note_checksum(file: Path, content: Path | None = None) -> None:
    """Write the checksum beside `file`: of what it holds, or of the `content` that is about to take its place."""
    _keep(checksum_of(file), f"{_sha256(content or file)}  {file.name}\n")


def verify(file: Path) -> str:
    """How well the file is known to be whole. Raises Faulty with the reason when it is not; OSError."""
    _check(file)
    beside = checksum_of(file)
    if not beside.is_file():
        return "whole as far as SQLite can tell (no checksum beside it)"
    if beside.read_text(encoding="ascii", errors="replace").partition(" ")[0] != _sha256(file):
        raise Faulty(f"{file}: not what was written (checksum differs)")
    return "whole (checksum agrees)"


def _check(file: Path) -> None:
    damage = copies.damage(file)
    if damage:
        raise Faulty(f"{file}: damaged ({damage[0]})")


def prune(folder: Path, db: Path, now: datetime, good: datetime | None = None) -> None:
    """Delete what need not be kept: whoever is erased is told that every copy runs out.

    `good`: the last backup before the database was damaged, which stays for as long as any.
    """
    backups = found(folder, db)
    kept = to_keep((backup.at for backup in backups), now)
    if good is not None and good > now - timedelta(days=DAYS):
        kept.add(good)
    for backup in backups:
        if backup.at not in kept:
            backup.path.unlink(missing_ok=True)
            checksum_of(backup.path).unlink(missing_ok=True)
    torn = _dated(folder, rf"{re.escape(db.stem)}-({MOMENT})\.db\.part", now - timedelta(hours=HOURS))
    place = db.resolve()
    aside = _dated(
        place.parent, rf"{re.escape(place.name)}\.before-({MOMENT})(-wal|-shm)?", now - timedelta(days=DAYS)
    )
    for path in (*torn, *aside):
        path.unlink(missing_ok=True)


def _dated(folder: Path, form: str, before: datetime) -> list[Path]:
    """Files older than that, by the moment in their names: of a backup that was killed, or set aside by a restore."""
    matched = ((re.fullmatch(form, path.name), path) for path in folder.iterdir())
    return [path for match, path in matched if match and _moment(match[1]) < before]


def _moment(stamp: str) -> datetime:
    return datetime.strptime(stamp, STAMP).replace(tzinfo=UTC)


def to_keep(times: Iterable[datetime], now: datetime) -> set[datetime]:
    """All of the last 24 h, the last of each of the last 30 days (UTC), and always the newest."""
    ordered = sorted(times)
    by_day = {at.date(): at for at in ordered}  # a later one replaces an earlier one
    daily = {at for day, at in by_day.items() if day > (now - timedelta(days=DAYS)).date()}
    return daily | {at for at in ordered if at > now - timedelta(hours=HOURS)} | set(ordered[-1:])


def flushed(path: Path) -> None:
    """On the disk, not only on its way there."""
    handle = os.open(path, os.O_RDONLY)
    try:
        with suppress(OSError):  # some file systems cannot flush a folder
            os.fsync(handle)
    finally:
        os.close(handle)


def _sha256(file: Path) -> str:
    digest = hashlib.sha256()
    with file.open("rb") as content:
        while chunk := content.read(CHUNK):
            digest.update(chunk)
    return digest.hexdigest()


def _keep(file: Path, text: str) -> None:
    file.write_text(text, encoding="ascii")
    flushed(file)
