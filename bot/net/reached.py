"""Whether the server still reaches our webhook. A certificate that ran out, or a proxy that is down, leaves the bot deaf
while all else looks well: it answers nobody and hears no stop.

https://core.telegram.org/bots/api#webhookinfo
"""

import asyncio
import logging
from collections.abc import Callable
from datetime import datetime

from telegram import Bot
from telegram.error import TelegramError

from bot.net.intake import Called
from conversations.words import engine as words

log = logging.getLogger("cuffline")

LOOK_EVERY_S = 120.0  # own choice
Tell = Callable[[str], None]


class Reached:
    """Looks at what the server says about the webhook.

    `tell` says something to the operator, `answered` is called by each answer that names no new failure.
    """

    def __init__(self, bot: Bot, address: str, tell: Tell, answered: Called = lambda: None) -> None:
        self.bot = bot
        self.address = address
        self.tell = tell
        self.answered = answered
        self.failed_at: datetime | None = None  # the newest failure that the server spoke of

    async def lost(self) -> None:
        """Return when the webhook is no longer ours: another program took it away."""
        ours = True
        while ours:
            await asyncio.sleep(LOOK_EVERY_S)
            ours = await self.look()
        log.warning("the webhook was taken away by another program")
        self.tell(words.CROWDED_OPERATOR)

    async def look(self) -> bool:
        """Whether it is still ours. Told is a failure that is new since the last look, while messages wait."""
        try:
            info = await self.bot.get_webhook_info()
        except TelegramError:
            return True  # no network: that is noticed elsewhere
        before, self.failed_at = self.failed_at, info.last_error_date
        again = before is not None and self.failed_at is not None and self.failed_at > before
        if again and info.pending_update_count:
            log.error("the server does not reach the webhook: %s", info.last_error_message)
            said = words.NOT_REACHED_OPERATOR
            self.tell(said.format(count=info.pending_update_count, problem=info.last_error_message))
        else:
            self.answered()
        return info.url == self.address
