"""Sending what the outbox holds: one letter in flight per chat, several chats at once, alerts first.

Delivery is at least once: the server offers no key against doubles, so after a crash a message (never a count
of reps) may come twice.
"""

import asyncio
import io
import logging
from collections.abc import Awaitable, Callable
from datetime import datetime, timedelta
from typing import Any

from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, InputFile
from telegram.error import BadRequest, Forbidden, RetryAfter, TelegramError

from bot import documents
from conversations.words import engine as words
from core.store import mail, people
from core.store.connection import Store, cannot_write
from core.store.mail import Waiting

log = logging.getLogger("cuffline")

LONGEST_GAP_S = 30.0  # so that an alert is out within 35 s of the network's return; own caution, no source
ALL_PAUSE = timedelta(seconds=1)  # 429 from two chats within it pauses all
AT_ONCE = 20  # letters in flight; the official server allows about 30 a second

Draw = Callable[[str, dict[str, Any]], Awaitable[bytes]]


class Outbox:
    """Sends until nothing waits. `draw` makes the picture a letter names."""

    def __init__(self, store: Store, bot: Bot, now: Callable[[], datetime], draw: Draw) -> None:
        self.store = store
        self.bot = bot
        self.now = now
        self.draw = draw
        self.paused_until: datetime | None = None
        self.last_pause: tuple[int, datetime] | None = None

    async def flush(self) -> datetime | None:
        """Send all that may go now; when to come back for what must wait (None: nothing waits)."""
        while True:
            now = self.now()
            if self.paused_until is not None and now < self.paused_until:
                return self.paused_until
            ready = mail.waiting(self.store, now, AT_ONCE)
            if not ready:
                return mail.next_letter_at(self.store)
            await asyncio.gather(*(self._one(one) for one in ready))

    async def _one(self, one: Waiting) -> None:
        try:
            message = await self._send(one)
        except RetryAfter as wait:
            self._slow_down(one, wait)
        except Forbidden:
            self._unreachable(one)
        except BadRequest as problem:
            log.warning("letter %s refused: %s", one.id, problem.message)
            self._close(lambda: mail.drop(self.store, one.id, "refused"))
        except TelegramError as problem:
            self._again(one, type(problem).__name__)
        except Exception as problem:
            if cannot_write(problem):
                raise
            log.exception("letter %s cannot be made", one.id)  # a bug of ours must not hold up everybody
            self._close(lambda: mail.drop(self.store, one.id, "cannot be made"))
        else:
            self._close(lambda: mail.sent(self.store, one.id, message, self.now()))

    async def _send(self, one: Waiting) -> int | None:
        letter = one.letter
        match letter.kind:
            case "answer":
                await self.bot.answer_callback_query(letter.body["query"])
                return None
            case "photo" | "chart" | "report_picture":
                picture = await self.draw(letter.kind, letter.body)
                sent = await self.bot.send_photo(
                    letter.chat,
                    InputFile(io.BytesIO(picture), "cuffline.png"),
                    caption=letter.body["text"] or None,
                    reply_markup=keyboard(letter.body),
                )
            case "clip":
                sent = await self.bot.send_video(
                    letter.chat,
                    letter.body["clip"],
                    caption=letter.body["text"] or None,
                    reply_markup=keyboard(letter.body),
                )
            case "document":
                sent = await self.bot.send_document(
                    letter.chat,
                    InputFile(documents.content(self.store, letter, self.now()), letter.body["name"]),
                    caption=letter.body["text"] or None,
                    reply_markup=keyboard(letter.body),
                )
            case "report":
                page = await self.draw(letter.kind, letter.body)
                sent = await self.bot.send_document(letter.chat, InputFile(page, letter.body["file"]))
            case _:
                sent = await self.bot.send_message(
                    letter.chat,
                    letter.body["text"],
                    reply_markup=keyboard(letter.body),
                    disable_notification=bool(letter.body.get("quiet")),
                )
        return sent.message_id

    def _close(self, act: Callable[[], None]) -> None:
        with self.store.transaction():
            act()

    def _again(self, one: Waiting, why: str) -> None:
        if one.letter.kind == "answer":  # only stops the spinner on the button
            self._close(lambda: mail.drop(self.store, one.id, why))
            return
        gap = min(LONGEST_GAP_S, 0.5 * 2.0 ** min(one.attempts, 10))
        self._close(lambda: mail.later(self.store, one.id, self.now() + timedelta(seconds=gap)))

    def _slow_down(self, one: Waiting, wait: RetryAfter) -> None:
        after = wait.retry_after
        gap = after if isinstance(after, timedelta) else timedelta(seconds=after)
        now = self.now()
        if (
            self.last_pause
            and self.last_pause[0] != one.letter.chat
            and now - self.last_pause[1] <= ALL_PAUSE
        ):
            self.paused_until = now + gap
        self.last_pause = (one.letter.chat, now)
        self._close(lambda: mail.later(self.store, one.id, now + gap))

    def _unreachable(self, one: Waiting) -> None:
        def act() -> None:
            mail.drop(self.store, one.id, "blocked")
            person = people.by_chat(self.store, one.letter.chat)
            if person is None or person.unreachable_at is not None:
                return
            people.unreachable(self.store, one.letter.chat, self.now())
            if person.coach is not None:
                coach = people.by_id(self.store, person.coach)
                if coach.chat is not None:
                    text = words.UNREACHABLE.format(name=person.name)
                    mail.post(self.store, mail.Letter(coach.chat, {"text": text}), self.now())

        self._close(act)


def keyboard(body: dict[str, Any]) -> InlineKeyboardMarkup | None:
    """Buttons one under another: one thumb, one column."""
    rows = [[InlineKeyboardButton(label, callback_data=token)] for label, token in body.get("buttons") or []]
    return InlineKeyboardMarkup(rows) if rows else None
