"""The disk is full: nothing is confirmed without a commit, whoever must know is told, and nothing is lost."""

import asyncio
import sqlite3
from collections.abc import Awaitable, Callable
from contextlib import suppress
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from telegram import Bot

from bot.app import Program
from bot.clocks.clock import SetClock
from bot.config import Config
from bot.local.api import LocalApi
from bot.local.inprocess import InProcess
from bot.net import intake
from bot.net.direct import APART, Direct
from conversations.words import engine as words
from core.facts import BandsOn, Detail, SetDone
from core.plans import Region
from core.store import facts, inbox, people
from core.store.connection import Store, cannot_write
from core.store.people import Role
from tests.bot.database.failing import FullAt, full
from tests.practice import CLIENT as PRACTISING
from tests.practice import Practice

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
COACH, OTHER_COACH, CLIENT, STRANGER = 1001, 1002, 2001, 3001
TOKEN = "1:local"
LONGEST_S = 10.0
LONG = "this will not fit " * 500  # more than the pages that are there can hold


class Scene:
    """A program whose database may not grow, two phones, and a client with bands on."""

    def __init__(self, folder: Path) -> None:
        self.clock = SetClock(START)
        self.api = LocalApi(self.clock.now, TOKEN)
        self.coach = self.api.add_phone(COACH, "Coach")
        self.client = self.api.add_phone(CLIENT, "Ruta")
        self.stranger = self.api.add_phone(STRANGER, "Nobody")
        request = InProcess(self.api)
        self.bot = Bot(TOKEN, request=request, get_updates_request=request)
        self.store = Store(folder / "cuffline.db", synchronous="OFF")
        self.config = Config(TOKEN, "http://127.0.0.1", folder / "cuffline.db", (COACH,), "UTC")

    async def open(self) -> None:
        """Start everything that the test does not do itself."""
        await self.bot.initialize()
        self.program = Program(self.config, self.clock, self.store, self.bot)
        with self.store.transaction():
            coach = people.by_chat(self.store, COACH)
            assert coach is not None
            self.person = people.add(self.store, CLIENT, "Ruta", Role.CLIENT, "UTC", START, coach.id)

    def bands_on(self) -> None:
        """The client puts the bands on."""
        from bot.engine import recording

        with self.store.transaction():
            on = BandsOn(START, "1-1", "1.1", Region.LEGS, 600)
            recording.record(self.program.engine, self.person, on)

    def fill_the_disk(self) -> None:
        """No page more."""
        pages = self.store.rows("PRAGMA page_count")[0][0]
        self.store.execute(f"PRAGMA max_page_count = {pages}")

    def make_room(self) -> None:
        """As many pages as it takes."""
        self.store.execute("PRAGMA max_page_count = 1000000")

    def update(self, chat: int, text: str, number: int = 5) -> intake.Numbered:
        """A message as the server gives it."""
        message = {
            "message_id": number,
            "date": int(START.timestamp()),
            "chat": {"id": chat, "type": "private"},
            "from": {"id": chat, "is_bot": False, "first_name": "x"},
            "text": text,
        }
        return number, {"update_id": number, "message": message}

    def heard(self, number: int) -> list[str]:
        """What the bot wrote to somebody."""
        return [message.text for message in self.api.phones[number].history if not message.mine]


def played(folder: Path, script: Callable[[Scene], Awaitable[None]]) -> None:
    async def play() -> None:
        scene = Scene(folder)
        await scene.open()
        await script(scene)
        scene.store.close()

    asyncio.run(play())


def test_what_cannot_be_committed_is_not_kept_and_client_coach_and_operator_hear_it(tmp_path: Path) -> None:
    async def script(scene: Scene) -> None:
        scene.fill_the_disk()
        with pytest.raises(intake.NotKept):
            scene.program.receive([scene.update(CLIENT, LONG)])
        await scene.program.direct.done()
        assert inbox.unhandled(scene.store) == []
        assert scene.heard(CLIENT) == [words.CANNOT_KEEP]
        assert scene.heard(CLIENT)[0].startswith("If bands are on, take them off now")
        assert words.CANNOT_KEEP_COACH.format(name="Ruta") in scene.heard(COACH)
        assert "database or disk is full" in scene.heard(COACH)[0]

    played(tmp_path, script)


def test_whoever_has_bands_on_is_told_although_somebody_else_wrote(tmp_path: Path) -> None:
    async def script(scene: Scene) -> None:
        scene.bands_on()
        scene.fill_the_disk()
        with pytest.raises(intake.NotKept):
            scene.program.receive([scene.update(STRANGER, LONG)])
        await scene.program.direct.done()
        assert scene.heard(CLIENT) == [words.CANNOT_KEEP]
        assert scene.heard(STRANGER) == []

    played(tmp_path, script)


def test_a_coach_who_writes_hears_it_too_and_the_log_says_it_once(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    async def script(scene: Scene) -> None:
        scene.api.add_phone(OTHER_COACH, "Other")
        with scene.store.transaction():
            people.add(scene.store, OTHER_COACH, "Other", Role.COACH, "UTC", START)
        scene.fill_the_disk()
        for _ in range(3):
            with pytest.raises(intake.NotKept):
                scene.program.receive([scene.update(OTHER_COACH, LONG)])
        await scene.program.direct.done()
        assert scene.heard(OTHER_COACH) == [words.CANNOT_KEEP_OTHER_COACH]
        assert caplog.text.count("the database cannot be written") == 1
        scene.make_room()
        scene.program.disk.pause = no_pause
        await scene.program.disk.recover(lambda: None)
        await scene.program.direct.done()
        assert scene.heard(OTHER_COACH)[-1] == words.KEPT_AGAIN
        assert "the database can be written again" in caplog.text

    played(tmp_path, script)


async def no_pause(seconds: float) -> None:
    """Wait for nothing."""


def test_nobody_is_told_the_same_twice_within_ten_minutes(tmp_path: Path) -> None:
    async def script(scene: Scene) -> None:
        direct = Direct(scene.bot, scene.clock.now)
        for minutes in (0, 1, 9):
            scene.clock.skip_to(START + timedelta(minutes=minutes))
            direct.say(CLIENT, "off")
        await direct.done()
        assert scene.heard(CLIENT) == ["off"]
        scene.clock.skip_to(START + APART)
        direct.say(CLIENT, "off")
        await direct.done()
        assert scene.heard(CLIENT) == ["off", "off"]

    played(tmp_path, script)


def test_when_there_is_room_again_everybody_who_was_warned_hears_it_and_work_goes_on(tmp_path: Path) -> None:
    async def script(scene: Scene) -> None:
        scene.bands_on()
        scene.fill_the_disk()
        beats, waits = [], []

        async def pause(seconds: float) -> None:
            waits.append(seconds)
            if len(waits) == 3:
                scene.make_room()

        scene.program.disk.pause = pause
        with pytest.raises(intake.NotKept):
            scene.program.receive([scene.update(CLIENT, LONG)])
        assert not scene.program.disk.good.is_set()
        await scene.program.disk.recover(lambda: beats.append(1))
        await scene.program.direct.done()
        assert (len(waits), len(beats)) == (3, 3), "the watchdog sees that we are alive"
        assert scene.heard(CLIENT)[-1] == scene.heard(COACH)[-1] == words.KEPT_AGAIN
        scene.program.receive([scene.update(CLIENT, LONG)])
        assert len(inbox.unhandled(scene.store)) == 1
        assert scene.store.rows("SELECT * FROM setting WHERE name = 'probe'") == []

    played(tmp_path, script)


def test_nothing_is_said_while_all_is_well(tmp_path: Path) -> None:
    async def script(scene: Scene) -> None:
        await scene.program.disk.recover(lambda: None)
        await scene.program.direct.done()
        assert scene.heard(COACH) == []

    played(tmp_path, script)


def test_updates_that_were_not_kept_are_fetched_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(intake, "PAUSE_S", 0)
    kept: list[list[int]] = []

    class Done(Exception):
        """The script is over."""

    def receive(updates: list[intake.Numbered]) -> None:
        kept.append([number for number, _ in updates])
        if len(kept) < 3:
            raise intake.NotKept
        raise Done

    async def script(scene: Scene) -> None:
        scene.client.types("31")
        with pytest.raises(Done):
            await asyncio.wait_for(
                intake.poll(scene.bot, receive), LONGEST_S
            )  # confirmed, they never come again
        assert kept[0] == kept[1] == kept[2]

    played(tmp_path, script)


def test_the_running_program_warns_goes_on_and_answers_what_came_meanwhile(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("CRITICAL")
    monkeypatch.setattr(intake, "PAUSE_S", 0.01)

    async def script(scene: Scene) -> None:
        async def pause(seconds: float) -> None:
            await asyncio.sleep(0.01)

        async def hears(words_heard: str) -> None:
            await scene.api.wait(lambda: words_heard in scene.heard(CLIENT), LONGEST_S)

        scene.program.disk.pause = pause
        running = asyncio.ensure_future(scene.program.run())
        scene.fill_the_disk()
        scene.client.types(LONG[:4000])
        await hears(words.CANNOT_KEEP)
        assert words.CLIENT_MENU not in scene.heard(CLIENT), "nothing is answered that was not kept"
        scene.make_room()
        await hears(words.KEPT_AGAIN)
        await hears(words.CLIENT_MENU)
        running.cancel()
        await asyncio.gather(running, return_exceptions=True)
        kept = scene.store.rows("SELECT body FROM inbox WHERE person = ?", [scene.person])
        assert len(kept) == 1

    played(tmp_path, script)


# --- a whole session, with every write failing once ---
def session_with_a_full_disk_at(write: int) -> tuple[list[object], int]:
    """The facts of a session in which that write fails, and how many writes there were."""
    practice = Practice()
    connection = FullAt(practice.stage.engine.store.connection, write)
    practice.stage.engine.store.connection = connection  # type: ignore[assignment]
    settle = practice.settle

    def settle_in_spite_of_it() -> None:
        with suppress(sqlite3.OperationalError):
            settle()
        settle()

    practice.settle = settle_in_spite_of_it  # type: ignore[method-assign]
    practice.in_a_set()
    for _ in range(2):
        practice.taps(PRACTISING, "Set done")
        practice.types(PRACTISING, "31")
    practice.types(PRACTISING, "stop")
    store = practice.stage.engine.store
    found: list[object] = [
        *facts.current(store, SetDone, practice.client),
        *facts.current(store, BandsOn, practice.client),
    ]
    assert store.rows("SELECT * FROM inbox WHERE handled_at IS NULL OR failed IS NOT NULL") == []
    practice.stage.close()
    return found, connection.writes


@pytest.mark.parametrize("part", range(8))
def test_a_write_that_fails_anywhere_in_a_session_loses_and_doubles_nothing(part: int) -> None:
    expected, writes = session_with_a_full_disk_at(0)
    assert len(expected) >= 2
    found, _ = session_with_a_full_disk_at(1 + part * (writes - 1) // 7)
    assert found == expected


# --- what counts as the disk ---
@pytest.mark.parametrize(
    ("problem", "disk"),
    [(full(), True), (sqlite3.OperationalError("no such column"), False), (ValueError("reps"), False)],
)
def test_a_mistake_in_a_statement_is_not_the_disk(problem: Exception, disk: bool) -> None:
    assert cannot_write(problem) is disk


def test_a_real_mistake_in_a_statement_is_not_the_disk(tmp_path: Path) -> None:
    store = Store(tmp_path / "cuffline.db")
    with pytest.raises(sqlite3.OperationalError) as caught:
        store.execute("SELECT nothing FROM nowhere")
    assert not cannot_write(caught.value)
    store.close()


def test_a_commit_that_fails_leaves_no_transaction_open(tmp_path: Path) -> None:
    store = Store(tmp_path / "cuffline.db")
    person = people.add(store, CLIENT, "Ruta", Role.CLIENT, "UTC", START)
    real = store.connection
    store.connection = FullAt(real, 2)  # type: ignore[assignment]
    with pytest.raises(sqlite3.OperationalError), store.transaction():
        facts.put(store, person, Detail(START, "phone", "1"), START)
    with store.transaction():
        facts.put(store, person, Detail(START, "phone", "2"), START)
    assert [one.value for one in facts.current(store, Detail, person)] == ["2"]
    store.close()
