"""When the database cannot be written: nothing is confirmed, whoever must know is told, and it is tried again."""

import asyncio
import logging
import sqlite3
from collections.abc import Awaitable, Callable, Iterable
from contextlib import suppress

from bot.engine import updates
from bot.net.direct import Direct
from bot.net.intake import Numbered
from conversations.words import engine as words
from core.store import duties, people, settings
from core.store.connection import Store
from core.store.people import Role

log = logging.getLogger("cuffline")

RETRY_S = 5.0  # the worker must beat more often than the watchdog allows

Pause = Callable[[float], Awaitable[None]]


class Disk:
    """`good` is set while writing works. `operator` is the number of whoever runs this."""

    def __init__(self, store: Store, direct: Direct, operator: int, pause: Pause = asyncio.sleep) -> None:
        self.store = store
        self.direct = direct
        self.operator = operator
        self.pause = pause
        self.good = asyncio.Event()
        self.good.set()
        self.warned: set[int] = set()

    def failed(self, problem: sqlite3.Error, received: Iterable[Numbered] = ()) -> None:
        """A commit failed: warn those who wrote and all who have bands on, their coaches, the operator."""
        if self.good.is_set():  # each try would say it again, and a log may be on the same disk
            log.error("the database cannot be written: %s", problem)
        self.good.clear()
        self._tell(self.operator, words.CANNOT_KEEP_OPERATOR.format(problem=problem))
        for chat in dict.fromkeys([*self._banded(), *_senders(received)]):
            self._warn(chat)

    def _banded(self) -> list[int]:
        with suppress(sqlite3.Error):
            found = (people.by_id(self.store, person) for person in duties.banded(self.store))
            return [person.chat for person in found if person.chat is not None]
        return []

    def _warn(self, chat: int) -> None:
        try:
            person = people.by_chat(self.store, chat)
            coach = people.by_id(self.store, person.coach) if person and person.coach else None
        except sqlite3.Error:  # not even readable: whoever it is
            self._tell(chat, words.CANNOT_KEEP)
            return
        if person is None or chat == self.operator:
            return  # a stranger; whoever has been told already
        if person.role is Role.COACH:
            self._tell(chat, words.CANNOT_KEEP_OTHER_COACH)
            return
        self._tell(chat, words.CANNOT_KEEP)
        if coach is not None and coach.chat is not None:
            self._tell(coach.chat, words.CANNOT_KEEP_COACH.format(name=person.name))

    def _tell(self, chat: int, text: str) -> None:
        self.warned.add(chat)
        self.direct.say(chat, text)

    async def recover(self, beat: Callable[[], None]) -> None:
        """Return when writing works, and say so when it did not. `beat` is called at every try: we are alive."""
        if self.good.is_set():
            return
        while not self.good.is_set():
            beat()
            await self.pause(RETRY_S)
            with suppress(sqlite3.Error):
                settings.try_to_write(self.store)
                self.good.set()
        log.warning("the database can be written again")
        for chat in self.warned:
            self.direct.say(chat, words.KEPT_AGAIN)
        self.warned.clear()


def _senders(received: Iterable[Numbered]) -> list[int]:
    chats = []
    for number, body in received:
        with suppress(KeyError, TypeError, ValueError):
            chats.append(updates.read(number, body).chat)
    return [chat for chat in chats if chat > 0]
