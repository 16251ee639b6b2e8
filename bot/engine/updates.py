"""Raw updates into one plain shape. Only private chats with people count; the rest is refused politely."""

from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum
from typing import Any

from conversations.protocol import Media


class Kind(StrEnum):
    """What came in."""

    TEXT = "text"
    TAP = "tap"
    EDIT = "edit"
    MEDIA = "media"
    ELSEWHERE = "elsewhere"  # a group, a channel, a bot
    INLINE = "inline"  # typed behind the bot's name in some other chat
    NOTHING = "nothing"  # what is not asked for: edits in channels, polls, reactions, business messages, ...


@dataclass(frozen=True, slots=True)
class Incoming:
    """One update. `at`: the message's own date; for a tap None (its arrival counts)."""

    update_id: int
    kind: Kind
    chat: int = 0
    name: str = ""
    at: datetime | None = None
    text: str = ""
    message: int | None = None
    reply_to: int | None = None
    token: str = ""
    query: str = ""
    media: Media | None = None
    file: str = ""
    forwarded: bool = False  # somebody else's words


PRIVATE = {"type": "private"}
LONGEST_NAME = 64  # characters shown to a coach; the transport allows as many

MEDIA = {
    "photo": Media.PHOTO,
    "sticker": Media.STICKER,
    "voice": Media.VOICE,
    "audio": Media.VOICE,
    "video": Media.VIDEO,
    "video_note": Media.VIDEO,
    "animation": Media.VIDEO,
    "document": Media.FILE,
    "location": Media.LOCATION,
}

# https://core.telegram.org/bots/api#message; the second one from servers before version 7.0
FORWARDED = ("forward_origin", "forward_date")

# A file goes on only as what it came as, and only ordinary videos are sent on:
# https://core.telegram.org/bots/api#sending-files
AS_FILE = "document:"  # before the id of a film that came as a file; no id has a colon. Stored
NOT_PASSED_ON = ("video_note", "animation")


def read(update_id: int, body: dict[str, Any]) -> Incoming:
    """What an update says. Raises KeyError, TypeError or ValueError when it is malformed."""
    if "callback_query" in body:
        return _tap(update_id, body["callback_query"])
    if "inline_query" in body:
        return _inline(update_id, body["inline_query"])
    for field in ("message", "edited_message", "channel_post"):
        if field in body:
            return _message(update_id, body[field], edited=field == "edited_message")
    return Incoming(update_id, Kind.NOTHING)


def _tap(update_id: int, query: dict[str, Any]) -> Incoming:
    sender = query["from"]
    message = query.get("message") or {}
    if sender.get("is_bot") or message.get("chat", PRIVATE).get("type") != "private":
        return Incoming(update_id, Kind.NOTHING)
    return Incoming(
        update_id,
        Kind.TAP,
        chat=int(sender["id"]),
        name=_name(sender),
        message=message.get("message_id"),
        token=sound(query.get("data", "")),
        query=str(query["id"]),
    )


def _inline(update_id: int, query: dict[str, Any]) -> Incoming:
    """The words are for another chat and nobody here reads them."""
    kind = Kind.NOTHING if query["from"].get("is_bot") else Kind.INLINE
    return Incoming(update_id, kind, chat=int(query["from"]["id"]), query=str(query["id"]))


def _message(update_id: int, message: dict[str, Any], edited: bool) -> Incoming:
    chat = message["chat"]
    sender = message.get("from") or {}
    if chat.get("type") != "private" or sender.get("is_bot"):
        kind = Kind.NOTHING if edited else Kind.ELSEWHERE
        return Incoming(update_id, kind, chat=int(chat["id"]))
    at = datetime.fromtimestamp(int(message.get("edit_date") or message["date"]), UTC)
    media = _media(message)
    kind = Kind.EDIT if edited else Kind.TEXT
    if edited and media is Media.LOCATION:  # a live location moves on by edits
        return Incoming(update_id, Kind.NOTHING, chat=int(chat["id"]))
    if media is not None or "text" not in message:
        kind, media = Kind.MEDIA, media or Media.OTHER
    return Incoming(
        update_id,
        kind,
        chat=int(chat["id"]),
        name=_name(sender),
        at=at,
        text=sound(message.get("text") or message.get("caption") or ""),
        message=int(message["message_id"]),
        reply_to=(message.get("reply_to_message") or {}).get("message_id"),
        media=media,
        file=_file(message),
        forwarded=any(field in message for field in FORWARDED),
    )


def _media(message: dict[str, Any]) -> Media | None:
    """What came instead of words; a film that was sent as a file is a film."""
    field = next((field for field in MEDIA if field in message), None)
    if field is None:
        return None
    return Media.VIDEO if field == "document" and _is_film(message[field]) else MEDIA[field]


def _is_film(document: dict[str, Any]) -> bool:
    """By the type that its sender gave: https://core.telegram.org/bots/api#document"""
    return str(document.get("mime_type", "")).startswith("video/")


def sound(text: object) -> str:
    """Text that can be stored and sent: half a character (a lone surrogate) becomes the sign for a broken one."""
    return str(text).encode("utf-16", "surrogatepass").decode("utf-16", "replace")


def _name(sender: dict[str, Any]) -> str:
    """What somebody calls themselves, on one line."""
    return " ".join(sound(sender.get("first_name", "")).split())[:LONGEST_NAME]


def _file(message: dict[str, Any]) -> str:
    if "location" in message:  # to about a kilometre: more is not needed for a time zone
        place = message["location"]
        return f"{float(place['latitude']):.2f}, {float(place['longitude']):.2f}"
    for field in MEDIA:
        if field in message:
            found = message[field][-1] if field == "photo" else message[field]
            number = "" if field in NOT_PASSED_ON else str(found.get("file_id", ""))
            return f"{AS_FILE}{number}" if field == "document" and number and _is_film(found) else number
    return ""
