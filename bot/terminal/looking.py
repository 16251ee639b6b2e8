"""What `cuffline check` looks at. Each look gives findings and never raises for what it finds."""

import asyncio
import os
import shutil
import stat
import zoneinfo
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from importlib.metadata import version
from pathlib import Path

from bot.config import Wrong, backups_in, from_environment, misspelt
from bot.database import backups
from bot.database.sound import usable
from conversations.words.common import counted
from core.calendar.zones import zone_named
from core.store import copies

OLDEST_BACKUP = timedelta(hours=3)  # they are made every hour; own choice
LEAST_FREE = 500 * 1024 * 1024  # bytes; own choice
ROOM = 3  # databases that must fit: the copy of a backup, of a restore, and one to spare; own choice
EARLIEST_YEAR = 2026  # this program is not older
CLOCK_SLACK = timedelta(minutes=1)
LONGEST_WAIT_S = 10.0


@dataclass(frozen=True, slots=True)
class Finding:
    """One line: what was looked at, whether it is right, and what to do when it is not."""

    what: str
    ok: bool
    says: str


@dataclass(frozen=True, slots=True)
class Place:
    """The files of a practice."""

    db: Path
    backups: Path

    @classmethod
    def named(cls, db: Path) -> "Place":
        """The backups as set, or beside the database."""
        return cls(db, backups_in(db))


def settings(place: Place, now: datetime) -> Iterator[Finding]:
    """The environment, as `run` would read it."""
    try:
        config = from_environment({**os.environ, "CUFFLINE_DB": str(place.db)})
    except Wrong as wrong:
        yield from (Finding("settings", False, line) for line in (*wrong.lines, *misspelt()))
    else:
        yield from (Finding("settings", False, line) for line in misspelt())
        yield Finding(
            "settings",
            True,
            f"{counted(len(config.coaches), 'coach', 'coaches')}, {config.zone}, {config.api_url}",
        )
        if len(config.coaches) < 2:
            yield Finding("settings", True, "one coach only: alerts reach nobody else (CUFFLINE_COACH)")


def database(place: Place, now: datetime) -> Iterator[Finding]:
    """Ours, whole, as the last backup says, and for its owner only."""
    if not place.db.exists():
        meant = "`cuffline run` makes it (or CUFFLINE_DB or --db names another)"
        yield Finding("database", False, f"{place.db} is not there yet: {meant}")
        return
    try:
        usable(place.db)
    except Wrong as wrong:
        yield from (Finding("database", False, line) for line in wrong.lines)
        return
    found = copies.damage(place.db) or _differs(place)
    advice = f"stop the bot; `cuffline restore` puts a backup from {place.backups} in its place"
    yield from (Finding("database", False, f"{line}; {advice}") for line in found)
    if not found:
        yield Finding("database", True, f"{place.db}, whole, schema {copies.applied(place.db)[-1]}")
    if _open_to_others(place.db.resolve()):
        yield Finding("database", False, f"others on this machine can read it: `chmod 600 {place.db}*`")


def _open_to_others(db: Path) -> bool:
    """Whether the file, and every folder on the way to it, lets any user of the machine read."""
    ways = all(folder.stat().st_mode & stat.S_IXOTH for folder in db.parents)
    return bool(ways and db.stat().st_mode & stat.S_IROTH)


def _differs(place: Place) -> list[str]:
    kept = None
    try:
        good = copies.setting(place.db, backups.LAST_GOOD)
        kept = backups.to_compare(place.backups, place.db, good)
        found = copies.changed(kept.path, place.db) if kept else []
    except copies.UNREADABLE as problem:
        return [f"{kept.path if kept else place.db}: {problem}"]
    return [*found, f"{kept.path} is the last good backup"] if kept and found and good else found


def clock(place: Place, now: datetime) -> Iterator[Finding]:
    """Not in the past of what is stored, nor before this program was written."""
    if now.year < EARLIEST_YEAR:
        yield Finding(
            "clock", False, f"it says {now:%Y-%m-%d}; set the clock (an NTP service keeps it right)"
        )
        return
    last = _awake_at(place.db)
    if last is not None and last > now + CLOCK_SLACK:
        yield Finding(
            "clock",
            False,
            f"it says {now:%Y-%m-%d %H:%M} UTC, the bot worked at {last:%Y-%m-%d %H:%M}; set it",
        )
        return
    yield Finding("clock", True, f"{now:%Y-%m-%d %H:%M} UTC")


def _awake_at(db: Path) -> datetime | None:
    try:
        text = copies.setting(db, "awake_at")
    except copies.UNREADABLE:
        return None
    return None if text is None else datetime.fromisoformat(text)


def zones(place: Place, now: datetime) -> Iterator[Finding]:
    """The zone of everybody is known here."""
    unknown = []
    try:
        for zone in copies.zones(place.db):
            zone_named(zone)
    except ValueError as problem:
        unknown.append(str(problem))
    except copies.UNREADABLE:
        return  # said under "database"
    known = len(zoneinfo.available_timezones())
    advice = "; update tzdata (pip install -U tzdata)"
    yield from (Finding("zones", False, line + advice) for line in unknown)
    if not unknown:
        yield Finding("zones", True, f"{known} zones known, tzdata {version('tzdata')}")


def disk(place: Place, now: datetime) -> Iterator[Finding]:
    """Room for the next backups."""
    size = place.db.stat().st_size if place.db.is_file() else 0
    folders = (place.db.resolve().parent, place.backups.resolve())
    for folder in sorted({folder for folder in folders if folder.is_dir()}):
        free = shutil.disk_usage(folder).free
        good = free >= max(LEAST_FREE, ROOM * size)
        says = f"{free // 1024**2} MB free in {folder}"
        yield Finding("disk", good, says if good else f"{says}; make room, or soon nothing can be kept")


def last_backup(place: Place, now: datetime) -> Iterator[Finding]:
    """There is a young one, and it is whole."""
    kept = backups.found(place.backups, place.db)
    if not kept:
        yield Finding("backup", False, f"none in {place.backups}; the running bot makes one every hour")
        return
    newest, age = kept[-1], now - kept[-1].at
    try:
        usable(newest.path)  # with a key that is missing or another one a good one must not be called damaged
        how = backups.verify(newest.path)
    except Wrong as wrong:
        yield from (Finding("backup", False, line) for line in wrong.lines)
        return
    except (backups.Faulty, OSError) as problem:
        yield Finding("backup", False, f"{problem}; delete it and make another (`cuffline backup`)")
        return
    minutes = int(age.total_seconds() // 60)
    says = f"{len(kept)} in {place.backups}, the last {minutes} min old, {how}"
    good = abs(age) <= OLDEST_BACKUP  # also one of a time that has not come yet says that something is wrong
    yield Finding("backup", good, says if good else f"{says}; is the bot running, is the folder writable?")


def token(place: Place, now: datetime) -> Iterator[Finding]:
    """The server knows the token. Says nothing when the settings are wrong already."""
    try:
        config = from_environment({**os.environ, "CUFFLINE_DB": str(place.db)})
    except Wrong:
        return
    from bot.net.secrecy import quiet_logs

    quiet_logs(config.token)
    good, says = asyncio.run(_asked(config.token, config.api_url))
    yield Finding("token", good, says)


async def _asked(token: str, api_url: str) -> tuple[bool, str]:
    from telegram import Bot
    from telegram.error import InvalidToken, TelegramError

    try:
        async with asyncio.timeout(LONGEST_WAIT_S), Bot(token, base_url=f"{api_url}/bot") as bot:
            return True, f"the server knows it as @{bot.username}"
    except InvalidToken:
        return False, f"{api_url} does not know this token; set CUFFLINE_TOKEN as the bot's maker gave it"
    except (TelegramError, TimeoutError) as problem:
        return False, f"no answer from {api_url} ({type(problem).__name__}); is the network up?"


HERE = (settings, database, clock, zones, disk, last_backup)
