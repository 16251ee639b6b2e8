"""The rest running down: one silent message, edited at 20, 10 and 5 s. Not durable; late ones are dropped."""

import asyncio
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from telegram import Bot
from telegram.error import TelegramError

from conversations.words.session import REST_LEFT

SHOWN_AT = (20, 10, 5)
TICK_S = 0.25


@dataclass(slots=True)
class Shown:
    """The message of one running rest."""

    until: datetime
    message: int
    left: int


class Countdown:
    """Shows every rest in `running` (chat -> until)."""

    def __init__(self, bot: Bot, running: dict[int, datetime], now: Callable[[], datetime]) -> None:
        self.bot = bot
        self.running = running
        self.now = now
        self.shown: dict[int, Shown] = {}

    async def run(self) -> None:
        """Look at all rests, four times a second."""
        while True:
            await asyncio.gather(*(self.step(chat, until) for chat, until in list(self.running.items())))
            await asyncio.sleep(TICK_S)

    async def step(self, chat: int, until: datetime) -> None:
        """Show what one rest needs now."""
        left = round((until - self.now()).total_seconds())
        known = self.shown.get(chat)
        if left <= 0:
            self.running.pop(chat, None)
            self.shown.pop(chat, None)
            return
        try:
            if known is None or known.until != until:
                # A server that refuses is not asked again for this rest.
                self.shown[chat] = Shown(until, 0, 0)
                sent = await self.bot.send_message(
                    chat, REST_LEFT.format(left=left), disable_notification=True
                )
                self.shown[chat] = Shown(until, sent.message_id, left)
                return
            due = [at for at in SHOWN_AT if left <= at < known.left]
            if due:
                known.left = min(due)
                await self.bot.edit_message_text(REST_LEFT.format(left=known.left), chat, known.message)
        except TelegramError:
            return  # "not modified" is as good as done, and a late number is of no use
