"""The library's application over our transport, and who we are: asked until the server answers."""

import contextlib
from collections.abc import AsyncIterator
from typing import Any

from telegram.ext import Application

from bot.config import Config
from bot.net import intake
from bot.net.transport import Transport

CONNECTIONS = 40  # letters in flight, and room for countdowns and what is said directly; own choice

AnyApplication = Application[Any, Any, Any, Any, Any, Any]


def application(config: Config) -> AnyApplication:
    """The library's application, without its own updater: it confirms updates before they are stored."""
    builder = Application.builder().token(config.token).updater(None)
    builder = builder.base_url(f"{config.api_url}/bot").base_file_url(f"{config.api_url}/file/bot")
    to_send, to_fetch = Transport(config.api_url, CONNECTIONS), Transport(config.api_url, 1)
    builder = builder.request(to_send).get_updates_request(to_fetch)
    return builder.build()


@contextlib.asynccontextmanager
async def connected(config: Config) -> AsyncIterator[AnyApplication]:
    """Asks who we are, again and again: after a power cut the network comes up later than we do."""
    app = application(config)
    try:
        await intake.insist("no answer from the server yet", app.initialize)
        yield app
    finally:
        await app.shutdown()
        await app.bot.shutdown()  # what a refused token left open
