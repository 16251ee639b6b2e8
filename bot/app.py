"""The running program: intake, work, wake-ups, sending and the countdown, side by side in one loop."""

import asyncio
import contextlib
import faulthandler
import logging
import signal
import sqlite3
from collections.abc import Callable, Iterator
from datetime import timedelta
from functools import partial

from apscheduler.schedulers.asyncio import AsyncIOScheduler
from telegram import Bot
from telegram.error import InvalidToken

from bot import numbers, watchdog
from bot.clocks import keeping_time
from bot.clocks.clock import Clock
from bot.config import Config, Wrong
from bot.database import held, sound
from bot.database.disk import Disk
from bot.database.upkeep import Upkeep
from bot.engine import Engine
from bot.making.slow_work import SlowWork
from bot.making.weekly import Weekly
from bot.net import intake, webhook
from bot.net.connected import connected
from bot.net.countdown import Countdown
from bot.net.direct import Direct
from bot.net.outbox import Outbox
from bot.watchdog import Pulse
from conversations.words import engine as words
from core.store import duties, inbox
from core.store.connection import Store, cannot_write

log = logging.getLogger("cuffline")

SWEEP_S = 5


class Program:
    """Everything that runs. `kick` is set whenever there may be something to do."""

    def __init__(self, config: Config, clock: Clock, store: Store, bot: Bot) -> None:
        self.config = config
        self.clock = clock
        self.bot = bot
        keeping_time.take_up(store, clock.steady)
        self.engine = Engine(store, config, clock.now, bot.username)
        self.slow_work = SlowWork()
        self.outbox = Outbox(store, bot, clock.now, self.slow_work.draw, self.engine.second_contact)
        self.weekly = Weekly(
            self.engine, self.slow_work, config.db, self._disk_watched, lambda: self.kick.set()
        )
        self.engine.make_week = self.weekly.begin
        self.countdown = Countdown(bot, self.engine.countdowns, clock.now)
        self.direct = Direct(bot, clock.now)
        self.disk = Disk(store, self.direct, config.coaches[0])
        self.upkeep = Upkeep(config, clock, store, self._tell_operator)
        self.kick = asyncio.Event()
        self.post = asyncio.Event()
        self.pulse = Pulse(clock.elapsed)
        self.line = Pulse(clock.elapsed, watchdog.DEAF_S)
        self.scheduler = AsyncIOScheduler(
            timezone="UTC", job_defaults={"misfire_grace_time": None, "coalesce": True}
        )

    def receive(self, updates: list[intake.Numbered]) -> None:
        """Raw updates, committed when this returns. Raises NotKept: they must come again."""
        try:
            self.engine.receive(updates)
        except sqlite3.Error as problem:
            if not cannot_write(problem):
                raise
            self.disk.failed(problem, updates)
            raise intake.NotKept from problem
        finally:
            self.kick.set()

    async def work(self) -> None:
        """Handle and look for what is due, whenever kicked."""
        while True:
            self.kick.clear()
            await self.disk.recover(self.pulse.beat)
            with self._disk_watched():
                while self.engine.work():
                    self.pulse.beat()
                    self._may_send()
                    await asyncio.sleep(0)
                keeping_time.keep(self.engine, self.clock.steady)
                self._plan_wake()
            self.pulse.beat()
            self._may_send()
            with contextlib.suppress(TimeoutError):  # by the monotonic clock, whatever the wall clock does
                async with asyncio.timeout(SWEEP_S):
                    await self.kick.wait()

    def _may_send(self) -> None:
        self.post.set()
        self.outbox.look()

    @contextlib.contextmanager
    def _disk_watched(self) -> Iterator[None]:
        """A commit that fails is rolled back, told, and tried again by whoever is next."""
        try:
            yield
        except sqlite3.Error as problem:
            if not cannot_write(problem):
                raise
            self.disk.failed(problem, self._unhandled())
            self.kick.set()

    def _unhandled(self) -> list[intake.Numbered]:
        with contextlib.suppress(sqlite3.Error):
            return inbox.unhandled(self.engine.store)
        return []

    async def take_in(self) -> None:
        """Get updates for ever: posted to us where a webhook is set, else fetched."""
        if self.config.webhook:
            await webhook.stand(self.bot, self.config, self.receive, self._tell_operator, self.line.beat)
        else:
            crowded = partial(self._tell_operator, words.CROWDED_OPERATOR)
            await intake.fetch_all(self.bot, self.receive, intake.Line(crowded, self.line.beat))

    def _tell_operator(self, text: str) -> None:
        self.direct.say(self.config.coaches[0], text)

    def _plan_wake(self) -> None:
        soonest = duties.next_due(self.engine.store)
        if soonest is not None:
            at = self.clock.on_the_wall(soonest)  # the scheduler knows only the wall clock's time
            self.scheduler.add_job(self._tick, "date", run_date=at, id="soonest", replace_existing=True)

    async def _tick(self) -> None:
        """The scheduler's jobs: a coroutine, because it runs plain functions in a thread of their own."""
        self.kick.set()

    async def send(self) -> None:
        """Send whenever there is something, and again when a delayed letter is due."""
        while True:
            self.post.clear()
            await self.disk.good.wait()  # a letter that cannot be marked as sent would go out again and again
            again = None
            with self._disk_watched():
                again = await self.outbox.flush()
            wait = None if again is None else max(0.05, (again - self.clock.now()).total_seconds())
            with contextlib.suppress(TimeoutError):
                async with asyncio.timeout(wait):
                    await self.post.wait()

    async def skip(self) -> str:
        """Move the clock to what comes next (only where it may be shifted). Says to when."""
        soonest = duties.next_due(self.engine.store)
        if soonest is None:
            return "Nothing is planned."
        self.clock.skip_to(soonest + timedelta(milliseconds=1))
        self.kick.set()
        return f"It is {self.clock.now():%a %d %b %H:%M:%S} UTC now."

    async def run(self, ready: Callable[[], None] = lambda: None) -> None:
        """Run until cancelled."""
        self.scheduler.start()
        self.engine.resume()
        ready()
        try:
            async with asyncio.TaskGroup() as tasks:
                tasks.create_task(self.work())
                tasks.create_task(self.send())
                tasks.create_task(self.slow_work.get_ready())
                tasks.create_task(self.countdown.run())
                tasks.create_task(self.take_in())
                tasks.create_task(self.upkeep.run())
                tasks.create_task(watchdog.feed(self.pulse, alive=watchdog.rearm))
                tasks.create_task(watchdog.ping(self.pulse, self.config.ping_url, line=self.line))
        finally:
            watchdog.notify("STOPPING=1")
            faulthandler.cancel_dump_traceback_later()
            self.scheduler.shutdown(wait=False)


async def serve(
    config: Config, clock: Clock, ready: Callable[[Program], None] = lambda program: None
) -> None:
    """Run the bot until SIGTERM or SIGINT, then stop cleanly. Raises `Wrong` when another one has the database."""
    if not config.coaches:
        await _tell_numbers(config)
        return
    with held.by_this_process(config.db):
        sound.fit_to_run(config)
        with held.backups_by_this_process(config.backups, config.db):
            await _serve(config, clock, ready)


async def _tell_numbers(config: Config) -> None:
    async with connected(config) as app:
        telling = asyncio.ensure_future(numbers.answer_everybody(app.bot))
        _stopped_by_signals(telling)
        try:
            await telling
        except asyncio.CancelledError:
            log.info("stopped")
        except ExceptionGroup as group:
            raise the_one(group) from None


def _stopped_by_signals(running: asyncio.Future[None]) -> None:
    loop = asyncio.get_running_loop()
    for name in (signal.SIGTERM, signal.SIGINT):
        with contextlib.suppress(NotImplementedError):
            loop.add_signal_handler(name, running.cancel)


async def _serve(config: Config, clock: Clock, ready: Callable[[Program], None]) -> None:
    store = Store(config.db)
    async with connected(config) as app:
        program = Program(config, clock, store, app.bot)
        running = asyncio.ensure_future(program.run(lambda: ready(program)))
        _stopped_by_signals(running)
        try:
            await running
        except asyncio.CancelledError:
            log.info("stopped")
        except ExceptionGroup as group:
            raise the_one(group) from None
        finally:
            store.close()


def the_one(group: ExceptionGroup[Exception]) -> Exception:
    """What the operator can act on (settings, token), if that is what ended the tasks; else all of it."""
    for problem in group.exceptions:
        if isinstance(problem, Wrong | InvalidToken):
            return problem
    return group
