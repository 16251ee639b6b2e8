"""The watchdog hears from the bot only while the loop and the worker make progress."""

import asyncio
import socket
import subprocess
import sys
import threading
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import pytest

from bot import watchdog
from bot.watchdog import STALE_S, Pulse, fed_every, notify

ROOT = Path(__file__).parents[3]


class Manager:
    """A service manager's ear."""

    def __init__(self, address: str) -> None:
        self.socket = socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM)
        self.socket.bind(address)
        self.socket.setblocking(False)

    def heard(self) -> list[str]:
        found = []
        while True:
            try:
                found.append(self.socket.recv(4096).decode())
            except BlockingIOError:
                return found


@pytest.fixture
def manager(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Manager]:
    address = str(tmp_path / "notify")
    monkeypatch.setenv("NOTIFY_SOCKET", address)
    made = Manager(address)
    yield made
    made.socket.close()


class Times:
    """A clock that moves while somebody pauses; `beats` says in which seconds the worker still beats."""

    def __init__(self, beats_until: float, end: float) -> None:
        self.now = 0.0
        self.beats_until = beats_until
        self.end = end
        self.pulse = Pulse(lambda: self.now)
        self.pulse.beat()

    async def pause(self, seconds: float) -> None:
        self.now += seconds
        if self.now >= self.end:
            raise asyncio.CancelledError
        if self.now <= self.beats_until:
            self.pulse.beat()


def run(times: Times) -> None:
    with pytest.raises(asyncio.CancelledError):
        asyncio.run(watchdog.feed(times.pulse, times.pause))


def test_ready_comes_once_and_signs_of_life_go_on_while_the_worker_works(manager: Manager) -> None:
    run(Times(beats_until=100, end=95))
    assert manager.heard() == ["READY=1\nWATCHDOG=1"] + ["WATCHDOG=1"] * 9


def test_a_worker_that_hangs_is_not_covered_for_by_a_running_loop(manager: Manager) -> None:
    run(Times(beats_until=40, end=1000))
    fed = ["READY=1\nWATCHDOG=1"] + ["WATCHDOG=1"] * int((40 + STALE_S - 1) // 10)
    assert manager.heard() == fed


@pytest.mark.parametrize(("after", "alive"), [(STALE_S - 0.01, True), (STALE_S, False)])
def test_a_sign_of_life_counts_for_half_a_minute(after: float, alive: bool) -> None:
    now = 0.0
    pulse = Pulse(lambda: now)
    assert not pulse.alive
    pulse.beat()
    now = after
    assert pulse.alive is alive


def test_nothing_is_fed_before_the_worker_worked(manager: Manager) -> None:
    times = Times(beats_until=-1, end=5)
    times.pulse.last = None
    run(times)
    assert manager.heard() == []


def test_a_third_of_what_the_manager_allows_is_the_rhythm() -> None:
    assert fed_every({"WATCHDOG_USEC": "60000000"}) == 20
    assert [fed_every(env) for env in ({}, {"WATCHDOG_USEC": "0"}, {"WATCHDOG_USEC": "soon"})] == [10, 10, 10]


def test_without_a_manager_or_with_a_deaf_one_the_bot_goes_on(tmp_path: Path) -> None:
    assert not notify("READY=1", {})
    assert not notify("READY=1", {"NOTIFY_SOCKET": str(tmp_path / "nobody")})


def test_a_manager_that_reads_no_more_holds_up_nobody(manager: Manager) -> None:
    assert watchdog.notify("WATCHDOG=1")
    assert any(not watchdog.notify("WATCHDOG=1") for _ in range(5_000)), "its queue is full at some time"


def test_the_abstract_namespace_is_reached() -> None:
    manager = Manager("\0cuffline-test-notify")
    assert notify("STOPPING=1", {"NOTIFY_SOCKET": "@cuffline-test-notify"})
    assert manager.heard() == ["STOPPING=1"]
    manager.socket.close()


def test_the_file_for_a_health_check_is_renewed(tmp_path: Path) -> None:
    watchdog.touch(str(tmp_path / "alive"))
    assert (tmp_path / "alive").exists()
    watchdog.touch(str(tmp_path / "no" / "such" / "folder"))
    watchdog.touch("")


class Outside(HTTPServer):
    """The address outside; counts its calls."""

    calls = 0


class Counting(BaseHTTPRequestHandler):
    """Answers and counts."""

    def do_GET(self) -> None:
        assert isinstance(self.server, Outside)
        self.server.calls += 1
        self.send_response(200)
        self.end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


def test_the_outside_is_called_every_minute_only_while_there_is_life() -> None:
    server = Outside(("127.0.0.1", 0), Counting)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    times = Times(beats_until=180, end=600)
    with pytest.raises(asyncio.CancelledError):
        asyncio.run(watchdog.ping(times.pulse, f"http://127.0.0.1:{server.server_port}/x", times.pause))
    server.shutdown()
    server.server_close()
    assert server.calls == 4  # at 0, 60, 120 and 180 s


def test_the_outside_hears_nothing_either_while_the_server_answers_nobody(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The bot is deaf then, and cannot tell its operator in the chat."""
    called: list[float] = []
    times = Times(beats_until=1200, end=900)
    line = Pulse(lambda: times.now, watchdog.DEAF_S)
    line.beat()

    async def call(*_: object) -> None:
        called.append(times.now)

    monkeypatch.setattr(watchdog, "_call", call)
    with pytest.raises(asyncio.CancelledError):
        asyncio.run(watchdog.ping(times.pulse, "http://127.0.0.1:1/x", times.pause, line))
    assert called == [0, 60, 120, 180, 240]


def test_the_outside_hears_again_within_a_second_of_the_servers_first_answer(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """At a start the server has not answered yet; a whole minute of silence would alarm whoever listens."""
    called: list[float] = []
    times = Times(beats_until=1200, end=200)
    line = Pulse(lambda: times.now, watchdog.DEAF_S)

    async def call(*_: object) -> None:
        called.append(times.now)

    async def pause(seconds: float) -> None:
        await times.pause(seconds)
        if times.now >= 30:
            line.beat()

    monkeypatch.setattr(watchdog, "_call", call)
    with pytest.raises(asyncio.CancelledError):
        asyncio.run(watchdog.ping(times.pulse, "http://127.0.0.1:1/x", pause, line))
    assert called == [30, 90, 150]


def test_a_dead_outside_changes_nothing() -> None:
    for url in ("http://127.0.0.1:1/x", "http://[bad", "ftp://x"):
        times = Times(beats_until=600, end=130)
        with pytest.raises(asyncio.CancelledError):
            asyncio.run(watchdog.ping(times.pulse, url, times.pause))


def test_a_process_whose_loop_is_stuck_ends_itself() -> None:
    hang = (
        "from bot import watchdog\n"
        "watchdog.STUCK_S = 0.2\n"
        "watchdog.rearm()\n"
        "while True: pass  # as a handler that never gives the loop back\n"
    )
    ended = subprocess.run([sys.executable, "-c", hang], cwd=ROOT, capture_output=True, timeout=30)
    assert ended.returncode == 1
    assert b"Timeout" in ended.stderr


def test_every_sign_of_life_puts_that_end_off(manager: Manager) -> None:
    put_off: list[float] = []
    times = Times(beats_until=25, end=200)
    with pytest.raises(asyncio.CancelledError):
        asyncio.run(watchdog.feed(times.pulse, times.pause, lambda: put_off.append(times.now)))
    assert put_off == [0, 10, 20, 30, 40]  # the last beat was at 20 s and counts until 50 s
