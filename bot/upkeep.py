"""What the running bot does for its own database: an hourly backup and a daily look for damage, off the loop.

What was erased is wiped from the file here, too: in the loop, because only one connection may write.
"""

import asyncio
import logging
import sqlite3
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

from bot import backups
from bot.clock import Clock
from bot.config import Config
from conversations.words import engine as words
from core.store import copies, duties, erasure, settings
from core.store.connection import Store, cannot_write

log = logging.getLogger("cuffline")

LOOK_EVERY = timedelta(minutes=1)
BACKUP_EVERY = timedelta(hours=1)
CHECK_EVERY = timedelta(days=1)


class Upkeep:
    """`tell` says something to the operator, directly: it must arrive even when nothing can be stored."""

    def __init__(self, config: Config, clock: Clock, store: Store, tell: Callable[[str], None]) -> None:
        self.config = config
        self.clock = clock
        self.store = store
        self.tell = tell
        self.checked_at = clock.now()  # the start looks for itself
        self.tried_at: datetime | None = None

    async def run(self) -> None:
        """Look every minute for what is due; not in the first, in which everybody wants an answer at once."""
        while True:
            await self.clock.sleep_until(self.clock.now() + LOOK_EVERY)
            await self.look()

    async def look(self) -> None:
        """Do what is due now."""
        now = self.clock.now()
        self._compact()
        if self._backup_is_due(now):
            self.tried_at = now
            await self._back_up(now)
        if now - self.checked_at >= CHECK_EVERY:
            self.checked_at = now
            await self._check()

    def _backup_is_due(self, now: datetime) -> bool:
        kept = backups.found(self.config.backups, self.config.db)
        last = max((at for at in (self.tried_at, kept[-1].at if kept else None) if at), default=None)
        return last is None or now - last >= BACKUP_EVERY

    async def _back_up(self, now: datetime) -> None:
        folder, db = self.config.backups, self.config.db
        try:
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            before = backups.found(folder, db)[-1:]
            made = backups.path_for(folder, db, now)
            await asyncio.to_thread(backups.write, db, made)
            if before and await self._differs(before[0].path, made):
                return  # all the older ones stay for now
            await asyncio.to_thread(backups.prune, folder, db, now)
        except (OSError, backups.Faulty, *copies.UNREADABLE) as problem:
            log.error("no backup: %s", problem)
            self.tell(words.NO_BACKUP_OPERATOR.format(problem=problem))

    async def _differs(self, before: Path, made: Path) -> bool:
        """Whether something that never changes did, in this last hour: SQLite does not notice it, two copies do."""
        found = await asyncio.to_thread(copies.changed, before, made)
        if found:
            log.error("the database is damaged: %s; the last good backup: %s", found[0], before)
            self.tell(words.DAMAGED_SINCE_OPERATOR.format(problem=found[0], file=before))
        return bool(found)

    def _compact(self) -> None:
        """After somebody was erased, and while nobody has bands on: everybody waits for it."""
        try:
            wanted = settings.get(self.store, "compact") and not duties.banded(self.store)
            if wanted and erasure.compact(self.store):
                settings.forget(self.store, "compact")
        except sqlite3.Error as problem:
            if not cannot_write(problem):
                raise
            log.error("what was erased is not overwritten yet: %s", problem)

    async def _check(self) -> None:
        damage = await asyncio.to_thread(copies.damage, self.config.db)
        if damage:
            log.error("the database is damaged: %s", damage[0])
            self.tell(words.DAMAGED_OPERATOR.format(problem=damage[0]))
