"""The Bot API as far as cuffline uses it, in memory and without any transport; private chats only."""

import asyncio
import random
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from inspect import isawaitable
from typing import Any

from bot.local import changing, sending
from bot.local.exchange import Chat, Exchange
from bot.local.faults import Faults, Lost
from bot.local.messages import Kind
from bot.local.phone import Phone
from bot.local.refusals import Refusal, refusal_for
from bot.local.request import Request
from bot.local.upkeep import Upkeep

Method = Callable[[Exchange, Request], Any]


LONG_S = 60.0


@dataclass(frozen=True, slots=True)
class Post:
    """One update on its way to a webhook."""

    url: str
    secret: str
    update: dict[str, Any]


class LocalApi:
    """Answers the bot's calls and hands out phones. Use it from one event loop.

    `now` gives the time messages bear, with its zone; a bot's number is the part of the token before the colon.
    Numbers of updates and messages start anywhere unless given, so that a database kept from an earlier run
    does not take new ones for old.
    """

    def __init__(
        self,
        now: Callable[[], datetime],
        token: str = "1:local",
        first_update_id: int | None = None,
        first_message_id: int | None = None,
    ) -> None:
        number = int(token.partition(":")[0])
        bot = {"id": number, "is_bot": True, "first_name": "cuffline", "username": "cuffline_local_bot"}
        self.token = token
        self.phones: dict[int, Phone] = {}
        self.upkeep = Upkeep()
        first_update, first_message = first_update_id or _anywhere(), first_message_id or _anywhere()
        self._exchange = Exchange(now, bot, first_update, first_message)
        self._methods = _methods(self.upkeep)
        self._faults = Faults()

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

    def fail_next(
        self,
        method: str,
        times: int,
        error_code: int,
        retry_after: int | None = None,
        chat_id: int | None = None,
    ) -> None:
        """Turn down the next calls of a method, in one chat or all; `retry_after` in seconds."""
        self._faults.plan(method, chat_id, times, lambda: refusal_for(error_code, retry_after))

    def lose_next(self, method: str, times: int, done: bool = False, chat_id: int | None = None) -> None:
        """Break the connection of the next calls; with `done` each takes effect and only its answer is lost."""
        self._faults.plan(method, chat_id, times, lambda: Lost(done))

    def touch(self) -> None:
        """Tell whoever waits that the time has moved."""
        self._exchange.changed()

    def file(self, path: str) -> bytes | None:
        """Return the file getFile named by this path, or None."""
        return self._exchange.files.get(path)

    async def call(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        """Answer one call with the API's envelope; raises only Lost, when `lose_next` asked for it."""
        try:
            return {"ok": True, "result": await self._answer(method, Request(params, files))}
        except Refusal as refusal:
            return refusal.envelope()

    async def wait(self, predicate: Callable[[], bool], timeout: float) -> None:  # noqa: ASYNC109 - the plain word
        """Return once the predicate holds, asked again after each change; TimeoutError after these seconds."""
        async with asyncio.timeout(timeout):
            while not predicate():
                await self._exchange.bell.wait(timeout)

    async def to_post(self) -> Post:
        """Return the oldest waiting update and where it is to be posted; waits until there are both."""
        while True:
            if not self.upkeep.webhook:
                await self._exchange.bell.wait(LONG_S)
                continue
            try:
                found = await self._exchange.mailbox.take(0, 1, 1)
            except Refusal:  # the webhook is gone and the bot fetches
                continue
            if found and self.upkeep.webhook:
                return Post(self.upkeep.webhook, self.upkeep.secret, found[0])

    def posted(self, post: Post) -> None:
        """The webhook took it: it is not offered again."""
        self._exchange.mailbox.confirm(post.update["update_id"] + 1)

    async def _answer(self, name: str, request: Request) -> Any:
        method = self._methods.get(name.lower())
        if method is None:
            raise refusal_for(404)
        fault = self._faults.take(name, request)
        if isinstance(fault, Refusal) or (fault and not fault.done):
            raise fault
        answer = method(self._exchange, request)
        result = await answer if isawaitable(answer) else answer
        if fault:
            raise fault
        return result


def _anywhere() -> int:
    return random.randrange(1, 2**30)  # message numbers must fit 32 bits with room to count up


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
        "sendmessage": sending.send_message,
        "sendphoto": sending.sender_of(Kind.PHOTO),
        "senddocument": sending.sender_of(Kind.DOCUMENT),
        "sendaudio": sending.sender_of(Kind.AUDIO),
        "sendvoice": sending.sender_of(Kind.VOICE),
        "sendvideo": sending.sender_of(Kind.VIDEO),
        "copymessage": sending.copy_message,
        "forwardmessage": sending.forward_message,
        "sendchataction": sending.chat_action,
        "editmessagetext": changing.edit_text,
        "editmessagereplymarkup": changing.edit_buttons,
        "deletemessage": changing.delete_message,
        "answercallbackquery": changing.answer_query,
        "answerinlinequery": changing.answer_inline,
    }
