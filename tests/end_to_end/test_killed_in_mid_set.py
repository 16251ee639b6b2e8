"""From the invitation to the digest over HTTP, with the bot killed in mid-set."""

import asyncio
import re
import sqlite3
from pathlib import Path

from tests.end_to_end.room import Room

HEALTHY_NO = 10  # groups of the screening, one "any of these?" each, and smoking


async def joined(room: Room) -> None:
    """Invitation, consent, screening, clearance, plan."""
    coach, client = room.coach, room.client
    client.types("hello?")
    refusal = await room.hears(client, "invited")
    assert "2001" in refusal.text
    coach.types("invite")
    await room.type(coach, "first name", "Ruta")
    invitation = await room.hears(coach, "For Ruta")
    code = re.search(r"type ([A-Z2-7]{26})", invitation.text)
    assert code is not None
    client.types(code[1])
    await room.tap(client, "Do you agree", "Yes")
    for question, answer in (
        ("How old", "34"),
        ("Where do you live", "Lisbon"),
        ("emergency", "112"),
        ("phone number", "skip"),
        ("Where do you train", "12 Mill Lane"),
        ("Who should be rung", "Tomas, 555 0101"),
        ("alone", "Alone"),
        ("type for you", "No"),
        ("weigh", "70 kg"),
        ("How tall", "172 cm"),
        ("half an hour", "yes"),
    ):
        await room.type(client, question, answer)
    await room.type(client, "smoke", "no")
    await room.type(client, "blood pressure", "124/78")
    for _ in range(HEALTHY_NO - 1):
        await room.type(client, r"\?", "no")
    await room.tap(coach, "Your decision", "Clear, arms and legs")
    await room.tap(coach, "note", "No note")
    await room.tap(coach, "only one who gets alerts", "I am alone")
    await room.tap(coach, "Which template", "One dumbbell: goblet squat")
    await room.type(coach, "Which loads", "8, 10, 12 kg")
    await room.type(coach, "Start goblet squat", "10 kg")
    await room.tap(coach, "Which days", "No fixed days")
    await room.tap(coach, "Send it", "Send it")
    await room.tap(client, "Your plan", "Start a session")


async def banded(room: Room) -> None:
    """The questions before, bands on, checked."""
    client = room.client
    for question, answer in (
        ("Anything new", "no"),
        ("Fever", "no"),
        ("Any pain in a joint", "0"),
        ("same muscles", "no"),
        ("drill", "done"),
        ("Sound on", "heard it"),
        ("Warm up", "done"),
    ):
        await room.type(client, question, answer)
    await room.tap(client, "Bands on", "Bands are on")
    await room.type(client, "How tight", "7")
    await room.tap(client, "Left leg", "Under 2 seconds")
    await room.tap(client, "Right leg", "Under 2 seconds")
    await room.tap(client, "How do they feel", "Fine")


async def finished(room: Room) -> None:
    """The second check, set 2, and the questions after."""
    client = room.client
    await room.type(client, "How tight", "7")
    await room.tap(client, "Left leg", "Under 2 seconds")
    await room.tap(client, "Right leg", "Under 2 seconds")
    await room.tap(client, "How do they feel", "Fine")
    await room.tap(client, "Go · set 2", "Set done")
    await room.hears(client, "How many clean reps")
    client.types("14")
    await room.hears(client, "14, noted")
    client.types("off")
    await room.type(client, "how many more clean reps", "4")
    await room.type(client, "How hard", "6")
    await room.type(client, "Any pain", "0")
    await room.type(client, "tingling or numb", "no")
    recap = await room.hears(client, "Goblet squat.* 10 kg")
    assert "28, 14" in recap.text
    assert "Next time" in recap.text


def rows(db: Path, sql: str) -> list[tuple[object, ...]]:
    connection = sqlite3.connect(f"file:{db}?mode=ro", uri=True)
    try:
        return connection.execute(sql).fetchall()
    finally:
        connection.close()


async def story(room: Room) -> None:
    """All of it."""
    await room.open()
    await joined(room)
    await banded(room)
    await room.hears(room.client, "Set 1 of 2")
    room.kill()
    room.client.types("done")  # said while nobody listens
    room.start()
    await room.hears(room.client, "How many clean reps")
    room.client.types("28")
    room.kill()
    room.start()
    await room.hears(room.client, "28, noted")
    await finished(room)
    room.coach.types("week")
    await room.hears(room.coach, "Your week")
    assert room.stop() == 0


def test_a_session_goes_on_after_sigkill_with_nothing_lost_and_nothing_doubled(tmp_path: Path) -> None:
    room = Room(tmp_path / "practice with a space.db")

    async def all_of_it() -> None:
        try:
            await story(room)
        finally:
            await room.close()

    asyncio.run(all_of_it())
    assert rows(room.db, "SELECT set_no, reps FROM current_set_done ORDER BY set_no") == [(1, 28), (2, 14)]
    assert rows(room.db, "SELECT count(*) FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL") == [
        (0,)
    ]
    assert rows(room.db, "SELECT count(*) FROM watch") == [(0,)]
    assert rows(room.db, "SELECT why FROM session_ended") == [("done",)]
