"""A coach's week at its time: read from a copy of the database, in a process of its own."""

import asyncio
import logging
from collections.abc import Callable
from contextlib import AbstractContextManager
from datetime import datetime
from pathlib import Path
from typing import Any

import msgspec

from bot.aside import Aside, Failed
from bot.engine import Engine
from bot.engine.coach import digest
from core.store import duties, people
from core.store.duties import Planned

log = logging.getLogger("cuffline")

Watch = Callable[
    [], AbstractContextManager[None]
]  # a commit that fails on a full disk is told and tried again


class Weekly:
    """Begins with a planned talk that stays open until its week is told, so that a crash loses none."""

    def __init__(
        self, engine: Engine, aside: Aside, db: Path, watched: Watch, told: Callable[[], None]
    ) -> None:
        self.engine = engine
        self.aside = aside
        self.db = db
        self.watched = watched
        self.told = told
        self.under_way: dict[int, asyncio.Task[None]] = {}

    def begin(self, talk: Planned, now: datetime) -> None:
        """Make it beside the loop, once."""
        if talk.id not in self.under_way:
            task = asyncio.get_running_loop().create_task(self._make(talk, now))
            self.under_way[talk.id] = task
            task.add_done_callback(lambda _: self.under_way.pop(talk.id))

    async def _make(self, talk: Planned, now: datetime) -> None:
        wanted = {"what": "week", "db": str(self.db), "coach": talk.person, "now": now.isoformat()}
        week = None
        try:
            week = msgspec.json.decode(await self.aside.done(wanted), type=digest.Week)
        except (Failed, OSError, msgspec.DecodeError) as problem:
            log.error("no week from a process of its own: %s", problem)
        with self.watched():
            self._tell(talk, week, now)
        self.told()

    def _tell(self, talk: Planned, week: digest.Week | None, now: datetime) -> None:
        """In one commit with the end of the talk; made here where no process could."""
        engine = self.engine
        with engine.store.transaction():
            coach = people.find(engine.store, talk.person)
            found = duties.open_talk(engine.store, talk.id)
            if coach is None or found is None or (found.dialogue, found.about) != (talk.dialogue, talk.about):
                return
            duties.talk_done(engine.store, talk.id, now)
            digest.weekly(engine, coach, week or digest.make_for_all(engine, coach, now), now)


def made(wanted: dict[str, Any]) -> bytes:
    """In the other process: the week as JSON, from a copy of the database."""
    from bot.terminal.opened import reading

    now = datetime.fromisoformat(wanted["now"])
    with reading(Path(wanted["db"])) as engine:
        engine.clock = lambda: now
        coach = people.by_id(engine.store, wanted["coach"])
        return msgspec.json.encode(digest.make_for_all(engine, coach, now))
