"""A bot without a coach: it answers everybody with their own number, keeps nothing, and does nothing else.

That is how a coach finds the number that goes into the settings.
"""

import asyncio
import logging
import time

from telegram import Bot
from telegram.error import TelegramError

from bot import watchdog
from bot.engine import updates
from bot.engine.updates import Kind
from bot.net import intake
from bot.watchdog import Pulse
from conversations.words import engine as words

log = logging.getLogger("cuffline")

NO_COACH = (
    "CUFFLINE_COACH is not set, so nobody is looked after: @%s only answers everybody with their number. "
    "Write to it, set CUFFLINE_COACH to your number, and start again"
)


async def answer_everybody(bot: Bot) -> None:
    """Answer until cancelled. Raises InvalidToken."""
    log.warning(NO_COACH, bot.username)
    chats: asyncio.Queue[int] = asyncio.Queue()

    def receive(numbered: list[intake.Numbered]) -> None:
        for chat in chats_of(numbered):
            chats.put_nowait(chat)

    pulse = Pulse(time.monotonic)
    pulse.beat()
    async with asyncio.TaskGroup() as tasks:
        # Else a service manager would take us for one that never starts, and end us every two minutes.
        tasks.create_task(watchdog.feed(pulse, alive=pulse.beat))
        tasks.create_task(intake.fetch_all(bot, receive))
        tasks.create_task(_answer(bot, chats))


async def _answer(bot: Bot, chats: asyncio.Queue[int]) -> None:
    while True:
        chat = await chats.get()
        try:
            await bot.send_message(chat, words.YOUR_NUMBER.format(number=chat))
        except TelegramError as problem:
            log.warning("no answer sent: %s", type(problem).__name__)


def chats_of(numbered: list[intake.Numbered]) -> list[int]:
    """The private chats that wrote, each once, in order; what cannot be read is left out."""
    found: list[int] = []
    for number, body in numbered:
        try:
            incoming = updates.read(number, body)
        except (KeyError, TypeError, ValueError):
            continue
        if incoming.kind in (Kind.TEXT, Kind.MEDIA) and incoming.chat not in found:
            found.append(incoming.chat)
    return found
