"""Four weeks of an invented practice, lived once for all that count in them."""

import asyncio
from collections.abc import Iterator

import pytest
from telegram import Bot

from bot.local.http import serve
from bot.making import drawing
from bot.net.outbox import Outbox
from bot.net.transport import Transport
from bot.play import COACH, START, ZONE, perform
from bot.play.stage import TOKEN, Stage

DAYS = 28


async def lived(stage: Stage) -> None:
    """The whole four weeks against a server on this machine, then the client's report."""
    server = await serve(stage.api, 0)
    ways = Transport(server.url, 4), Transport(server.url, 1)
    url = f"{server.url.rstrip('/')}/bot"
    stage.bot = Bot(TOKEN, base_url=url, request=ways[0], get_updates_request=ways[1])
    stage.outbox = Outbox(stage.engine.store, stage.bot, stage.clock.now, drawing.draw)
    await perform(stage, DAYS, 3)
    stage.phones[COACH].types("report ruta")
    await stage.settle()
    await stage.bot.shutdown()
    await server.stop()


@pytest.fixture(scope="session")
def four_weeks() -> Iterator[Stage]:
    """The practice afterwards, for reading only; the report's picture and page are the coach's newest messages."""
    stage = Stage(START, (COACH,), ZONE, lambda *_: None)
    asyncio.run(lived(stage))
    yield stage
    stage.close()
