"""The Bot API as far as cuffline uses it, in memory and without any transport; private chats only."""

import asyncio
from collections import defaultdict, deque
from collections.abc import Callable
from datetime import datetime
from inspect import isawaitable
from typing import Any

from bot.loopback import writing
from bot.loopback.exchange import Chat, Exchange
from bot.loopback.phone import Phone
from bot.loopback.refusals import Refusal, refusal_for
from bot.loopback.request import Request
from bot.loopback.upkeep import Upkeep

Method = Callable[[Exchange, Request], Any]


class LocalApi:
    """Answers the bot's calls and hands out phones. Use it from one event loop.

    `now` gives the time messages bear, with its zone; a bot's number is the part of the token before the colon.
    """

    def __init__(self, now: Callable[[], datetime], token: str = "1:local", first_update_id: int = 1) -> None:
        number = int(token.partition(":")[0])
        bot = {"id": number, "is_bot": True, "first_name": "cuffline", "username": "cuffline_local_bot"}
        self.token = token
        self.phones: dict[int, Phone] = {}
        self.upkeep = Upkeep()
        self._exchange = Exchange(now, bot, first_update_id)
        self._methods = _methods(self.upkeep)
        self._failures: dict[str, deque[Refusal]] = defaultdict(deque)

    @property
    def version(self) -> int:
        """Rises by one with every change of a chat or of the time."""
        return self._exchange.version

    def now(self) -> datetime:
        """Return the time the chats go by."""
        return self._exchange.now()

    def add_phone(self, user_id: int, name: str) -> Phone:
        """Give a person a phone; the bot may write to it at once. ValueError when the number is taken."""
        if user_id in self.phones:
            raise ValueError(f"user_id: {user_id} has a phone already")
        chat = self._exchange.chats[user_id] = Chat(user_id, name)
        self.phones[user_id] = Phone(self._exchange, chat)
        self._exchange.changed()
        return self.phones[user_id]

    def fail_next(self, method: str, times: int, error_code: int, retry_after: int | None = None) -> None:
        """Turn down the next calls of a method, undone, with this code; `retry_after` in seconds."""
        self._failures[method.lower()].extend(refusal_for(error_code, retry_after) for _ in range(times))

    def touch(self) -> None:
        """Tell whoever waits that the time has moved."""
        self._exchange.changed()

    def file(self, path: str) -> bytes | None:
        """Return the file getFile named by this path, or None."""
        return self._exchange.files.get(path)

    async def call(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        """Answer one call with the API's envelope; never raises for what the caller did wrong."""
        try:
            return {"ok": True, "result": await self._answer(method, Request(params, files))}
        except Refusal as refusal:
            return refusal.envelope()

    async def wait(self, predicate: Callable[[], bool], timeout: float) -> None:  # noqa: ASYNC109 - the plain word
        """Return once the predicate holds, asked again after each change; TimeoutError after these seconds."""
        async with asyncio.timeout(timeout):
            while not predicate():
                await self._exchange.bell.wait(timeout)

    async def _answer(self, name: str, request: Request) -> Any:
        method = self._methods.get(name.lower())
        if method is None:
            raise refusal_for(404)
        if failures := self._failures[name.lower()]:
            raise failures.popleft()
        answer = method(self._exchange, request)
        return await answer if isawaitable(answer) else answer


def _methods(upkeep: Upkeep) -> dict[str, Method]:
    # Names in small letters: the real API does not mind the case of a method's name.
    return {
        "getme": upkeep.get_me,
        "getupdates": upkeep.get_updates,
        "setwebhook": upkeep.set_webhook,
        "deletewebhook": upkeep.delete_webhook,
        "getwebhookinfo": upkeep.webhook_info,
        "setmycommands": upkeep.set_commands,
        "getfile": upkeep.get_file,
        "sendmessage": writing.send_message,
        "sendphoto": writing.send_photo,
        "senddocument": writing.send_document,
        "editmessagetext": writing.edit_text,
        "editmessagereplymarkup": writing.edit_buttons,
        "deletemessage": writing.delete_message,
        "answercallbackquery": writing.answer_query,
        "sendchataction": writing.chat_action,
    }
