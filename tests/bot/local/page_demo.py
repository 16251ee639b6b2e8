"""The page with an invented morning on it, to look at: `python tests/bot/local/page_demo.py [port]`."""

import asyncio
import io
import sys
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import matplotlib.pyplot as plt

from bot.local.api import LocalApi
from bot.local.http import serve

COACH, CLIENT = 1, 2


class Morning:
    """A clock that stands still until it is moved on, and the chats of one morning."""

    def __init__(self) -> None:
        self.time = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
        self.api = LocalApi(lambda: self.time)

    async def bot_says(self, chat_id: int, text: str, *labels: str, **params: Any) -> int:
        rows = [[{"text": label, "callback_data": label}] for label in labels]
        params |= {"chat_id": chat_id, "text": text, "reply_markup": {"inline_keyboard": rows}}
        return int((await self.api.call("sendMessage", params, {}))["result"]["message_id"])

    def later(self, **passed: int) -> None:
        self.time += timedelta(**passed)
        self.api.touch()


async def filled() -> Morning:
    """Return a morning with one of everything that the page can show."""
    morning = Morning()
    coach = morning.api.add_phone(COACH, "Coach")
    client = morning.api.add_phone(CLIENT, "Dana")
    coach.types("/start")
    await morning.bot_says(COACH, "Dana is waiting for your yes.\nNothing in the screening.", "Clear", "Hold")
    await _picture(morning, COACH)
    params = {"chat_id": COACH, "document.name": "sets.csv", "caption": "All sets, as a table"}
    await morning.api.call("sendDocument", params, {"document": b"set,reps\n1,31\n"})
    morning.later(minutes=3)
    typo = client.types("abuot 7")
    client.edits(typo, "about 7")
    await morning.bot_says(
        CLIENT,
        "Set 1 of 3 · goblet squat · 12 kg. Clean reps only.",
        "Set done",
        "Stop",
        disable_notification=True,
    )
    client.types("How long is the rest between the sets? I have to leave for work at twenty to seven.")
    client.sends("sticker")
    client.sends("voice", b"sound")
    morning.later(days=1)
    await morning.bot_says(CLIENT, "Morning. How are the legs?", "Fine", "Sore")
    client.types("fine <b>really</b>")
    return morning


async def _picture(morning: Morning, chat_id: int) -> None:
    figure, axes = plt.subplots(figsize=(5, 2.4))
    axes.plot([1, 2, 3, 4], [8, 9, 9, 10])
    axes.set_title("Load, kg")
    drawn = io.BytesIO()
    figure.savefig(drawn)
    await morning.api.call(
        "sendPhoto", {"chat_id": chat_id, "caption": "Dana, four weeks"}, {"photo": drawn.getvalue()}
    )


async def show(port: int, ready: Callable[[str], None], until: asyncio.Event) -> None:
    """Serve the filled page until the event is set."""
    morning = await filled()

    async def skip() -> str:
        morning.later(hours=8)
        return f"It is {morning.time:%H:%M} now."

    server = await serve(morning.api, port, skip)
    ready(server.url)
    await until.wait()
    await server.stop()


if __name__ == "__main__":
    asyncio.run(show(int(sys.argv[1]) if len(sys.argv) > 1 else 0, print, asyncio.Event()))
