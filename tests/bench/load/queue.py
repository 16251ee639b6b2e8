"""An alert among thousands of reminders, on a server that takes 30 messages a second and refuses the rest."""

import asyncio
import time
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from telegram import Bot

from bot.local.api import LocalApi
from bot.local.inprocess import InProcess
from bot.local.refusals import refusal_for
from bot.making import drawing
from bot.net.outbox import Outbox
from core.store import mail
from core.store.connection import Store
from core.store.mail import Letter, Priority
from tests.bench.load.bots import TOKEN
from tests.bench.load.dialogue import COACH, FIRST_CLIENT

A_SECOND = 30
ALERT_AFTER_S = 2.5
LONGEST_S = 60.0


class Slow(LocalApi):
    """Takes 30 messages in any one second; the rest must come again after a second."""

    def __init__(self) -> None:
        super().__init__(lambda: datetime.now(UTC), TOKEN)
        self.taken: list[tuple[float, int]] = []  # when, to whom

    async def call(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        """As the server, with its limit."""
        if method.lower() != "sendmessage":
            return await super().call(method, params, files)
        now = time.monotonic()
        if len(self.taken) >= A_SECOND and now - self.taken[-A_SECOND][0] < 1:
            return refusal_for(429, 1).envelope()
        self.taken.append((now, int(params["chat_id"])))
        return await super().call(method, params, files)


async def alert_among(file: Path, reminders: int) -> tuple[int, float, float]:
    """Letters that went between the alert's commit and it, seconds until it was out, letters a second."""
    api, store = Slow(), Store(file)
    for chat in (COACH, *range(FIRST_CLIENT, FIRST_CLIENT + reminders)):
        api.add_phone(chat, "x")
    with store.transaction():
        for chat in range(FIRST_CLIENT, FIRST_CLIENT + reminders):
            mail.post(store, Letter(chat, {"text": "Today"}, priority=Priority.REMINDER), datetime.now(UTC))
    bot = Bot(TOKEN, request=InProcess(api), get_updates_request=InProcess(api))
    sending = asyncio.ensure_future(_sender(Outbox(store, bot, lambda: datetime.now(UTC), drawing.draw)))
    await asyncio.sleep(ALERT_AFTER_S)
    began, before = time.monotonic(), len(api.taken)
    with store.transaction():
        mail.post(store, Letter(COACH, {"text": "Alert"}, priority=Priority.ALERT), datetime.now(UTC))
    await api.wait(lambda: any(chat == COACH for _, chat in api.taken), LONGEST_S)
    sending.cancel()
    await asyncio.gather(sending, return_exceptions=True)
    place = next(place for place, (_, chat) in enumerate(api.taken) if chat == COACH)
    waited, gone = api.taken[place][0] - began, place - before
    store.close()
    return gone, waited, before / ALERT_AFTER_S


async def _sender(outbox: Outbox) -> None:
    while True:
        again = await outbox.flush()
        wait = 0.05 if again is None else (again - datetime.now(UTC)).total_seconds()
        await asyncio.sleep(max(0.05, wait))
