"""A coach asks for the records over HTTP; the bot is killed before they went out, started again, and they come."""

import asyncio
import csv
import io
import zipfile
from datetime import UTC, datetime
from pathlib import Path

from tornado.httpclient import AsyncHTTPClient, HTTPResponse

from bot.local.messages import ChatMessage
from conversations.words import exporting as words
from core.facts import CoachDid, SetDone
from core.plans import Side
from core.store import facts, people
from core.store.connection import Store
from core.store.people import Role
from tests.end_to_end.room import COACH, Room

REPS = (31, 18, 11)
LONG_AGO = datetime(2026, 1, 26, 18, 0, tzinfo=UTC)


def practice_in(db: Path) -> None:
    """A coach, a client of theirs who trained, and one of another coach."""
    store = Store(db)
    with store.transaction():
        mine = people.add(store, COACH, "Coach", Role.COACH, "Europe/Lisbon", LONG_AGO)
        other = people.add(store, 1002, "Other", Role.COACH, "Europe/Lisbon", LONG_AGO)
        client = people.add(store, 2001, "Ruta", Role.CLIENT, "Europe/Lisbon", LONG_AGO, mine)
        people.add(store, 2002, "Zmiloq", Role.CLIENT, "Europe/Lisbon", LONG_AGO, other)
        for number, reps in enumerate(REPS, start=1):
            done = SetDone(
                LONG_AGO,
                "1",
                1,
                "goblet_squat",
                number,
                Side.BOTH,
                "10 kg",
                reps,
                False,
                LONG_AGO,
                30.0,
                6,
                False,
            )
            facts.put(store, client, done, LONG_AGO)
    store.close()


def documents(room: Room) -> list[ChatMessage]:
    """The files that the coach got."""
    return [one for one in room.coach.history if one.document is not None]


async def asked_for(room: Room) -> HTTPResponse:
    """Typed, said yes to, the bot killed and started again; the file as the page of both phones hands it out."""
    try:
        await room.open()
        room.coach.types("export")
        await room.tap(room.coach, "Shall I send it", words.YES)
        await room.hears(room.coach, "comes here by itself")
        room.kill()  # the process that makes the file has only begun
        assert documents(room) == []
        room.start()
        sent = await room.hears(room.coach, "Records of one client")
        assert room.server is not None
        return await AsyncHTTPClient().fetch(f"{room.server.url}/phone/{COACH}/attachment/{sent.id}")
    finally:
        await room.close()


def test_the_file_comes_after_a_kill_and_the_page_hands_it_out(tmp_path: Path) -> None:
    db = tmp_path / "cuffline.db"
    practice_in(db)
    room = Room(db)
    answer = asyncio.run(asked_for(room))
    assert answer.headers["Content-Disposition"] == "attachment"
    [sent] = documents(room)
    assert str(sent.document_name).endswith(".zip")
    with zipfile.ZipFile(io.BytesIO(answer.body)) as archive:
        files = {name: archive.read(name).decode("utf-8-sig") for name in archive.namelist()}
    rows = list(csv.DictReader(io.StringIO(files["sessions.csv"])))
    assert [(row["client"], int(row["reps"])) for row in rows] == [("Ruta", reps) for reps in REPS]
    assert not [name for name, text in files.items() if "Zmiloq" in text]
    store = Store(db)
    assert [one.action for one in facts.current(store, CoachDid, 2) + facts.current(store, CoachDid, 3)] == [
        "exported"
    ]
    store.close()
