"""A person's phone: what its owner sees and does. Every act becomes an update for the bot."""

from dataclasses import replace

from bot.local.exchange import Chat, Exchange
from bot.local.messages import ChatMessage, Kind, person, with_content


class Phone:
    """One person's side of the private chat with the bot.

    Acts raise ValueError when the phone could not do them: no such message or button, or the bot is blocked.
    """

    def __init__(self, exchange: Exchange, chat: Chat) -> None:
        self._exchange = exchange
        self._chat = chat

    @property
    def user_id(self) -> int:
        """The person's number, which is also the chat's."""
        return self._chat.user_id

    @property
    def name(self) -> str:
        """The person's first name."""
        return self._chat.name

    @property
    def history(self) -> list[ChatMessage]:
        """The chat as it stands, oldest first; deleted messages are gone."""
        return list(self._chat.messages.values())

    @property
    def notices(self) -> list[str]:
        """Short answers to taps that the bot had shown, oldest first."""
        return list(self._chat.notices)

    @property
    def keyboard(self) -> tuple[str, ...]:
        """Labels the bot put under the writing line; typing one is pressing it."""
        return self._chat.keyboard

    @property
    def blocked(self) -> bool:
        """Whether the owner has blocked the bot."""
        return self._chat.blocked

    def message(self, message_id: int) -> ChatMessage:
        """Return one message of the chat."""
        try:
            return self._chat.messages[message_id]
        except KeyError:
            raise ValueError(f"message_id: no message {message_id} in this chat") from None

    def types(self, text: str, reply_to: int | None = None) -> int:
        """Send a text, perhaps in reply to a message; return its id."""
        if not text.strip():
            raise ValueError("text: empty")
        if reply_to is not None:
            self.message(reply_to)
        return self._send(self._new(text.strip(), reply_to=reply_to))

    def sends(self, kind: str, data: bytes = b"", caption: str = "", name: str = "") -> int:
        """Send a "photo", "video", "voice", "audio", "sticker" or (with a name) "document"; return its id.

        `caption`: words under it.
        """
        carried = Kind(kind)
        if carried is Kind.TEXT or (carried is Kind.DOCUMENT and not name):
            raise ValueError(f"kind: a phone here sends no {kind} this way")
        file_id = self._exchange.store(carried, data, name)
        empty = replace(self._new(caption.strip()), kind=carried, file_id=file_id)
        return self._send(with_content(empty, data, name or carried.value))

    def taps(self, message_id: int, button: str | int) -> str:
        """Press a button, named by its data, else its label, or by its place from 0; return the query's id."""
        self._must_not_block()
        message = self.message(message_id)
        data = _data_of(message, button)
        query_id = self._exchange.open_query(self.user_id)
        query = {"id": query_id, "from": person(self.user_id, self.name), "chat_instance": str(self.user_id)}
        query |= {"message": self._exchange.wire(self._chat, message), "data": data}
        self._exchange.mailbox.put("callback_query", query)
        return query_id

    def types_elsewhere(self, text: str) -> str:
        """Type the bot's name and these words in some other chat; return the query's id."""
        query_id = self._exchange.open_query(self.user_id)
        query = {"id": query_id, "from": person(self.user_id, self.name), "query": text, "offset": ""}
        self._exchange.mailbox.put("inline_query", query | {"chat_type": "private"})
        return query_id

    def edits(self, message_id: int, text: str) -> None:
        """Change the words of an own text."""
        self._must_not_block()
        old = self.message(message_id)
        if not old.mine or old.kind is not Kind.TEXT or not text.strip():
            raise ValueError("message_id: only an own text can be edited, and not to nothing")
        new = self._exchange.stamp(old, replace(old, text=text.strip()))
        self._exchange.keep(self._chat, new)
        self._exchange.mailbox.put("edited_message", self._exchange.wire(self._chat, new))

    def blocks(self) -> None:
        """Block the bot: it can send nothing here until unblocked."""
        self._chat.blocked = True
        self._exchange.changed()

    def unblocks(self) -> None:
        """Let the bot write again."""
        self._chat.blocked = False
        self._exchange.changed()

    def _new(self, text: str, reply_to: int | None = None) -> ChatMessage:
        self._must_not_block()
        number = self._exchange.next_message_id()
        return ChatMessage(number, mine=True, text=text, at=self._exchange.now(), reply_to=reply_to)

    def _send(self, message: ChatMessage) -> int:
        self._exchange.keep(self._chat, message)
        self._exchange.mailbox.put("message", self._exchange.wire(self._chat, message))
        return message.id

    def _must_not_block(self) -> None:
        if self._chat.blocked:
            raise ValueError("phone: the bot is blocked; unblock it first")


def _data_of(message: ChatMessage, wanted: str | int) -> str:
    buttons = [button for row in message.buttons for button in row]
    if isinstance(wanted, int):
        matches = [data for place, (_, data) in enumerate(buttons) if place == wanted]
    else:
        matches = [data for _, data in buttons if data == wanted]
        matches += [data for label, data in buttons if label == wanted]
    if not matches:
        raise ValueError(f"button: message {message.id} has no button {wanted!r}")
    return matches[0]
