"""Letting others notice when we hang: the service manager on this machine, and an address outside.

Both hear from us only while the event loop runs (this code runs in it) and the worker makes progress. A
process that is stopped, loops or waits for ever falls silent, and whoever listens acts: systemd restarts the
unit (`WatchdogSec`), the outside address tells the operator. The address outside hears nothing either while the
messages' server leaves us without an answer.
"""

import asyncio
import contextlib
import faulthandler
import logging
import os
import socket
from collections.abc import Awaitable, Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import httpx

log = logging.getLogger("cuffline")

STALE_S = 30.0  # the worker beats every 5 s when idle; six missed beats are no accident
# How long the server may leave all that we ask for new messages unanswered; own choice.
DEAF_S = 300.0
STUCK_S = 60.0  # with the start about 65 s; own choice
FED_EVERY_S = 10.0  # where no service manager says how often
NOT_READY_S = 0.05
PING_EVERY_S = 60.0
UNWELL_S = 1.0  # between looks whether there is something good to tell again; own choice
PING_TIMEOUT_S = 20.0

Pause = Callable[[float], Awaitable[None]]


class Pulse:
    """The last sign of life, the worker's or another's. `elapsed` is a monotonic clock in seconds."""

    def __init__(self, elapsed: Callable[[], float], stale_s: float = STALE_S) -> None:
        self.elapsed = elapsed
        self.stale_s = stale_s
        self.last: float | None = None

    def beat(self) -> None:
        """The worker got through a round."""
        self.last = self.elapsed()

    @property
    def alive(self) -> bool:
        """Whether the last round is recent."""
        return self.last is not None and self.elapsed() - self.last < self.stale_s


def notify(state: str, environment: Mapping[str, str] = os.environ) -> bool:
    """Tell the service manager ("READY=1", "WATCHDOG=1", "STOPPING=1"). False: there is none, or it is deaf.

    Protocol: one datagram to the socket named by NOTIFY_SOCKET, see sd_notify(3).
    """
    address = environment.get("NOTIFY_SOCKET", "")
    if not address:
        return False
    if address.startswith("@"):  # the abstract namespace
        address = "\0" + address[1:]
    try:
        with socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM | socket.SOCK_CLOEXEC) as sender:
            sender.setblocking(False)  # a manager that reads no more must not hold up the loop
            sender.sendto(state.encode(), address)
    except OSError as problem:
        log.warning("the service manager does not hear: %s", problem.strerror)
        return False
    return True


def fed_every(environment: Mapping[str, str] = os.environ) -> float:
    """Seconds between two signs of life: a third of what the service manager allows (WATCHDOG_USEC)."""
    allowed = environment.get("WATCHDOG_USEC", "")
    return int(allowed) / 3e6 if allowed.isdecimal() and int(allowed) else FED_EVERY_S


def rearm() -> None:
    """Where nobody else would: end a process that shows no sign of life for a minute (traces, then exit 1).

    A thread of C counts, so that it also works while Python itself is stuck.
    """
    faulthandler.dump_traceback_later(STUCK_S, exit=True)


async def feed(pulse: Pulse, pause: Pause = asyncio.sleep, alive: Callable[[], None] = lambda: None) -> None:
    """READY at the first sign of life, then WATCHDOG again and again while there are signs; `alive` each time."""
    ready = False
    while True:
        if pulse.alive:
            notify("WATCHDOG=1" if ready else "READY=1\nWATCHDOG=1")
            touch(os.environ.get("CUFFLINE_ALIVE_FILE", ""))
            alive()
            ready = True
        await pause(fed_every() if ready else NOT_READY_S)


def touch(path: str) -> None:
    """Renew the file whose age a container's health check reads; empty: there is none."""
    if path:
        with contextlib.suppress(OSError):  # a file that grows old says the same
            Path(path).touch()


async def ping(pulse: Pulse, url: str, pause: Pause = asyncio.sleep, line: Pulse | None = None) -> None:
    """Call `url` every minute while there are signs of life; failures are its watcher's news, not ours.

    `line`: the server's. Who does not reach it cannot tell the operator there, so its silence is told by ours.
    """
    if not url:
        return
    import httpx

    async with httpx.AsyncClient(timeout=PING_TIMEOUT_S) as client:
        while True:
            well = pulse.alive and (line is None or line.alive)
            if well:
                await _call(client, url)
            await pause(PING_EVERY_S if well else UNWELL_S)


async def _call(client: "httpx.AsyncClient", url: str) -> None:
    try:
        await client.get(url)
    except Exception as problem:  # whatever it is, the bot goes on
        log.info("the ping did not arrive: %s", type(problem).__name__)
