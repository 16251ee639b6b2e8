"""A practice on a virtual clock: the same engine, outbox and Bot API, without sockets and without waiting."""

import heapq
import tempfile
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path

from telegram import Bot

from bot.clocks.clock import SetClock
from bot.config import Config
from bot.engine import Engine
from bot.local.api import LocalApi
from bot.local.inprocess import InProcess
from bot.local.messages import ChatMessage
from bot.local.phone import Phone
from bot.making import drawing
from bot.net import intake
from bot.net.outbox import Outbox
from core.store import duties
from core.store.connection import Store

TOKEN = "1:play"

Answer = tuple[str, float]  # a button's label or words, and the seconds it takes
Watcher = Callable[[str, bool, str, datetime], None]  # who, from the bot?, text, when
Mind = Callable[[ChatMessage, datetime], Answer | None]


@dataclass(order=True)
class Deed:
    """Something a person does at a time."""

    at: datetime
    no: int
    act: Callable[[], None] = field(compare=False)


class Stage:
    """Everything that acts. `watch` is called with every new message: (who, from the bot?, text).

    `in_memory`: without a file, which is faster, and for those who never read it from outside.
    """

    def __init__(
        self,
        start: datetime,
        coaches: tuple[int, ...],
        zone: str,
        watch: Watcher,
        in_memory: bool = False,
    ) -> None:
        self.clock = SetClock(start)
        self.api = LocalApi(self.clock.now, TOKEN)
        self.folder = tempfile.TemporaryDirectory(prefix="cuffline-play-")
        file = Path(self.folder.name) / "play.db"
        # Nothing here must survive a power cut.
        store = Store(":memory:" if in_memory else file, synchronous="OFF")
        request = InProcess(self.api)
        self.bot = Bot(TOKEN, request=request, get_updates_request=request)
        config = Config(TOKEN, "http://127.0.0.1", file, coaches, zone)
        self.engine = Engine(store, config, self.clock.now, "cuffline_play_bot")
        self.outbox = Outbox(store, self.bot, self.clock.now, drawing.draw, self.engine.second_contact)
        self.phones: dict[int, Phone] = {}
        self.minds: dict[int, Mind] = {}
        self.seen: dict[int, int] = {}
        self.deeds: list[Deed] = []
        self.watch = watch
        self.count = 0
        self.offset: int | None = None
        self.letters_at: datetime | None = None  # when those that wait may be tried

    def add(self, number: int, name: str, mind: Mind) -> Phone:
        """A person with a phone and a mind that answers."""
        self.phones[number] = self.api.add_phone(number, name)
        self.minds[number], self.seen[number] = mind, 0
        return self.phones[number]

    def at(self, when: datetime, act: Callable[[], None]) -> None:
        """Let something happen at a time."""
        self.count += 1
        heapq.heappush(self.deeds, Deed(when, self.count, act))

    def types(self, number: int, text: str, when: datetime | None = None) -> None:
        """A person types."""
        self.at(when or self.clock.now(), lambda: self._type(number, text))

    def _type(self, number: int, text: str) -> None:
        self.watch(self.phones[number].name, False, text, self.clock.now())
        self.phones[number].types(text)

    async def run(self, until: datetime) -> None:
        """Let it all happen until a time."""
        await self.bot.initialize()
        while True:
            await self.settle()
            following = self._next()
            if following is None or following > until:
                self.clock.skip_to(until)
                return
            self.clock.skip_to(following)
            while self.deeds and self.deeds[0].at <= self.clock.now():
                heapq.heappop(self.deeds).act()

    def _next(self) -> datetime | None:
        due = duties.next_due(self.engine.store)
        deed = self.deeds[0].at if self.deeds else None
        times = [at for at in (due, deed, self.letters_at) if at is not None]
        return max(min(times), self.clock.now()) if times else None

    async def settle(self) -> None:
        """Intake, work, sending and reading, until nobody has anything to say at this moment."""
        first = True
        while True:
            updates = await intake.fetch(self.bot, self.offset, 0)
            if updates:
                self.engine.receive([(update["update_id"], update) for update in updates])
                self.offset = updates[-1]["update_id"] + 1
            worked = self.engine.work()
            if not (first or updates or worked):
                return  # and nothing new to send
            self.letters_at = await self.outbox.flush()
            self._read()
            first = False

    def _read(self) -> None:
        for number, phone in self.phones.items():
            fresh = [message for message in phone.history if message.id > self.seen[number]]
            for message in fresh:
                self.seen[number] = message.id
                if not message.mine:
                    self.watch(phone.name, True, message.text or "[picture]", self.clock.now())
                    self._answer(number, message)

    def _answer(self, number: int, message: ChatMessage) -> None:
        answer = self.minds[number](message, self.clock.now())
        if answer is None:
            return
        text, seconds = answer
        self.at(self.clock.now() + timedelta(seconds=seconds), lambda: self._do(number, message, text))

    def _do(self, number: int, message: ChatMessage, text: str) -> None:
        labels = [label for row in message.buttons for label, _ in row]
        self.watch(self.phones[number].name, False, f"[{text}]" if text in labels else text, self.clock.now())
        if text in labels:
            self.phones[number].taps(message.id, text)
        else:
            self.phones[number].types(text)

    def close(self) -> None:
        """Put everything away."""
        self.engine.store.close()
        self.folder.cleanup()
