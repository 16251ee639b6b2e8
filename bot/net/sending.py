"""One letter into one call: words, pictures, clips, documents, and the end of a button's spinner."""

import io
import logging
from collections.abc import Awaitable, Callable
from dataclasses import replace
from datetime import datetime
from typing import Any

from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, InputFile
from telegram.error import BadRequest

from bot.engine.updates import AS_FILE
from bot.export import A_ZIP
from bot.making import documents, fonts
from bot.making.slow_work import Failed
from bot.net.calls import call
from conversations.words import exporting as words
from conversations.words import report as report_words
from core.store.connection import Store
from core.store.mail import Letter

log = logging.getLogger("cuffline")

INLINE_S = 3600  # how long the server may give the same answer to a query; own choice
Draw = Callable[[str, dict[str, Any]], Awaitable[bytes]]


class Sender:
    """Makes the calls. `draw` makes the picture a letter names."""

    def __init__(self, store: Store, bot: Bot, now: Callable[[], datetime], draw: Draw) -> None:
        self.store = store
        self.bot = bot
        self.now = now
        self.draw = draw
        self.known: dict[str, str] = {}  # by the name of a fixed picture: the server's id of it

    async def send(self, letter: Letter) -> int | None:
        """The number of the message it became; None: no message. Raises TelegramError."""
        match letter.kind:
            case "answer":
                await call(self.bot, "answerCallbackQuery", {"callback_query_id": letter.body["query"]})
                return None
            case "inline":
                await self._inline(letter)
                return None
            case "photo":
                return await self._fixed_picture(letter)
            case "chart" | "report_picture":
                return (await self._picture(letter))[0]
            case "clip":
                return await self._clip(letter)
            case "document":
                content = documents.content(self.store, letter, self.now())
                return await self._document(letter, content, letter.body["name"])
            case "beat":
                return await self._sound(letter)
            case "export":
                return await self._export(letter)
            case "report":
                page = await self.draw(letter.kind, letter.body)
                return await self._document(letter, page, letter.body["file"])
            case _:
                return await self._message(letter)

    async def _message(self, letter: Letter) -> int:
        body = letter.body
        given = {"chat_id": letter.chat, "text": body["text"], "reply_markup": markup(body)}
        return number(
            await call(self.bot, "sendMessage", given | {"disable_notification": body.get("quiet")})
        )

    async def _inline(self, letter: Letter) -> None:
        """No result, and a button into the private chat. https://core.telegram.org/bots/api#answerinlinequery"""
        button = {"text": letter.body["text"], "start_parameter": "private"}
        given = {"inline_query_id": letter.body["query"], "results": [], "button": button}
        await call(self.bot, "answerInlineQuery", given | {"cache_time": INLINE_S})

    async def _clip(self, letter: Letter) -> int:
        """A film goes on as what it came as: https://core.telegram.org/bots/api#sending-files"""
        film = letter.body["clip"]
        if film.startswith(AS_FILE):
            return await self._by_id("sendDocument", "document", letter, film.removeprefix(AS_FILE))
        return await self._by_id("sendVideo", "video", letter, film)

    async def _by_id(self, method: str, field: str, letter: Letter, file_id: str) -> int:
        """A picture or clip that the server has already."""
        body = letter.body
        given = {"chat_id": letter.chat, field: file_id, "caption": body["text"] or None}
        more = {"reply_markup": markup(body), "disable_notification": body.get("quiet")}
        return number(await call(self.bot, method, given | more))

    async def _fixed_picture(self, letter: Letter) -> int:
        """A picture that is always the same is uploaded once, and again when the server forgot it."""
        name = letter.body["picture"]
        if name in self.known:
            try:
                return await self._by_id("sendPhoto", "photo", letter, self.known[name])
            except BadRequest:
                del self.known[name]
        message, self.known[name] = await self._picture(letter)
        return message

    async def _picture(self, letter: Letter) -> tuple[int, str]:
        picture = await self.draw(letter.kind, letter.body)
        caption = await self._caption(letter)
        sent = await self.bot.send_photo(
            letter.chat,
            InputFile(io.BytesIO(picture), "cuffline.png"),
            caption=caption or None,
            reply_markup=keyboard(letter.body),
        )
        return sent.message_id, sent.photo[-1].file_id

    async def _caption(self, letter: Letter) -> str:
        """The words under a picture, and who stands in it under a number as there is no font for their name."""
        names = fonts.codes(letter.kind, letter.body)
        if not names:
            return str(letter.body["text"])
        coded = (await self.draw("unwritable", {"names": names})).decode().splitlines()
        lines = (report_words.CODED.format(code=code, name=names[code]) for code in coded)
        return "\n".join(filter(None, (letter.body["text"], *lines)))

    async def _sound(self, letter: Letter) -> int:
        body = letter.body
        sound = InputFile(await self.draw(letter.kind, body), body["file"])
        sent = await self.bot.send_audio(
            letter.chat, sound, caption=body["text"], title=body["title"], duration=body["seconds"]
        )
        return sent.message_id

    async def _export(self, letter: Letter) -> int:
        """A coach's records as they are now, or in words why not."""
        here = {"coach": letter.person, "db": self.store.path, "now": self.now().isoformat()}
        try:
            made = await self.draw(letter.kind, letter.body | here)
        except Failed as problem:
            log.error("no export from a process of its own: %s", problem)
            return await self._words(letter, words.NOT_MADE)
        if not made.startswith(A_ZIP):
            return await self._words(letter, words.INSTEAD[made.decode()])
        return await self._document(letter, made, letter.body["name"])

    async def _words(self, letter: Letter, text: str) -> int:
        return await self._message(replace(letter, body={"text": text}))

    async def _document(self, letter: Letter, content: bytes, name: str) -> int:
        sent = await self.bot.send_document(
            letter.chat,
            InputFile(content, name),
            caption=letter.body.get("text") or None,
            reply_markup=keyboard(letter.body),
        )
        return sent.message_id


def number(message: dict[str, Any]) -> int:
    """A message's number, as the server gave it."""
    return int(message["message_id"])


def rows(body: dict[str, Any]) -> list[tuple[str, str]]:
    """(label, token) of each button: one under another, for one thumb."""
    return [(label, token) for label, token in body.get("buttons") or []]


def markup(body: dict[str, Any]) -> dict[str, Any] | None:
    """Buttons as the server wants them."""
    keys = [[{"text": label, "callback_data": token}] for label, token in rows(body)]
    return {"inline_keyboard": keys} if keys else None


def keyboard(body: dict[str, Any]) -> InlineKeyboardMarkup | None:
    """The same for the library's own methods."""
    keys = [[InlineKeyboardButton(label, callback_data=token)] for label, token in rows(body)]
    return InlineKeyboardMarkup(keys) if keys else None
