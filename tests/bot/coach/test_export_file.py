"""What stands in a coach's ZIP, and what happens when it cannot be made or sent at once."""

import asyncio
import io
import zipfile
from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from bot.engine import Engine
from bot.export import TOO_LARGE, zipped
from bot.export.sheets import Sheet
from bot.making import drawing
from bot.making.slow_work import Failed, SlowWork
from bot.net.outbox import Outbox
from conversations.protocol import Say
from conversations.words import exporting as words
from core.facts import CoachDid, LoadMoved, Noticed, Rated, SetDone
from core.store import facts, people
from core.store.connection import Store
from core.store.mail import Priority
from tests.bot.coach.exported import a_minute_later, asks, opened, table, waits, wanted, zips
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, START, Room, RoomOnFile

AINO = 2003
FORMULAS = ("=1+1", "@SUM(1)", "+1", "-1", "\t=1+1")


@pytest.fixture
def room() -> Iterator[Room]:
    made = RoomOnFile()
    yield made
    made.stage.close()


# --- what stands in it -----------------------------------------------------------------------------------
def test_sessions_csv_says_what_the_store_says(room: Room) -> None:
    clients = [room.client(RUTA, "Ruta"), room.client(MILO, "Milo"), room.client(AINO, "Aino", coach=SECOND)]
    for number, client in enumerate(clients):
        for day in range(3):
            at, session = room.now - timedelta(days=7 - 2 * day), f"{client}-{day}"
            room.trained(client, session, (30 + number + day, 18 + day, 12), at, f"{10 + 2.5 * day:g} kg")
            room.put(client, Rated(at, session, "effort", "after", 5 + day))
            room.put(client, Rated(at, session, "pain", "after", day, "muscle"))
            room.put(client, Rated(at, session, "pain", "before", 1, "joint"))
            room.put(
                client, LoadMoved(at, session, "goblet_squat", "10 kg", f"{12 + day} kg", "raise", "", True)
            )
    first = facts.current(room.store, SetDone, clients[0], set_no=1)[0]
    room.put(clients[0], replace(first, reps=27))
    found = table(opened(asks(room, COACH)[-1]), "sessions")
    shown = [
        (int(row["client_id"]), row["session"], int(row["set"]), int(row["reps"]), f"{row['load']} {row['unit']}",
         float(row["rest_s"]), int(row["effort"]), int(row["pain"]), row["next_load"])
        for row in found
    ]  # fmt: skip
    rows = room.store.rows(
        "SELECT s.person, s.session, s.set_no, s.reps, s.doing, s.rest_s,"
        " (SELECT score FROM rated AS r WHERE r.session = s.session AND r.what = 'effort'),"
        " (SELECT max(score) FROM rated AS r WHERE r.session = s.session AND r.what = 'pain'),"
        ' (SELECT "use" FROM load_moved AS m WHERE m.session = s.session)'
        " FROM set_done AS s JOIN person AS p ON p.id = s.person AND p.coach = ?"
        " WHERE s.id NOT IN (SELECT replaces FROM set_done WHERE replaces IS NOT NULL)",
        [room.person(COACH).id],
    )
    assert len(rows) == 18
    assert sorted(shown) == sorted(tuple(row) for row in rows)
    assert (clients[0], f"{clients[0]}-0", 1, 27) in [one[:4] for one in shown]  # as corrected
    days = {row["session"]: row["date"] for row in found}
    assert days[f"{clients[0]}-0"] == (room.now - timedelta(days=7)).date().isoformat()
    assert {row["rest_s"] for row in found} == {"30.0"}  # a point, whatever the machine's own habit


def test_what_was_never_said_is_an_empty_cell_and_no_zero(room: Room) -> None:
    room.trained(room.client(RUTA, "Ruta"), "1", (30,), room.now)
    [row] = table(opened(asks(room, COACH)[-1]), "sessions")
    assert [row[name] for name in ("reps_left", "refill", "effort", "pain", "next_load")] == [""] * 5


def test_it_opens_right_in_a_spreadsheet(room: Room) -> None:
    client = room.client(RUTA, "Zoë Žukauskaitė")
    for formula in FORMULAS:
        room.put(client, Noticed(room.now, "note", formula))
    files = opened(asks(room, COACH)[-1])
    for content in files.values():
        assert content.startswith(b"\xef\xbb\xbf")
        assert content.count(b"\n") == content.count(b"\r\n")
    assert [row["said"] for row in table(files, "noticed")] == [f"'{formula}" for formula in FORMULAS]
    assert table(files, "person")[0]["name"] == "Zoë Žukauskaitė"


@pytest.mark.parametrize("formula", FORMULAS)
def test_a_name_that_is_a_formula_stays_a_name(room: Room, formula: str) -> None:
    client = room.client(RUTA, formula)
    room.trained(client, "1", (30,), room.now)
    files = opened(asks(room, COACH)[-1])
    assert table(files, "sessions")[0]["client"] == f"'{formula}"
    assert table(files, "person")[0]["name"] == f"'{formula}"


# --- what goes wrong -------------------------------------------------------------------------------------
def restarted(room: Room) -> Outbox:
    """The same file, opened by a program that was started again."""
    stage, path = room.stage, Path(room.store.path)
    stage.engine.store.close()
    store = Store(path, synchronous="OFF")
    stage.engine = Engine(store, stage.engine.config, stage.clock.now, "cuffline_play_bot")
    stage.outbox = Outbox(store, stage.bot, stage.clock.now, drawing.draw)
    stage.engine.resume()
    return stage.outbox


def test_a_restart_between_the_yes_and_the_file_loses_nothing(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (31,), room.now)
    waits(room, COACH)
    restarted(room)
    a_minute_later(room)
    [sent] = zips(room, COACH)
    assert table(opened(sent), "sessions")[0]["reps"] == "31"
    assert len(facts.current(room.store, CoachDid, client, action="exported")) == 1


def test_it_holds_what_is_on_record_when_it_goes_out(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    waits(room, COACH)
    room.trained(client, "1", (29,), room.now)
    a_minute_later(room)
    [sent] = zips(room, COACH)
    assert [row["reps"] for row in table(opened(sent), "sessions")] == ["29"]


def test_the_file_itself_is_never_stored(room: Room) -> None:
    room.client(RUTA, "Ruta")
    asks(room, COACH)
    [row] = room.store.rows("SELECT body FROM outbox WHERE kind = 'export'")
    assert len(row["body"]) < 300
    assert "Ruta" not in row["body"]


def test_a_file_too_large_for_the_chat_is_said_with_the_way_round_it(
    room: Room, monkeypatch: pytest.MonkeyPatch
) -> None:
    room.client(RUTA, "Ruta")
    whole = len(zipped.made(wanted(room, COACH, [room.person(RUTA).id])))
    monkeypatch.setattr(zipped, "MOST", whole)
    assert zipped.made(wanted(room, COACH, [room.person(RUTA).id])) != TOO_LARGE
    monkeypatch.setattr(zipped, "MOST", whole - 1)
    assert "cuffline export DIR" in asks(room, COACH)[-1].text
    assert zips(room, COACH) == []


def test_nothing_more_is_read_once_it_is_too_large(monkeypatch: pytest.MonkeyPatch) -> None:
    def never() -> Iterator[dict[str, Any]]:
        raise AssertionError("read all the same")
        yield {}

    monkeypatch.setattr(zipped, "MOST", 1)
    first, second = Sheet("first", ["a"], iter([{"a": 1}])), Sheet("second", ["a"], never())
    assert zipped.packed([first, second], START) == TOO_LARGE


def test_an_alert_overtakes_an_export_that_is_being_made(room: Room) -> None:
    room.client(RUTA, "Ruta")
    order: list[str] = []

    async def slow(kind: str, body: dict[str, Any]) -> bytes:
        room.stage.engine.say(room.person(COACH), Say("alert"), room.now, Priority.ALERT)
        room.stage.outbox.look()
        await room.stage.api.wait(lambda: room.says(COACH) == "alert", 10)
        order.append("alert is out")
        return zipped.made(body)

    room.stage.outbox = Outbox(room.store, room.stage.bot, room.stage.clock.now, slow)
    asks(room, COACH)
    assert order == ["alert is out"]
    assert len(zips(room, COACH)) == 1


def test_where_no_process_can_be_had_it_is_said_and_nothing_is_made_here(
    room: Room, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("CRITICAL")
    room.client(RUTA, "Ruta")
    here: list[str] = []

    async def none(self: SlowWork, wanted: dict[str, Any]) -> bytes:
        raise OSError("no process can be had")

    monkeypatch.setattr(SlowWork, "done", none)
    monkeypatch.setattr(drawing, "drawn", lambda kind, body: here.append(kind))
    room.stage.outbox = Outbox(room.store, room.stage.bot, room.stage.clock.now, SlowWork().draw)
    assert asks(room, COACH)[-1].text == words.NOT_MADE
    assert here == []
    assert zips(room, COACH) == []
    with pytest.raises(Failed):
        asyncio.run(SlowWork().draw("export", {}))


def test_a_process_of_its_own_makes_the_same_file(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (31, 18, 11), room.now)
    asked = wanted(room, COACH, [client])
    assert asyncio.run(SlowWork().draw("export", asked)) == zipped.made(asked)


def test_files_carry_the_coachs_own_time(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    people.move_zone(room.store, room.person(COACH).id, "Europe/Helsinki")
    made = zipped.made(wanted(room, COACH, [client]))
    with zipfile.ZipFile(io.BytesIO(made)) as archive:
        assert {one.date_time for one in archive.infolist()} == {(2026, 3, 2, 20, 0, 0)}
