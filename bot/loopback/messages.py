"""A message as the phone shows it, and the same message as the Bot API writes it."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Any

from bot.loopback.request import Buttons, utf16_units

Json = dict[str, Any]


class Kind(StrEnum):
    """What a message carries."""

    TEXT = "text"
    PHOTO = "photo"
    DOCUMENT = "document"
    STICKER = "sticker"
    VOICE = "voice"


@dataclass(frozen=True, slots=True)
class ChatMessage:
    """One message of a chat; `mine` means the phone's owner sent it, `quiet` that it made no sound."""

    id: int
    mine: bool
    text: str
    at: datetime
    kind: Kind = Kind.TEXT
    buttons: Buttons = ()
    photo: bytes | None = None
    document: bytes | None = None
    document_name: str | None = None
    file_id: str = ""
    quiet: bool = False
    edited: datetime | None = None
    reply_to: int | None = None


def person(user_id: int, name: str) -> Json:
    """Return the owner of a phone as the API's User."""
    return {"id": user_id, "is_bot": False, "first_name": name, "language_code": "en"}


def private_chat(user_id: int, name: str) -> Json:
    """Return the private chat with this person: it has the person's number."""
    return {"id": user_id, "type": "private", "first_name": name}


def on_the_wire(message: ChatMessage, chat: Json, sender: Json) -> Json:
    """Return the message as the API's Message, without what it replies to."""
    body: Json = {"message_id": message.id, "date": int(message.at.timestamp()), "chat": chat, "from": sender}
    body |= _content(message)
    if message.edited:
        body["edit_date"] = int(message.edited.timestamp())
    if message.buttons:
        body["reply_markup"] = {"inline_keyboard": [[_button(*b) for b in row] for row in message.buttons]}
    return body


def _button(label: str, data: str) -> Json:
    return {"text": label, "callback_data": data}


def _content(message: ChatMessage) -> Json:
    file = {"file_id": message.file_id, "file_unique_id": f"u{message.file_id}"}
    match message.kind:
        case Kind.TEXT:
            return {"text": message.text} | _command(message.text)
        case Kind.PHOTO:
            # Sizes in pixels are not read from the picture; nothing here needs them.
            return {"photo": [file | {"width": 640, "height": 480}]} | _caption(message)
        case Kind.DOCUMENT:
            return {"document": file | {"file_name": message.document_name}} | _caption(message)
        case Kind.STICKER:
            size = {"width": 512, "height": 512}
            return {"sticker": file | size | {"type": "regular", "is_animated": False, "is_video": False}}
        case Kind.VOICE:
            return {"voice": file | {"duration": 1}}


def _caption(message: ChatMessage) -> Json:
    return {"caption": message.text} if message.text else {}


def _command(text: str) -> Json:
    if not text.startswith("/") or len(text) < 2:
        return {}
    length = utf16_units(text.split(maxsplit=1)[0])
    return {"entities": [{"type": "bot_command", "offset": 0, "length": length}]}
