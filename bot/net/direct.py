"""The one way to say something that is not stored first: for when nothing can be stored."""

import asyncio
import logging
from collections.abc import Callable
from datetime import datetime, timedelta

from telegram import Bot
from telegram.error import TelegramError

log = logging.getLogger("cuffline")

APART = timedelta(minutes=10)  # the same words to the same chat; own choice


class Direct:
    """Says each thing to a chat at most once in ten minutes, and forgets it when it does not arrive."""

    def __init__(self, bot: Bot, now: Callable[[], datetime]) -> None:
        self.bot = bot
        self.now = now
        self.said: dict[tuple[int, str], datetime] = {}
        self.running: set[asyncio.Task[None]] = set()

    def say(self, chat: int, text: str) -> None:
        """Send it beside whatever else is going on; needs a running event loop."""
        now = self.now()
        if abs(now - self.said.get((chat, text), now - APART)) < APART:
            return
        self.said[chat, text] = now
        task = asyncio.get_running_loop().create_task(self._send(chat, text))
        self.running.add(task)  # the loop itself does not hold on to it
        task.add_done_callback(self.running.discard)

    async def _send(self, chat: int, text: str) -> None:
        try:
            await self.bot.send_message(chat, text)
        except TelegramError as problem:
            log.error("not even directly could chat %s be told: %s", chat, type(problem).__name__)

    async def done(self) -> None:
        """Wait until all that was said is on its way."""
        await asyncio.gather(*self.running)
