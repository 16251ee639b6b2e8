"""`cuffline try`: the same program against a server on this machine, with both phones in one page."""

import asyncio
import contextlib
import errno
from collections.abc import Awaitable, Callable
from pathlib import Path
from zoneinfo import ZoneInfo

from bot.app import Program, serve
from bot.clocks.clock import Clock
from bot.config import Config, Wrong
from bot.local.api import LocalApi
from bot.local.http import Server
from bot.local.http import serve as serve_local
from core.store import people
from core.store.connection import Store

TOKEN = "1:local"
COACH = 1001
CLIENT = 2001
ZONE = "Europe/Lisbon"


async def practise(db: Path, port: int, ready: Callable[[str], None]) -> None:
    """Serve the page and run the bot until interrupted."""
    clock = Clock()
    api = LocalApi(lambda: clock.now().astimezone(ZoneInfo(ZONE)), TOKEN)
    coach, client = api.add_phone(COACH, "Coach"), api.add_phone(CLIENT, "Client")
    programs: list[Program] = []

    async def skip() -> str:
        return await programs[0].skip() if programs else "Not yet."

    server = await _listening(api, port, skip)
    config = Config(TOKEN, server.url.rstrip("/"), db, (COACH,), ZONE)

    def started(program: Program) -> None:
        programs.append(program)
        for phone in (coach, client):
            if not known(program.engine.store, phone.user_id):  # else the program itself says where they were
                phone.types("/start")
        ready(server.url)

    try:
        with contextlib.suppress(asyncio.CancelledError):
            await serve(config, clock, started)
    finally:
        await server.stop()


def known(store: Store, chat: int) -> bool:
    """Whether somebody with this number has written before, in a database that is opened again."""
    person = people.by_chat(store, chat)
    return person is not None and people.wrote(store, person.id)


async def _listening(api: LocalApi, port: int, skip: Callable[[], Awaitable[str]]) -> Server:
    """The page's server. Raises `Wrong` when the port cannot be had."""
    try:
        return await serve_local(api, port, skip)
    except OSError as problem:
        why = "is in use" if problem.errno == errno.EADDRINUSE else problem.strerror
        raise Wrong([f"--port {port}: {why}; 0 takes any free one"]) from None
