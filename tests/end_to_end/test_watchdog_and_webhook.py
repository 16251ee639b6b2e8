"""The real process under a service manager, and behind a webhook."""

import asyncio
import os
import signal
import socket
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.bot.net.test_webhook import free_port
from tests.end_to_end.room import LONGEST_S, Room

ALLOWED_S = 1.5  # between two signs of life; the process gives three in it


class Manager:
    """What systemd does: hears signs of life, and kills and restarts whoever gives none in time."""

    def __init__(self, folder: Path) -> None:
        self.address = str(folder / "notify")
        self.socket = socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM)
        self.socket.bind(self.address)
        self.settings = {"NOTIFY_SOCKET": self.address, "WATCHDOG_USEC": str(int(ALLOWED_S * 1e6))}

    async def hear(self, seconds: float) -> str | None:
        """The next sign; None: none came in time."""
        self.socket.settimeout(seconds)
        try:
            return (await asyncio.to_thread(self.socket.recv, 4096)).decode()
        except TimeoutError:
            return None


def in_room(room: Room, scene: Callable[[], object]) -> None:
    async def all_of_it() -> None:
        try:
            await room.open()
            await scene()  # type: ignore[misc]
        finally:
            await room.close()

    asyncio.run(all_of_it())


def test_a_process_that_hangs_falls_silent_and_a_restart_goes_on(tmp_path: Path) -> None:
    manager = Manager(tmp_path)
    room = Room(tmp_path / "practice.db", **manager.settings)

    async def scene() -> None:
        assert room.bot is not None
        assert await manager.hear(LONGEST_S) == "READY=1\nWATCHDOG=1"
        assert await manager.hear(LONGEST_S) == "WATCHDOG=1"
        os.kill(room.bot.pid, signal.SIGSTOP)
        while await manager.hear(ALLOWED_S) is not None:
            pass  # what was on its way
        room.kill()
        room.client.types("anybody there?")
        room.start()
        assert await manager.hear(LONGEST_S) == "READY=1\nWATCHDOG=1"
        await room.hears(room.client, "invited")
        assert room.stop() == 0
        said = []
        while (sign := await manager.hear(0.01)) is not None:
            said.append(sign)
        assert said[-1] == "STOPPING=1"

    in_room(room, scene)


def test_behind_a_webhook_nothing_is_lost_when_the_process_is_killed(tmp_path: Path) -> None:
    port = free_port()
    hook = {
        "CUFFLINE_WEBHOOK": f"http://127.0.0.1:{port}/hook",
        "CUFFLINE_LISTEN": f"127.0.0.1:{port}",
        "CUFFLINE_WEBHOOK_SECRET": "w" * 43,
    }
    room = Room(tmp_path / "practice.db", **hook)

    async def scene() -> None:
        room.coach.types("help")
        await room.hears(room.coach, "invite: an invitation")
        room.kill()
        room.coach.types("invite")  # said while nobody listens
        room.start()
        await room.type(room.coach, "first name", "Ruta")
        await room.hears(room.coach, "For Ruta")
        assert room.db.stat().st_mode & 0o077 == 0, "health data, for its owner only"
        assert room.stop() == 0

    in_room(room, scene)


@pytest.mark.parametrize("setting", ["CUFFLINE_WEBHOOK_SECRET", "CUFFLINE_LISTEN"])
def test_a_webhook_half_set_up_is_named_at_the_start(
    tmp_path: Path, setting: str, capfd: pytest.CaptureFixture[str]
) -> None:
    good = {"CUFFLINE_WEBHOOK_SECRET": "w" * 43, "CUFFLINE_WEBHOOK": "http://127.0.0.1/hook"}
    room = Room(tmp_path / "practice.db", **(good | {setting: "x"}))

    async def scene() -> None:
        assert room.bot is not None
        assert room.bot.wait(LONGEST_S) == 2

    in_room(room, scene)
    assert capfd.readouterr().err.startswith(f"{setting}: ")
