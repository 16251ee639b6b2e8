"""A server on this machine, the bot as a separate process, and people at their phones."""

import os
import re
import signal
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import BinaryIO

from bot.local.api import LocalApi
from bot.local.http import Server, serve
from bot.local.messages import ChatMessage
from bot.local.phone import Phone

TOKEN = "1:local"
COACH, CLIENT = 1001, 2001
LONGEST_S = 40.0  # only a cap: at load 13 on two cores a process needs more than 10 to start
REST_AND_MORE_S = 45.0  # the rest of 30 s runs in real time here


class Room:
    """Both phones and the bot's process. `db` is the file that survives its death."""

    def __init__(self, db: Path, **more: str) -> None:
        self.db = db
        self.more = more  # settings besides the usual
        self.api = LocalApi(lambda: datetime.now(UTC), more.get("CUFFLINE_TOKEN", TOKEN))
        self.command = [sys.executable, "-m", "bot", "run"]
        self.output: BinaryIO | int | None = None  # where the bot's words for its operator go; None: as ours
        self.coach = self.api.add_phone(COACH, "Coach")
        self.client = self.api.add_phone(CLIENT, "Ruta")
        self.server: Server | None = None
        self.bot: subprocess.Popen[bytes] | None = None
        self.read: dict[int, int] = {}

    async def open(self) -> None:
        """Start the server and the bot."""
        self.server = await serve(self.api, 0)
        self.start()

    def start(self) -> None:
        """Start the bot's process."""
        assert self.server is not None
        settings = {
            "CUFFLINE_TOKEN": TOKEN,
            "CUFFLINE_API_URL": self.server.url.rstrip("/"),
            "CUFFLINE_DB": str(self.db),
            "CUFFLINE_COACH": str(COACH),
            "CUFFLINE_TZ": "Europe/Lisbon",
        }
        self.bot = subprocess.Popen(
            self.command,
            env=os.environ | settings | self.more,
            cwd=Path(__file__).parents[2],
            stdout=self.output,
            stderr=self.output,
        )

    def kill(self) -> None:
        """SIGKILL: no goodbye."""
        assert self.bot is not None
        self.bot.send_signal(signal.SIGKILL)
        self.bot.wait()

    def stop(self) -> int:
        """SIGTERM; the exit code."""
        assert self.bot is not None
        self.bot.send_signal(signal.SIGTERM)
        return self.bot.wait(timeout=LONGEST_S)

    async def close(self) -> None:
        """End everything."""
        if self.bot is not None and self.bot.poll() is None:
            self.kill()
        if self.server is not None:
            await self.server.stop()

    async def hears(self, phone: Phone, pattern: str) -> ChatMessage:
        """Wait for a message that was not read yet and matches; it and all before it count as read."""
        found: list[ChatMessage] = []

        def there() -> bool:
            after = self.read.get(phone.user_id, 0)
            fresh = [one for one in phone.history if not one.mine and one.id > after]
            found[:] = [one for one in fresh if re.search(pattern, one.text)][:1]
            return bool(found)

        try:
            await self.api.wait(there, REST_AND_MORE_S)
        except TimeoutError:
            last = [one.text for one in phone.history][-4:]
            raise AssertionError(f"{phone.name} never heard {pattern!r}; last: {last}") from None
        self.read[phone.user_id] = found[0].id
        return found[0]

    async def tap(self, phone: Phone, pattern: str, label: str) -> None:
        """Wait for a message and press one of its buttons."""
        message = await self.hears(phone, pattern)
        phone.taps(message.id, label)

    async def type(self, phone: Phone, pattern: str, text: str) -> int:
        """Wait for a message and type."""
        await self.hears(phone, pattern)
        return phone.types(text)
