"""A coach asks for the records as tables in the chat: own clients only, said first, logged, one ZIP."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine.numbers.weeks import alerts_of
from bot.export import zipped
from conversations.words import exporting as words
from core.facts import CoachDid, Detail, Noticed, Rated
from core.store import duties, erasure, facts, people, tables
from tests.bot.coach.exported import a_minute_later, asks, opened, table, waits, wanted, zips
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, THIRD, Room, RoomOnFile

AINO = 2003


@pytest.fixture
def room() -> Iterator[Room]:
    made = RoomOnFile()
    yield made
    made.stage.close()


def marked(room: Room, chat: int, name: str, coach: int) -> int:
    """A client who has left traces with their name in them everywhere."""
    client, by = room.client(chat, name, coach=coach), room.person(coach).id
    room.trained(client, f"{name}-1", (31, 18, 11), room.now)
    room.put(client, Detail(room.now, "phone", f"555 {name}"))
    room.put(client, Rated(room.now, f"{name}-1", "pain", "after", 1, f"{name} knee"))
    room.put(client, Noticed(room.now, "note", f"{name} says"))
    room.put(client, CoachDid(room.now, by, "call_note", f"{name} was rung"))
    room.types(chat, f"my {name} foot is numb")
    room.types(chat, f"coach, {name} here")
    room.types(coach, f"to {name}: rest well, {name}")
    room.types(coach, f"client {name}")
    return client


def log_of(room: Room, client: int) -> list[int]:
    """Which coaches have asked for a file with this client in it."""
    found = facts.current(room.store, CoachDid, client, action="exported")
    return [one.by for one in found]


# --- asked for, said, sent -------------------------------------------------------------------------------
def test_what_it_is_and_whose_stands_before_the_file(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.client(MILO, "Milo")
    asked, coming, sent = asks(room, COACH)
    assert "Your own clients (2): Milo, Ruta" in asked.text
    for said in ("health data", "not end-to-end encrypted", "your practice's rules", "log"):
        assert said in asked.text
    assert coming.text == words.COMING
    assert sent.text.startswith("Records of 2 clients, 2 March 2026, 18:00. Health data")
    assert sent.document_name == "records-2026-03-02.zip"
    assert set(opened(sent)) == {f"{name}.csv" for name in (*tables.OF_CLIENTS, "sessions")}


def test_nothing_is_made_or_logged_before_the_yes(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.types(COACH, "export")
    room.types(COACH, "menu")
    assert zips(room, COACH) == []
    assert log_of(room, client) == []


@pytest.mark.parametrize("typed", ["export", "CSV", "spreadsheet", "/export", "Export data."])
def test_it_is_asked_for_in_plain_words(room: Room, typed: str) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, typed)
    assert room.labels(COACH) == [words.YES]
    room.types(COACH, "send the file")
    assert len(zips(room, COACH)) == 1


def test_it_is_a_button_of_the_menu(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "menu")
    room.taps(COACH, words.MENU)
    room.taps(COACH, words.YES)
    assert len(zips(room, COACH)) == 1


def test_it_is_asked_for_while_another_question_is_open_and_that_stays_open(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "invite")
    asks(room, COACH)
    assert len(zips(room, COACH)) == 1
    room.types(COACH, "Aino")
    assert "For Aino" in room.says(COACH)


def test_a_coach_without_clients_is_told_so(room: Room) -> None:
    room.types(COACH, "export")
    assert "No clients yet" in room.says(COACH)


@pytest.mark.parametrize("typed", ["export", "csv", "spreadsheet"])
def test_a_client_who_types_it_gets_their_own_data_and_no_zip(room: Room, typed: str) -> None:
    client = room.client(RUTA, "Ruta")
    room.types(RUTA, typed)
    sent = [one.document_name for one in room.messages(RUTA) if one.document_name]
    assert sent == ["my-data.txt", "my-data.json"]
    assert log_of(room, client) == []


def test_a_stranger_who_types_it_gets_the_refusal(room: Room) -> None:
    room.stage.add(AINO, "Aino", lambda message, now: None)
    room.types(AINO, "export")
    assert "only talks with people whom a coach has invited" in room.says(AINO)


def test_asked_for_twice_before_it_went_out_it_is_sent_once(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    waits(room, COACH)
    room.taps(COACH, words.YES)
    a_minute_later(room)
    assert [one.text for one in room.messages(COACH)].count(words.ALREADY) == 1
    assert len(zips(room, COACH)) == 1
    assert len(log_of(room, client)) == 1


# --- whose -----------------------------------------------------------------------------------------------
def test_nobody_gets_a_byte_about_anothers_client(room: Room) -> None:
    marked(room, RUTA, "Zrutaq", COACH)
    marked(room, MILO, "Zmiloq", SECOND)
    for coach, mine, other in ((COACH, b"Zrutaq", b"Zmiloq"), (SECOND, b"Zmiloq", b"Zrutaq")):
        messages = asks(room, coach)
        files = opened(messages[-1])
        for name in ("person", "detail", "rated", "noticed", "coach_did", "alert", "sessions"):
            assert mine in files[f"{name}.csv"], name
        assert not [name for name, content in files.items() if other in content]
        assert not [one for one in messages if other.decode() in one.text]
        numbers = {row["person"] for name in files for row in table(files, name[:-4]) if "person" in row}
        assert numbers == {str(room.person(RUTA if coach == COACH else MILO).id)}


def test_a_client_who_was_handed_over_is_in_the_new_coachs_file_only(room: Room) -> None:
    client = marked(room, MILO, "Zmiloq", COACH)
    room.client(RUTA, "Ruta")
    people.hand_over(room.store, client, room.person(SECOND).id)
    assert not [name for name, content in opened(asks(room, COACH)[-1]).items() if b"Zmiloq" in content]
    assert b"Zmiloq" in opened(asks(room, SECOND)[-1])["person.csv"]


def stands_in(room: Room) -> None:
    """The first coach is away for two weeks, the third looks after their clients."""
    room.types(COACH, "stand-in")
    room.taps(COACH, "Kai")
    room.types(COACH, "two weeks")


def test_a_stand_in_gets_whom_they_see_now_and_is_told_whose_they_are(room: Room) -> None:
    ruta, milo = room.client(RUTA, "Ruta"), room.client(MILO, "Milo", coach=THIRD)
    stands_in(room)
    asked, *_, sent = asks(room, THIRD)
    assert "Your own clients (1): Milo" in asked.text
    assert "Vera's, while you stand in (1): Ruta" in asked.text
    assert {row["name"] for row in table(opened(sent), "person")} == {"Ruta", "Milo"}
    assert log_of(room, ruta) == log_of(room, milo) == [room.person(THIRD).id]
    assert {row["name"] for row in table(opened(asks(room, COACH)[-1]), "person")} == {"Ruta"}


def test_a_stand_in_whose_time_ended_before_it_went_out_gets_only_their_own(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.client(MILO, "Milo", coach=THIRD)
    stands_in(room)
    waits(room, THIRD)
    room.types(COACH, "stand-in")
    room.taps(COACH, "I am back")
    a_minute_later(room)
    [sent] = zips(room, THIRD)
    assert {row["name"] for row in table(opened(sent), "person")} == {"Milo"}


def test_when_nobody_is_left_who_may_be_seen_there_is_no_file(room: Room) -> None:
    room.client(RUTA, "Ruta")
    stands_in(room)
    waits(room, THIRD)
    room.types(COACH, "stand-in")
    room.taps(COACH, "I am back")
    a_minute_later(room)
    assert zips(room, THIRD) == []
    assert words.INSTEAD["nobody"] in [one.text for one in room.messages(THIRD)]


def test_a_letter_that_names_anothers_client_brings_nothing(room: Room) -> None:
    other = room.client(MILO, "Milo", coach=SECOND)
    assert zipped.made(wanted(room, COACH, [other])) == b"nobody"
    assert zipped.made(wanted(room, COACH, [room.person(SECOND).id, 999])) == b"nobody"


def test_whoever_joined_later_under_an_erased_clients_number_is_not_meant(room: Room) -> None:
    first = room.client(RUTA, "Ruta")
    asked = room.now - timedelta(seconds=1)
    erasure.erase(room.store, first)
    assert room.client(MILO, "Milo") == first
    assert zipped.made(wanted(room, COACH, [first], asked=asked.isoformat())) == b"nobody"


# --- the log ---------------------------------------------------------------------------------------------
def test_each_client_in_it_has_a_line_in_the_log_that_they_may_ask_for(room: Room) -> None:
    ruta, milo = room.client(RUTA, "Ruta"), room.client(MILO, "Milo", coach=SECOND)
    asks(room, COACH)
    assert log_of(room, ruta) == [room.person(COACH).id]
    assert log_of(room, milo) == []
    room.types(COACH, "log ruta")
    assert "Vera: asked for a file of the records" in room.says(COACH)
    room.types(RUTA, "my data")
    own = next(one.document for one in room.messages(RUTA) if one.document_name == "my-data.txt")
    assert own is not None
    assert "by: Vera, action: asked for a file of the records" in own.decode()


def test_it_counts_as_no_act_on_an_alert(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.later(hours=1)  # after the plan was given, which is an act
    room.types(RUTA, "my foot is numb")
    asks(room, COACH)
    engine, since = room.stage.engine, room.now - timedelta(days=1)
    assert duties.open_alerts(room.store, client)
    assert [alert.acted for alert in alerts_of(engine, room.person(RUTA), since, room.now)] == [False]
