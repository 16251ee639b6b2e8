"""Updates a second over HTTP on loopback: cuffline, a bare echo and a pickled conversation, in short bursts in turn."""

import asyncio
import statistics
import subprocess
import sys
import time
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from bot.local.api import LocalApi
from bot.local.http import serve
from core.store.connection import Store
from tests.bench.load.bots import BOTS, TOKEN
from tests.bench.load.dialogue import FIRST_CLIENT, OVER, answer_to, practice

ACTIVE = 20  # clients whose answer is awaited at any moment
OURS = ("cuffline", "tapped")  # the same program; clients who type, and who tap buttons where there are some
PAUSE_S = 0.3  # between bursts, so that a bot's last answers do not run into the next one's burst


class Crowd(LocalApi):
    """The server of one bot, and its clients, who answer as soon as they are asked."""

    def __init__(self, name: str) -> None:
        super().__init__(lambda: datetime.now(UTC), TOKEN)
        self.name = name
        self.running = False
        self.awaited: dict[int, float] = {}  # since when, by client
        self.held: dict[int, str] = {}  # answers for the next burst
        self.took_s: list[float] = []
        self.calls = 0  # of the Bot API but for fetching
        self.joined = 0

    async def call(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        """As the server, and let the client answer."""
        answered = await super().call(method, params, files)
        self.calls += method.lower() != "getupdates"
        if method.lower() == "sendmessage" and answered["ok"]:
            self._heard(int(params["chat_id"]), str(params["text"]))
        return answered

    def _heard(self, chat: int, text: str) -> None:
        since = self.awaited.pop(chat, None)
        if since is not None:
            self.took_s.append(time.perf_counter() - since)
        answer = answer_to(text) if self.name in OURS else _next_line(text)
        if answer is not None and OVER not in text:
            self.held[chat] = answer
        if self.running:
            self._go_on()

    def _go_on(self) -> None:
        while len(self.awaited) < ACTIVE:
            if not self.held:
                self._join()
            chat, text = next(iter(self.held.items()))
            del self.held[chat]
            self.awaited[chat] = time.perf_counter()
            self._answers(chat, text)

    def _answers(self, chat: int, text: str) -> None:
        """Tap the newest button that says so, where clients tap; else type."""
        phone = self.phones[chat]
        for message in reversed(phone.history[-3:] if self.name == "tapped" else []):
            for label in (label for row in message.buttons for label, _ in row):
                if label.lower() == text.lower():
                    phone.taps(message.id, label)
                    return
        phone.types(text)

    def _join(self) -> None:
        chat = FIRST_CLIENT + self.joined
        self.joined += 1
        if chat not in self.phones:
            self.add_phone(chat, "x")
        self.held[chat] = "start"

    async def burst(self, seconds: float) -> float:
        """Updates answered a second."""
        before, began = len(self.took_s), time.perf_counter()
        self.running = True
        self._go_on()
        await asyncio.sleep(seconds)
        self.running = False
        rate = (len(self.took_s) - before) / (time.perf_counter() - began)
        await asyncio.sleep(PAUSE_S)
        return rate


def _next_line(text: str) -> str:
    return "thirty-one clean reps"


@dataclass(slots=True)
class Rates:
    """Per bot: updates a second of each burst, seconds an answer took, memory at the end in MB."""

    bursts: dict[str, list[float]] = field(default_factory=dict)
    took_s: dict[str, list[float]] = field(default_factory=dict)
    memory_mb: dict[str, float] = field(default_factory=dict)
    calls_each: dict[str, float] = field(default_factory=dict)  # of the Bot API, an update

    def ratio(self, one: str, other: str) -> float:
        """The median ratio of neighbouring bursts."""
        pairs = zip(self.bursts[one], self.bursts[other], strict=True)
        return statistics.median(a / b for a, b in pairs)

    def p99_ms(self, name: str) -> float:
        """99 of 100 answers came within this time, with so many clients waiting at once."""
        return 1000 * statistics.quantiles(self.took_s[name], n=100)[98]


async def measure(folder: Path, rounds: int, seconds: float, clients: int) -> Rates:
    """All three bots in turn, after a round to warm up."""
    crowds = {name: Crowd(name) for name in BOTS}
    for name in OURS:
        store = Store(folder / name)
        practice(store, clients, datetime.now(UTC))
        store.close()
    processes = {name: await started(crowd, folder) for name, crowd in crowds.items()}
    found = Rates({name: [] for name in BOTS})
    try:
        for crowd in crowds.values():
            await crowd.burst(seconds)
            crowd.took_s.clear()
            crowd.calls = 0
        for _ in range(rounds):
            for name, crowd in crowds.items():
                found.bursts[name].append(await crowd.burst(seconds))
        found.took_s = {name: crowd.took_s for name, crowd in crowds.items()}
        found.calls_each = {name: crowd.calls / len(crowd.took_s) for name, crowd in crowds.items()}
        found.memory_mb = {name: memory_mb(process.pid) for name, process in processes.items()}
    finally:
        for process in processes.values():
            process.kill()
            process.wait()
    return found


async def started(crowd: Crowd, folder: Path) -> "subprocess.Popen[bytes]":
    """The bot of this crowd, running, once it has answered a stranger."""
    server = await serve(crowd, 0)
    command = [
        sys.executable,
        "-m",
        "tests.bench.load.bots",
        crowd.name,
        server.url,
        str(folder / crowd.name),
    ]
    process = subprocess.Popen(command)  # noqa: ASYNC220 - returns at once; the bot is watched by its answers
    probe = crowd.add_phone(1, "probe")
    probe.types("hello")
    await crowd.wait(lambda: any(not one.mine for one in probe.history), 20)
    return process


def memory_mb(pid: int) -> float:
    """The most that the process ever had."""
    lines = Path(f"/proc/{pid}/status").read_text().splitlines()
    return next(int(line.split()[1]) / 1024 for line in lines if line.startswith("VmHWM"))
