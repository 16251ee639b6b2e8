"""What the running bot does for its own database: an hourly backup and a daily look for damage, off the loop.

What was erased is wiped from the file here, too (`bot/database/wiping.py`).
"""

import asyncio
import logging
import sqlite3
from collections.abc import Callable
from contextlib import suppress
from datetime import datetime, timedelta
from pathlib import Path

from bot.clocks import keeping_time
from bot.clocks.clock import Clock
from bot.config import Config
from bot.database import backups, wiping
from bot.database.backups import Backup
from conversations.words import engine as words
from core.store import copies, erasure, settings
from core.store.connection import Store, cannot_write, is_busy

log = logging.getLogger("cuffline")

LOOK_EVERY = timedelta(minutes=1)
BACKUP_EVERY = timedelta(hours=1)
CHECK_EVERY = timedelta(days=1)
WIPE_AGAIN = timedelta(hours=1)  # after it failed
WIPE_LATEST = timedelta(hours=12)  # then also while somebody trains; the client was told a day; own choice


class Upkeep:
    """`tell` says something to the operator, directly: it must arrive even when nothing can be stored."""

    def __init__(self, config: Config, clock: Clock, store: Store, tell: Callable[[str], None]) -> None:
        self.config = config
        self.clock = clock
        self.store = store
        self.tell = tell
        self.checked_at = clock.now()  # the start looks for itself
        self.tried_at: datetime | None = None
        self.not_wiped_at: datetime | None = None
        self.differs_told_at: datetime | None = None
        self.failed_told_at: datetime | None = None

    async def run(self) -> None:
        """Look every minute for what is due; not in the first, in which everybody wants an answer at once."""
        while True:
            await self.clock.sleep_until(self.clock.now() + LOOK_EVERY)
            try:
                await self.look()
            except Exception as problem:  # a bug here must not end everybody's sessions, again every minute
                log.exception("the care of the database failed")
                self._say_it_failed(type(problem).__name__)

    def _say_it_failed(self, problem: str) -> None:
        now = self.clock.now()
        if self.failed_told_at is None or abs(now - self.failed_told_at) >= CHECK_EVERY:
            self.failed_told_at = now
            self.tell(words.NO_CARE_OPERATOR.format(problem=problem))

    async def look(self) -> None:
        """Do what is due now."""
        now = self.clock.now()
        self._not_ahead(now)
        await self._wipe(now)
        if self._backup_is_due(now):
            self.tried_at = now
            await self._back_up(now)
        if now - self.checked_at >= CHECK_EVERY:
            self.checked_at = now
            await self._check()

    def _not_ahead(self, now: datetime) -> None:
        """Nothing waits for a time that was wrong, when the clock ran ahead and was set back."""
        self.checked_at = min(self.checked_at, now)
        self.tried_at = min(self.tried_at, now) if self.tried_at else None
        self.not_wiped_at = min(self.not_wiped_at, now) if self.not_wiped_at else None
        self.differs_told_at = min(self.differs_told_at, now) if self.differs_told_at else None
        try:
            backups.put_right(self.config.backups, self.config.db, now)
        except OSError as problem:
            log.error("backups of times that have not come yet: %s", problem)

    def _backup_is_due(self, now: datetime) -> bool:
        kept = []
        with suppress(OSError):  # a disk that is gone: told when the backup is tried
            kept = backups.found(self.config.backups, self.config.db)
        last = max((at for at in (self.tried_at, kept[-1].at if kept else None) if at), default=None)
        return last is None or now - last >= BACKUP_EVERY

    async def _back_up(self, now: datetime) -> None:
        folder, db = self.config.backups, self.config.db
        try:
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            before = backups.to_compare(folder, db, settings.get(self.store, backups.LAST_GOOD))
            made = backups.path_for(folder, db, now)
            await asyncio.to_thread(backups.write, db, made)
            good = before if before and await self._differs(before.path, made, now) else None
            self._remember(good)
            await asyncio.to_thread(backups.prune, folder, db, now, good.at if good else None)
        except (OSError, backups.Faulty, *copies.UNREADABLE) as problem:
            log.error("no backup: %s", problem)
            self.tell(words.NO_BACKUP_OPERATOR.format(problem=problem))

    async def _differs(self, before: Path, made: Path, now: datetime) -> bool:
        """Whether something that never changes did: SQLite does not notice it, two copies do. Told every day."""
        found = await asyncio.to_thread(copies.changed, before, made)
        if found and (self.differs_told_at is None or now - self.differs_told_at >= CHECK_EVERY):
            self.differs_told_at = now
            log.error("the database is damaged: %s; the last good backup: %s", found[0], before)
            self.tell(words.DAMAGED_SINCE_OPERATOR.format(problem=found[0], file=before))
        return bool(found)

    def _remember(self, good: Backup | None) -> None:
        """Later ones have the same damage, and against them nothing would differ: hold on to the last good one."""
        name = None if good is None else good.path.name
        if name == settings.get(self.store, backups.LAST_GOOD):
            return
        if name is None:
            settings.forget(self.store, backups.LAST_GOOD)
        else:
            settings.put(self.store, backups.LAST_GOOD, name)

    async def _wipe(self, now: datetime) -> None:
        """After somebody was erased; while nobody trains, as the disk has much to do."""
        wanted = settings.get(self.store, erasure.TO_WIPE)
        if wanted is None or not self._may_wipe(wanted, now):
            return
        try:
            await wiping.wipe(self.store)
            if settings.get(self.store, erasure.TO_WIPE) == wanted:  # else somebody was erased meanwhile
                settings.forget(self.store, erasure.TO_WIPE)
        except (OSError, sqlite3.Error) as problem:
            if isinstance(problem, sqlite3.Error) and not cannot_write(problem):
                raise
            self._not_wiped(problem, now)

    def _may_wipe(self, wanted: str, now: datetime) -> bool:
        if self.not_wiped_at is not None and now - self.not_wiped_at < WIPE_AGAIN:
            return False
        return not keeping_time.training(self.store) or now - erasure.since(wanted) >= WIPE_LATEST

    def _not_wiped(self, problem: Exception, now: datetime) -> None:
        if is_busy(problem):  # somebody copies the file at this moment
            log.info("what was erased is wiped from the file a minute later: %s", problem)
            return
        log.error("what was erased is not wiped from the file yet: %s", problem)
        if self.not_wiped_at is None:  # told once; it is tried every hour
            self.tell(words.NOT_WIPED_OPERATOR.format(problem=problem))
        self.not_wiped_at = now

    async def _check(self) -> None:
        damage = await asyncio.to_thread(copies.damage, self.config.db)
        if damage:
            log.error("the database is damaged: %s", damage[0])
            self.tell(words.DAMAGED_OPERATOR.format(problem=damage[0]))
