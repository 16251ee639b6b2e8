"""What the bot's side and the phones' side share: chats, files, numbers, and word of every change."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Final

from bot.local.mailbox import Bell, Mailbox
from bot.local.messages import ChatMessage, Json, Kind, on_the_wire, person, private_chat
from bot.local.refusals import Refusal, bad

_FOLDERS: Final = {
    Kind.PHOTO: "photos",
    Kind.DOCUMENT: "documents",
    Kind.VOICE: "voice",
    Kind.AUDIO: "music",
    Kind.VIDEO: "videos",
}


@dataclass(slots=True)
class Chat:
    """The private chat of one person with the bot."""

    user_id: int
    name: str
    blocked: bool = False
    messages: dict[int, ChatMessage] = field(default_factory=dict)
    notices: list[str] = field(default_factory=list)  # short answers to taps, newest last
    keyboard: tuple[str, ...] = ()  # labels under the writing line


class Exchange:
    """All state of the local API. Belongs to one event loop; nothing here is thread-safe."""

    def __init__(
        self, now: Callable[[], datetime], bot: Json, first_update_id: int, first_message_id: int
    ) -> None:
        self.now = now
        self.bot = bot
        self.mailbox = Mailbox(first_update_id)
        self.chats: dict[int, Chat] = {}
        self.files: dict[str, bytes] = {}  # by path, as getFile gives it
        self.paths: dict[str, str] = {}  # path by file id
        self.open_queries: dict[str, int] = {}  # who tapped, by query id
        self.version = 0
        self.bell = Bell()
        self._next_message_id = first_message_id
        self._next_query_id = first_update_id
        self._next_file = first_update_id

    def changed(self) -> None:
        """Say that a chat or the time changed."""
        self.version += 1
        self.bell.ring()

    def chat(self, chat_id: int) -> Chat:
        """Return a chat the bot may write to; Refusal 400 when unknown, 403 when it blocked the bot."""
        chat = self.chats.get(chat_id)
        if chat is None:
            raise bad("chat not found")
        if chat.blocked:
            raise Refusal(403, "Forbidden: bot was blocked by the user")
        return chat

    def next_message_id(self) -> int:
        """Return the next number; all chats of a bot share one row of numbers."""
        self._next_message_id += 1
        return self._next_message_id - 1

    def open_query(self, user_id: int) -> str:
        """Return the id of a new query, which the bot may answer once."""
        query_id = str(self._next_query_id)
        self._next_query_id += 1
        self.open_queries[query_id] = user_id
        return query_id

    def keep(self, chat: Chat, message: ChatMessage) -> None:
        """Add a message or put its new form in place of the old."""
        chat.messages[message.id] = message
        self.changed()

    def store(self, kind: Kind, data: bytes, name: str | None = None) -> str:
        """Keep a file and return its id."""
        file_id = f"file{self._next_file}"
        self._next_file += 1
        path = f"{_FOLDERS.get(kind, 'other')}/{file_id}{_ending(name)}"
        self.paths[file_id], self.files[path] = path, data
        return file_id

    def holds(self, kind: Kind, file_id: str) -> bool:
        """Whether a kept file is of this kind."""
        return self.paths[file_id].startswith(f"{_FOLDERS.get(kind, 'other')}/")

    def wire(self, chat: Chat, message: ChatMessage) -> Json:
        """Return the message as the API writes it, with the message it replies to."""
        body = self._bare(chat, message)
        answered = chat.messages.get(message.reply_to or 0)
        if answered:
            body["reply_to_message"] = self._bare(chat, answered)
        return body

    def _bare(self, chat: Chat, message: ChatMessage) -> Json:
        return on_the_wire(message, private_chat(chat.user_id, chat.name), self.sender(chat, message))

    def sender(self, chat: Chat, message: ChatMessage) -> Json:
        """Return who wrote the message, as the API's User."""
        return person(chat.user_id, chat.name) if message.mine else self.bot

    def stamp(self, old: ChatMessage, new: ChatMessage) -> ChatMessage:
        """Return the new form marked as edited now, with the words it had before."""
        earlier = old.earlier if new.text == old.text else (*old.earlier, old.text)
        return replace(new, edited=self.now(), earlier=earlier)


def _ending(name: str | None) -> str:
    _, dot, ending = (name or "").rpartition(".")
    return f".{ending}" if dot and ending.isalnum() else ""
