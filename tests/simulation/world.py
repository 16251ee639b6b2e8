"""Lets it all happen: people act, the process works, dies and starts again, and somebody looks after each event."""

import asyncio
import contextlib
import heapq
import logging
import random
import shutil
import sqlite3
import tempfile
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from telegram import Bot

from bot.config import Config
from bot.engine import Engine
from bot.local.inprocess import InProcess
from bot.local.messages import ChatMessage
from bot.net import intake
from bot.net.outbox import Outbox
from core.store import duties
from core.store.connection import Store
from tests.simulation.clock import TwoClocks
from tests.simulation.coaches import Coach
from tests.simulation.disk import Fate, Killed, Watched
from tests.simulation.line import TOKEN, InCircles, Line, Quiet, Weather
from tests.simulation.people import Client

START = datetime(2026, 3, 26, 5, tzinfo=UTC)  # a Thursday; in Europe the clocks change on the Sunday after
COACH, SECOND, FIRST_CLIENT = 1001, 1002, 2001
CIRCLES = 500  # events at one moment; more: something is due and never done
ROUNDS = 50  # of work at one moment
JOURNAL = 60


class Violation(AssertionError):
    """Something that must always hold does not hold."""


@dataclass(order=True)
class Deed:
    """Something that happens at a (true) time."""

    at: datetime
    no: int
    act: Callable[[], None] = field(compare=False)


class Tracebacks(logging.Handler):
    """Keeps what the engine logs when an update breaks a dialogue."""

    def __init__(self) -> None:
        super().__init__(logging.ERROR)
        self.last = ""

    def emit(self, record: logging.LogRecord) -> None:
        """Keep the newest."""
        self.last = self.format(record)


@dataclass
class Process:
    """What a kill takes away: everything but the file."""

    store: Store
    engine: Engine
    outbox: Outbox


async def draw(kind: str, body: dict[str, Any]) -> bytes:
    """Pictures are not the point here."""
    return b"picture"


class World:
    """One practice. `cast` and `watchman` are added by whoever sets the scene (`scene.py`)."""

    def __init__(self, dice: random.Random, weather: Weather, start: datetime = START) -> None:
        self.dice = dice
        self.clock = TwoClocks(start)
        self.line = Line(self.clock.now, random.Random(dice.random()), weather)
        self.line.arrived = self._arrived
        request = InProcess(self.line)
        self.bot = Bot(TOKEN, request=request, get_updates_request=request)
        self.folder = tempfile.TemporaryDirectory(prefix="cuffline-simulation-")
        self.path = Path(self.folder.name) / "practice.db"
        self.config = Config(TOKEN, "http://127.0.0.1", self.path, (COACH, SECOND), "Europe/Lisbon")
        self.fate = Fate()
        self.synchronous = "OFF"  # nothing here must survive a power cut, but where one is played
        self.resumes = False  # whether a process that starts says so to whoever is in a session
        self.process: Process | None = None
        self.clients: list[Client] = []
        self.waiting: list[Client] = []  # clients who may not train (`scene.they_try`)
        self.coaches: list[Coach] = []
        self.deeds: list[Deed] = []
        self.count = 0
        self.updates_sent = 0
        self.calm_since = start  # since when (wall clock) nothing disturbed the process
        self.again: datetime | None = None
        self.fresh: deque[tuple[int, ChatMessage]] = deque()
        self.journal: deque[str] = deque(maxlen=JOURNAL)
        self.aloud = False
        self.look: Callable[[], None] = lambda: None  # the invariants
        self.restarts: Callable[[], float] = lambda: 2.0  # seconds until a dead process starts again
        self.tracebacks = Tracebacks()
        logging.getLogger("cuffline").handlers = [self.tracebacks]
        logging.getLogger("cuffline").propagate = False

    @property
    def everybody(self) -> list[Client]:
        """All clients, also those who may not train."""
        return [*self.clients, *self.waiting]

    # --- what people do ---
    def after(self, seconds: float, act: Callable[[], None]) -> None:
        """Let something happen later."""
        self.at(self.clock.true + timedelta(seconds=seconds), act)

    def at(self, when: datetime, act: Callable[[], None]) -> None:
        """Let something happen at a (true) time."""
        self.count += 1
        heapq.heappush(self.deeds, Deed(when, self.count, act))

    def note(self, who: str, what: str) -> None:
        """For the journal."""
        line = f"{self.clock.now():%a %d %H:%M:%S}  {who}: {what}"
        self.journal.append(line)
        if self.aloud:
            print(line)

    def sent(self, number: int | str) -> None:
        """A phone sent something."""
        self.updates_sent += 1

    def _arrived(self, chat: int, message: ChatMessage) -> None:
        self.fresh.append((chat, message))

    def _listen(self) -> None:
        who = {one.phone.user_id: one for one in (*self.everybody, *self.coaches)}
        while self.fresh:
            chat, message = self.fresh.popleft()
            self.fate.changed.add("heard")
            self.note(f"-> {who[chat].name}", message.text.replace("\n", " / ") or "[picture]")
            who[chat].hears(message)

    def place_of(self, person: int) -> tuple[str, int, tuple[str, ...]] | None:
        """(session, exercise number, sides) of the bands that went on last, for a client's diary."""
        return None  # replaced by the scene

    # --- the process ---
    @property
    def store(self) -> Store:
        """The open store. AssertionError while the process is down."""
        assert self.process is not None, "the process is down"
        return self.process.store

    def open(self) -> Store:
        """The file, with its fate."""
        store = Store(self.path, synchronous=self.synchronous)
        store.connection = Watched(store.connection, self.fate)  # type: ignore[assignment]
        return store

    def start(self) -> None:
        """Start the process, unless it runs."""
        if self.process is not None:
            return
        self.line.dead = False
        store = self.open()
        try:
            engine = Engine(store, self.config, self.clock.now, "simulation_bot")
            if self.resumes:
                engine.resume()
        except (Killed, sqlite3.OperationalError) as why:
            store.connection.real.close()  # type: ignore[attr-defined]
            self._comes_back(why)
            return
        self.process = Process(store, engine, Outbox(store, self.bot, self.clock.now, draw))
        self.disturbed()
        self.note("*", "the bot starts")

    def disturbed(self) -> None:
        """From now on it is calm again."""
        self.calm_since = self.clock.now()

    def kill(self, why: BaseException | None = None, back: bool = True) -> None:
        """The process is gone, with all that is in memory."""
        if self.process is None:
            return
        self.line.dead = True
        connection: Any = self.process.store.connection
        connection.dead = True
        connection.real.close()
        self.process, self.again = None, None
        if back:
            self._comes_back(why)

    def _comes_back(self, why: BaseException | None) -> None:
        seconds = self.restarts()
        self.note("*", f"the bot is gone ({type(why).__name__}), back in {seconds:.0f} s")
        self.after(seconds, self.start)

    # --- running ---
    def run(self, **time: float) -> None:
        """Let time pass."""
        asyncio.run(self._run(self.clock.true + timedelta(**time)))

    async def _run(self, until: datetime) -> None:
        circles = 0
        while True:
            await self.settle()
            following = self._next()
            if following > until:
                self.clock.true = max(until, self.clock.true)
                return
            circles = 0 if following > self.clock.true else circles + 1
            if circles > CIRCLES:
                raise Violation("something is due at this moment and is never done")
            self.clock.true = max(following, self.clock.true)
            while self.deeds and self.deeds[0].at <= self.clock.true:
                heapq.heappop(self.deeds).act()

    def _next(self) -> datetime:
        times = [self.deeds[0].at] if self.deeds else []
        if self.process is not None:
            walls = (duties.next_due(self.process.store), self.again)
            times += [self.clock.truly(wall) for wall in walls if wall is not None]
        return min(times, default=datetime.max.replace(tzinfo=UTC))

    async def settle(self) -> None:
        """Intake, work, sending and reading, until nobody has anything to say at this moment."""
        busy = True
        while busy and self.process is not None:
            try:
                busy = await self._step(self.process)
            except InCircles as why:
                raise Violation(str(why)) from None
            except (Killed, sqlite3.OperationalError) as why:
                self.kill(why)
                for _ in range(25):  # letters in flight find out as well
                    await asyncio.sleep(0)
            self._listen()
            if self.process is not None:
                self.look()

    async def _step(self, process: Process) -> bool:
        busy = False

        def receive(updates: list[tuple[int, dict[str, Any]]]) -> None:
            nonlocal busy
            busy = True
            process.engine.receive(updates)

        with contextlib.suppress(Quiet):
            await intake.poll(self.bot, receive)
        if self.line.lost_poll:
            self.after(1, lambda: None)  # and then it is tried again
        rounds = 0
        while process.engine.work():
            busy, rounds = True, rounds + 1
            if rounds > ROUNDS:
                raise Violation("something is due at this moment and is never done")
        self.again = await process.outbox.flush()
        return busy

    def close(self) -> None:
        """Put everything away."""
        self.kill(back=False)
        self.folder.cleanup()
        shutil.rmtree(self.folder.name, ignore_errors=True)
