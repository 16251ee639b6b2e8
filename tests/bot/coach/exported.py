"""Asking for an export in the chat, and opening what came."""

import csv
import io
import zipfile
from typing import Any

from bot.local.messages import ChatMessage
from conversations.words import exporting as words
from tests.bot.coach_room import Room

Row = dict[str, str]


def asks(room: Room, coach: int) -> list[ChatMessage]:
    """The coach asks and says yes; what came."""
    before = len(room.messages(coach))
    room.types(coach, "export")
    room.taps(coach, words.YES)
    return room.messages(coach)[before:]


def opened(message: ChatMessage) -> dict[str, bytes]:
    """The files of a ZIP, checked."""
    assert message.document is not None, message.text
    with zipfile.ZipFile(io.BytesIO(message.document)) as archive:
        assert archive.testzip() is None
        return {name: archive.read(name) for name in archive.namelist()}


def table(files: dict[str, bytes], name: str) -> list[Row]:
    """One of them as a spreadsheet reads it."""
    return list(csv.DictReader(io.StringIO(files[f"{name}.csv"].decode("utf-8-sig"), newline="")))


def a_minute_later(room: Room) -> None:
    """A letter that was refused is tried again."""
    room.later(minutes=1)
    room.settle()


def zips(room: Room, number: int) -> list[ChatMessage]:
    """The ZIPs that somebody got."""
    return [one for one in room.messages(number) if (one.document_name or "").endswith(".zip")]


def waits(room: Room, coach: int) -> None:
    """The coach has said yes, and the letter has not gone out."""
    room.types(coach, "export")
    newest = room.newest(coach)
    room.stage.phones[coach].taps(newest.id, words.YES)
    room.stage.api.fail_next("sendDocument", 1, 502)
    room.settle()
    assert zips(room, coach) == []


def wanted(room: Room, coach: int, clients: list[int], **more: Any) -> dict[str, Any]:
    """What the process is given."""
    now = room.now.isoformat()
    given = {"coach": room.person(coach).id, "db": room.store.path, "now": now, "asked": now}
    return {**given, "clients": clients, **more}
