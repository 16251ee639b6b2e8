"""A message as the phone shows it, and the same message as the Bot API writes it."""

from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum
from mimetypes import guess_type
from typing import Any

from bot.local.markup import Entity, utf16_units
from bot.local.request import Buttons

Json = dict[str, Any]


class Kind(StrEnum):
    """What a message carries."""

    TEXT = "text"
    PHOTO = "photo"
    DOCUMENT = "document"
    STICKER = "sticker"
    VOICE = "voice"
    AUDIO = "audio"
    VIDEO = "video"


@dataclass(frozen=True, slots=True)
class Origin:
    """Who first wrote a forwarded message, as the API's User, and when."""

    sender: Json
    at: datetime


@dataclass(frozen=True, slots=True)
class ChatMessage:
    """One message of a chat; `mine` means the phone's owner sent it, `quiet` that it made no sound.

    `document` is the content of anything but a picture; `earlier` holds the words before each edit, oldest first.
    """

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
    entities: tuple[Entity, ...] = ()
    earlier: tuple[str, ...] = ()
    origin: Origin | None = None


def with_content(message: ChatMessage, data: bytes, name: str) -> ChatMessage:
    """Return the message with what it carries: a picture, or anything else under its name."""
    if message.kind is Kind.PHOTO:
        return replace(message, photo=data)
    return replace(message, document=data, document_name=name)


def person(user_id: int, name: str) -> Json:
    """Return the owner of a phone as the API's User."""
    return {"id": user_id, "is_bot": False, "first_name": name, "language_code": "en"}


def private_chat(user_id: int, name: str) -> Json:
    """Return the private chat with this person: it has the person's number."""
    return {"id": user_id, "type": "private", "first_name": name}


def on_the_wire(message: ChatMessage, chat: Json, sender: Json) -> Json:
    """Return the message as the API's Message, without what it replies to."""
    body: Json = {"message_id": message.id, "date": _seconds(message.at), "chat": chat, "from": sender}
    body |= _content(message)
    if message.edited:
        body["edit_date"] = _seconds(message.edited)
    if message.buttons:
        body["reply_markup"] = {"inline_keyboard": [[_button(*b) for b in row] for row in message.buttons]}
    if message.origin:
        origin = {"sender_user": message.origin.sender, "date": _seconds(message.origin.at)}
        body["forward_origin"] = {"type": "user"} | origin
    return body


def _seconds(time: datetime) -> int:
    return int(time.timestamp())


def _button(label: str, data: str) -> Json:
    return {"text": label, "callback_data": data}


def _content(message: ChatMessage) -> Json:
    if message.kind is Kind.TEXT:
        return {"text": message.text} | _entities("entities", message)
    caption = {"caption": message.text} if message.text else {}
    return _file(message, message.kind) | caption | _entities("caption_entities", message)


def _file(message: ChatMessage, kind: Kind) -> Json:
    # Sizes in pixels and lengths in seconds are not read from the content; nothing here needs them.
    file = {"file_id": message.file_id, "file_unique_id": f"u{message.file_id}"}
    match kind:
        case Kind.PHOTO:
            return {"photo": [file | {"width": 640, "height": 480}]}
        case Kind.STICKER:
            size = {"width": 512, "height": 512}
            return {"sticker": file | size | {"type": "regular", "is_animated": False, "is_video": False}}
        case Kind.VIDEO:
            return {"video": file | {"width": 640, "height": 480, "duration": 1}}
        case Kind.VOICE | Kind.AUDIO:
            return {kind.value: file | {"duration": 1}}
        case Kind.DOCUMENT | Kind.TEXT:
            kind_of_file, _ = guess_type(message.document_name or "")
            typed = {"mime_type": kind_of_file} if kind_of_file else {}
            return {"document": file | {"file_name": message.document_name} | typed}


def _entities(name: str, message: ChatMessage) -> Json:
    found = [_entity(entity) for entity in (*_command(message.text), *message.entities)]
    return {name: found} if found else {}


def _entity(entity: Entity) -> Json:
    body: Json = {"type": entity.kind, "offset": entity.offset, "length": entity.length}
    return body | ({"url": entity.url} if entity.url else {})


def _command(text: str) -> tuple[Entity, ...]:
    if not text.startswith("/") or len(text) < 2:
        return ()
    return (Entity("bot_command", 0, utf16_units(text.split(maxsplit=1)[0])),)
