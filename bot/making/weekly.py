"""A coach's week, at its time or asked for: read from a copy of the database, in a process of its own."""

import asyncio
import logging
from collections.abc import Callable, Iterator, Sequence
from contextlib import AbstractContextManager
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

import msgspec

from bot.engine import Engine
from bot.engine.coach import digest
from bot.making.slow_work import Failed, SlowWork
from core.store import duties, people
from core.store.duties import Planned
from core.store.people import Person

log = logging.getLogger("cuffline")

IN_A_COMMIT = 20  # clients who are told their week, 6 ms or so: nobody's answer waits longer; own choice
BREATH_S = 0.05  # between two such commits, for whoever wrote meanwhile; own choice
T = TypeVar("T")

# A commit that fails on a full disk is told and tried again.
Watch = Callable[[], AbstractContextManager[None]]


class Weekly:
    """Begins with a planned talk that stays open until its week is told, so that a crash loses none."""

    def __init__(
        self, engine: Engine, slow_work: SlowWork, db: Path, watched: Watch, told: Callable[[], None]
    ) -> None:
        self.engine = engine
        self.slow_work = slow_work
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
        wanted = {"what": "week", "db": str(self.db), "talk": talk, "now": now.isoformat()}
        try:
            week = msgspec.json.decode(await self.slow_work.done(wanted), type=digest.Week)
        except (Failed, OSError, msgspec.DecodeError) as problem:
            log.error("no week from a process of its own: %s", problem)
            self._in_one_commit(talk, lambda coach: digest.at_once(self.engine, coach, talk, now), ends=now)
        else:
            await self._tell(talk, week, now)
        self.told()

    def _again(self, talk: Planned, week: digest.Week, now: datetime) -> bool:
        """A week that names somebody who is gone meanwhile is made anew."""
        if not digest.names_somebody_gone(self.engine, week):
            return False
        self._in_one_commit(talk, lambda coach: duties.talk_later(self.engine.store, talk.id, now))
        return True

    async def _tell(self, talk: Planned, week: digest.Week, now: datetime) -> None:
        """The clients first, some in a commit; then the coach, with the end of the talk."""
        name = digest.name_of(talk)
        if self._again(talk, week, now):
            return
        for some in batched(week.recaps, IN_A_COMMIT):
            if not self._in_one_commit(talk, partial(self._tell_clients, name, some, now)):
                return
            await asyncio.sleep(BREATH_S)
        if self._again(talk, week, now):
            return
        self._in_one_commit(talk, lambda coach: digest.told(self.engine, coach, talk, week, now), ends=now)

    def _tell_clients(self, name: str, some: Sequence[tuple[int, str]], now: datetime, coach: Person) -> None:
        digest.tell_clients(self.engine, name, some, now)

    def _in_one_commit(
        self, talk: Planned, act: Callable[[Person], None], ends: datetime | None = None
    ) -> bool:
        """False: the talk is gone meanwhile, or its coach, or the disk is full. `ends`: the talk is done, at that time."""
        store, done = self.engine.store, False
        with self.watched(), store.transaction():
            coach = self._still_wanted(talk)
            if coach is not None:
                if ends is not None:
                    duties.talk_done(store, talk.id, ends)
                act(coach)
                done = True
        return done

    def _still_wanted(self, talk: Planned) -> Person | None:
        coach = people.find(self.engine.store, talk.person)
        found = duties.open_talk(self.engine.store, talk.id)
        same = found is not None and (found.dialogue, found.about) == (talk.dialogue, talk.about)
        return coach if same else None


def batched(all_of_them: Sequence[T], size: int) -> Iterator[Sequence[T]]:
    """So many at a time, in order."""
    return (all_of_them[at : at + size] for at in range(0, len(all_of_them), size))


def made(wanted: dict[str, Any]) -> bytes:
    """In the other process: the week as JSON, from a copy of the database."""
    from bot.database.opened import reading

    now, talk = datetime.fromisoformat(wanted["now"]), msgspec.convert(wanted["talk"], Planned)
    with reading(Path(wanted["db"])) as engine:
        engine.clock = lambda: now
        coach = people.by_id(engine.store, talk.person)
        return msgspec.json.encode(digest.make_for(engine, coach, talk, now))
