"""Sending what the outbox holds: one letter in flight per chat, several chats at once, alerts first.

No letter that somebody waits for waits for another chat's: each is on its own once it has begun, and what can
wait goes out at a pace that leaves room for it. An alert begins at once, also in a chat
where something slow is on its way. What lands within a few milliseconds is written down in one commit.

After an outage the first answer to any letter sets all alerts going at once, and their next gaps are short again:
what failed meanwhile says nothing about now. A wait that the server asks for (429) is kept whatever else happens.

Delivery is at least once: the server offers no key against doubles, so after a crash a message (never a count
of reps) may come twice.
"""

import asyncio
import logging
import sqlite3
from collections.abc import Callable, Collection
from contextlib import suppress
from datetime import datetime, timedelta

from telegram import Bot
from telegram.error import BadRequest, Forbidden, RetryAfter, TelegramError

from bot.net import gone
from bot.net.pace import Pace
from bot.net.sending import Draw, Sender
from core.store import mail
from core.store.connection import Store, cannot_write
from core.store.mail import Priority, Waiting
from core.store.people import Person

log = logging.getLogger("cuffline")

LONGEST_GAP_S = {True: 4.0, False: 30.0}  # between tries, by whether it is an alert; own caution, no source
FIRST_GAP_S = 0.5  # after the first failed try, then twice as long each time; own choice
# So long without any answer, and failed tries tell nothing any more; own choice.
OUTAGE = timedelta(seconds=10)
ALL_PAUSE = timedelta(seconds=1)  # 429 from two chats within it pauses all
AT_ONCE = 20  # letters of each kind in flight: alerts, what somebody waits for, what can wait; own choice
ALERTS, AWAITED = (Priority.ALERT,), (Priority.SESSION, Priority.TALK)
CAN_WAIT = (Priority.REMINDER, Priority.DIGEST)
TOGETHER_S = 0.02  # what lands within it shares a commit; own choice

# How the server refuses a chat with somebody who never wrote: as out of reach as one who blocked the bot. From memory.
NOBODY_THERE = "chat not found"
NO_USE_LATE = ("answer", "inline")  # they only stop a spinner, and the server forgets what they answer
Note = Callable[[], None]  # writes down what became of a letter, in the caller's transaction


class Outbox:
    """Sends until nothing waits. `draw` makes the picture a letter names, `second` is a client's second contact."""

    def __init__(
        self,
        store: Store,
        bot: Bot,
        now: Callable[[], datetime],
        draw: Draw,
        second: Callable[[Person], Person | None] = lambda client: None,
    ) -> None:
        self.store = store
        self.second = second
        self.now = now
        self.sender = Sender(store, bot, now, draw)
        self.pace = Pace()
        self.paused_until: datetime | None = None
        self.last_pause: tuple[int, datetime] | None = None
        self.silent_since: datetime | None = None  # no call was answered since then
        self.back = False  # the first answer after an outage
        self.flying: dict[int, tuple[Waiting, asyncio.Task[None]]] = {}  # by the letter's id
        self.landed: dict[int, Note] = {}
        self.problem: BaseException | None = None
        self.news = asyncio.Event()

    def look(self) -> None:
        """There may be new letters: a flush under way looks for them now."""
        self.news.set()

    async def flush(self) -> datetime | None:
        """Send all that may go now; when to come back for what must wait (None: nothing waits).

        Raises sqlite3.Error when it cannot be written down what was sent; that is kept, and tried again first.
        """
        self.news = asyncio.Event()
        self.flying = {one: flight for one, flight in self.flying.items() if not flight[1].cancelled()}
        try:
            while True:
                self.news.clear()
                self._write_down()
                again = self._begin()
                if not self.flying:
                    return again
                await self._something_new(again)
        except asyncio.CancelledError:
            self._stop()
            raise

    async def _something_new(self, again: datetime | None) -> None:
        """Wait until a letter has landed, there may be new ones, or a delayed one may be tried."""
        wait = None if again is None else (again - self.now()).total_seconds()
        with suppress(TimeoutError):
            async with asyncio.timeout(wait):
                await self.news.wait()

    def _stop(self) -> None:
        for _, task in self.flying.values():
            task.cancel()
        with suppress(sqlite3.Error):
            self._write_down()

    def _write_down(self) -> None:
        """What has landed, in one commit."""
        if self.problem is not None:
            problem, self.problem = self.problem, None
            raise problem
        if not self.landed:
            return
        with self.store.transaction():
            for note in self.landed.values():
                note()
            if self.back:
                mail.alerts_now(self.store, self.now())
        self.back = False
        for one in self.landed:
            self.flying.pop(one, None)
        self.landed.clear()

    def _begin(self) -> datetime | None:
        """Send what may go; when to come back for the rest."""
        now = self.now()
        if self._paused(now):
            return self.paused_until
        for kind in (ALERTS, AWAITED):
            self._begin_some(kind, self._room(kind), now)
        room = min(self._room(CAN_WAIT), self.pace.room(now))
        begun, more = self._begin_some(CAN_WAIT, room, now)
        self.pace.took(begun)
        times = [mail.next_letter_at(self.store, now), self.pace.next_at(now) if more else None]
        return min((at for at in times if at is not None), default=None)

    def _paused(self, now: datetime) -> bool:
        """Whether all wait; not for a time that was wrong, once the clock was set back."""
        ahead = self.last_pause is not None and self.last_pause[1] > now
        return self.paused_until is not None and now < self.paused_until and not ahead

    def _room(self, kind: Collection[Priority]) -> int:
        return AT_ONCE - sum(one.letter.priority in kind for one, _ in self.flying.values())

    def _begin_some(self, kind: Collection[Priority], room: int, now: datetime) -> tuple[int, bool]:
        """How many began; whether more wait than there is room for."""
        found = mail.waiting(self.store, now, room + 1, kind, self.flying)
        for one in found[:room]:
            self.flying[one.id] = (one, asyncio.create_task(self._fly(one)))
        return len(found[:room]), len(found) > room

    async def _fly(self, one: Waiting) -> None:
        try:
            self.landed[one.id] = await self._one(one)
        except asyncio.CancelledError:
            raise
        except BaseException as problem:
            self.flying.pop(one.id, None)
            self.problem = problem
        if len(self.landed) >= len(self.flying):
            self.news.set()
        else:
            asyncio.get_running_loop().call_later(TOGETHER_S, self.news.set)

    async def _one(self, one: Waiting) -> Note:
        """Send a letter; what to write down about it."""
        try:
            message = await self._heard(one)
        except RetryAfter as wait:
            return self._slow_down(one, wait)
        except Forbidden:
            return lambda: self._unreachable(one)
        except BadRequest as problem:
            if NOBODY_THERE in problem.message.lower():
                return lambda: self._unreachable(one)
            log.warning("letter %s refused: %s", one.id, problem.message)
            return self._drop(one, "refused")
        except TelegramError as problem:
            return self._again(one, type(problem).__name__)
        except Exception as problem:
            if cannot_write(problem):
                raise
            log.exception("letter %s cannot be made", one.id)  # a bug of ours must not hold up everybody
            return self._drop(one, "cannot be made")
        at, secret = self.now(), one.letter.kind == mail.INVITATION
        return lambda: mail.sent(self.store, one.id, message, at, secret)

    async def _heard(self, one: Waiting) -> int | None:
        """Send it and notice whether the server answers at all; its own failures (5xx) are no answer."""
        try:
            message = await self._send(one)
        except (RetryAfter, Forbidden, BadRequest):
            self._answered()
            raise
        except TelegramError:
            self.silent_since = self.silent_since or self.now()
            raise
        self._answered()
        return message

    def _answered(self) -> None:
        since, self.silent_since = self.silent_since, None
        self.back = self.back or (since is not None and self.now() - since >= OUTAGE)

    async def _send(self, one: Waiting) -> int | None:
        return await self.sender.send(one.letter)

    def _drop(self, one: Waiting, why: str) -> Note:
        return lambda: mail.drop(self.store, one.id, why)

    def _again(self, one: Waiting, why: str) -> Note:
        if one.letter.kind in NO_USE_LATE:
            return self._drop(one, why)
        gap = min(LONGEST_GAP_S[is_alert(one)], FIRST_GAP_S * 2.0 ** min(one.attempts, 10))
        at = self.now() + timedelta(seconds=gap)
        return lambda: mail.later(self.store, one.id, at)

    def _slow_down(self, one: Waiting, wait: RetryAfter) -> Note:
        after = wait.retry_after
        gap = after if isinstance(after, timedelta) else timedelta(seconds=after)
        now = self.now()
        if (
            self.last_pause
            and self.last_pause[0] != one.letter.chat
            and abs(now - self.last_pause[1]) <= ALL_PAUSE
        ):
            self.paused_until = now + gap
        self.last_pause = (one.letter.chat, now)
        return lambda: mail.as_ordered(self.store, one.id, now + gap)

    def _unreachable(self, one: Waiting) -> None:
        mail.drop(self.store, one.id, "blocked")
        gone.mark(self.store, one.letter.chat, self.now(), self.second)


def is_alert(one: Waiting) -> bool:
    """Whether the letter overtakes the others of its chat."""
    return one.letter.priority is Priority.ALERT
