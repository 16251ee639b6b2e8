"""Calls of the Bot API by name, where the bot library's own methods would only wrap and unwrap what we have.

Its methods make an object of each button and of the answer's whole message; a call without them costs half.
"""

import json
from typing import Any

from telegram import Bot
from telegram.request import RequestData
from telegram.request._requestparameter import RequestParameter


async def call(bot: Bot, method: str, params: dict[str, Any], read_timeout: float | None = None) -> Any:
    """The result as the server gave it. Raises TelegramError. None among `params` is left out."""
    given = [
        RequestParameter(name, _plain(value), None) for name, value in params.items() if value is not None
    ]
    limits = {} if read_timeout is None else {"read_timeout": read_timeout}
    return await bot.request.post(f"{bot.base_url}/{method}", RequestData(given), **limits)


def _plain(value: Any) -> Any:
    return value if isinstance(value, str) else json.dumps(value)
