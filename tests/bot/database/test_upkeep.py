"""The running bot backs itself up every hour, and looks for damage at every start and every day."""

import asyncio
import errno
import logging
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from pathlib import Path

import pytest

from bot.cli import main
from bot.clocks.clock import SetClock
from bot.config import Config
from bot.database import backups, wiping
from bot.database.upkeep import Upkeep
from core.facts import Noticed
from core.store import copies, duties, erasure, facts, people, settings
from core.store.connection import Store
from core.store.duties import Watch
from tests.bot.terminal.practice import made
from tests.practice import CLIENT, COACH, Practice

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)


class Bot:
    """The upkeep of a bot, on a clock that is moved by hand."""

    def __init__(self, folder: Path) -> None:
        self.db = folder / "cuffline.db"
        made(self.db)
        self.config = Config("1:local", "http://127.0.0.1", self.db, (1001,), "UTC")
        self.clock = SetClock(START)
        self.told: list[str] = []
        self.store = Store(self.db, synchronous="OFF")
        self.upkeep = Upkeep(self.config, self.clock, self.store, self.told.append)

    def after(self, **time: float) -> None:
        """Time goes by, and it looks once."""
        self.clock.skip_to(self.clock.now() + timedelta(**time))
        asyncio.run(self.upkeep.look())

    @property
    def backups(self) -> list[datetime]:
        """When backups were made."""
        return [backup.at for backup in backups.found(self.config.backups, self.db)]


@pytest.fixture
def bot(tmp_path: Path) -> Bot:
    return Bot(tmp_path)


def test_a_backup_is_made_at_the_start_and_then_every_hour(bot: Bot) -> None:
    for minutes in (0, 59, 1, 59, 1):
        bot.after(minutes=minutes)
    assert bot.backups == [START + timedelta(hours=hours) for hours in (0, 1, 2)]
    for backup in backups.found(bot.config.backups, bot.db):
        assert "checksum agrees" in backups.verify(backup.path)
    assert bot.told == []


def test_a_restart_does_not_back_up_again_within_the_hour(bot: Bot) -> None:
    bot.after(minutes=0)
    bot.upkeep = Upkeep(bot.config, bot.clock, bot.store, bot.told.append)
    bot.after(minutes=30)
    assert len(bot.backups) == 1


def set_back(bot: Bot, to: datetime) -> None:
    """As a time server does it, unasked."""
    bot.clock._now = to
    asyncio.run(bot.upkeep.look())


@pytest.mark.parametrize("restarted", [False, True])
def test_a_clock_that_ran_ahead_and_was_set_back_holds_up_no_backup(bot: Bot, restarted: bool) -> None:
    bot.after(days=400)
    bot.after(hours=1)
    bot.after(minutes=59)
    if restarted:
        bot.upkeep = Upkeep(bot.config, bot.clock, bot.store, bot.told.append)
    set_back(bot, START)
    assert bot.backups == [START - timedelta(seconds=1), START], (
        "both are kept, called by now, in their order"
    )
    bot.after(minutes=59)
    assert len(bot.backups) == 2
    bot.after(minutes=1)
    assert bot.backups[-1] == START + timedelta(hours=1)
    for backup in backups.found(bot.config.backups, bot.db):
        assert "checksum agrees" in backups.verify(backup.path)
    bot.after(days=31)
    assert bot.backups == [bot.clock.now()], "no copy outlives its 30 days"


def test_a_clock_that_goes_back_by_a_moment_renames_nothing(bot: Bot) -> None:
    bot.after(minutes=0)
    set_back(bot, START - timedelta(seconds=59))
    assert bot.backups == [START]


def test_the_daily_look_for_damage_waits_for_no_time_that_was_wrong(
    bot: Bot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(copies, "damage", lambda db, quick=False: ["page 3"])
    bot.clock.skip_to(START + timedelta(days=400))
    bot.upkeep.checked_at = bot.clock.now()
    set_back(bot, START)
    bot.after(days=1)
    assert any("is damaged (" in text for text in bot.told)


def test_old_backups_go(bot: Bot) -> None:
    for _ in range(4):
        bot.after(hours=20)
    assert len(bot.backups) == 4
    bot.after(days=40)
    assert bot.backups == [bot.clock.now()]


def test_copies_that_a_kill_or_a_restore_left_run_out_too(bot: Bot) -> None:
    """Whoever is erased is told that every copy runs out within 30 days."""
    left = [bot.db.with_name(f"cuffline.db.before-20260301T180000Z{end}") for end in ("", "-wal")]
    left.append(bot.config.backups / "cuffline-20260301T180000Z.db.part")
    bot.config.backups.mkdir()
    others = [
        bot.db.with_name("cuffline.db.before-mine"),
        bot.db.with_name("other.db.before-20260101T180000Z"),
    ]
    for file in (*left, *others):
        file.write_bytes(b"")
    bot.after(minutes=0)
    assert [file.exists() for file in left] == [True, True, True]
    bot.after(hours=2)
    assert [file.exists() for file in left] == [True, True, False]
    bot.after(days=30)
    assert [file.exists() for file in left] == [False, False, False]
    assert all(file.exists() for file in others)


def test_a_backup_that_cannot_be_made_is_told_and_tried_again_an_hour_later(
    bot: Bot, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.CRITICAL)
    bot.config.backups.write_text("a file where the folder should be")
    bot.after(minutes=0)
    bot.after(minutes=30)
    assert len(bot.told) == 1
    assert "could not make a backup" in bot.told[0]
    bot.config.backups.unlink()
    bot.after(minutes=30)
    assert len(bot.backups) == 1


def test_a_disk_of_backups_that_fails_ends_nobody_s_session(
    bot: Bot, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """A mount that is gone fails already where the folder is read, and would end the program every minute."""

    def gone(*_: object) -> list[backups.Backup]:
        raise OSError(errno.EIO, "Input/output error")

    caplog.set_level(logging.CRITICAL)
    monkeypatch.setattr(backups, "found", gone)
    for minutes in (0, 1, 58, 1):
        bot.after(minutes=minutes)
    assert len(bot.told) == 2
    assert all("could not make a backup" in text for text in bot.told)


def test_a_bug_in_the_care_of_the_database_ends_nobody_s_session(
    bot: Bot, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """All tasks of the program end with one; it would start anew a minute later, and end again."""
    looks = 0

    async def look() -> None:
        nonlocal looks
        looks += 1
        if looks == 3:
            raise asyncio.CancelledError
        raise KeyError("a bug")

    async def at_once(moment: datetime) -> None:
        bot.clock.skip_to(moment)

    caplog.set_level(logging.CRITICAL)
    monkeypatch.setattr(bot.upkeep, "look", look)
    monkeypatch.setattr(bot.clock, "sleep_until", at_once)
    with pytest.raises(asyncio.CancelledError):
        asyncio.run(bot.upkeep.run())
    [told] = bot.told  # once a day
    assert "KeyError" in told


def test_a_damaged_database_is_no_backup_and_the_operator_hears_it_daily(
    bot: Bot, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.CRITICAL)
    bot.after(minutes=0)
    bot.store.close()
    content = bytearray(bot.db.read_bytes())
    content[4096:4196] = b"\xff" * 100
    bot.db.write_bytes(content)
    bot.store = bot.upkeep.store = Store(":memory:")
    bot.after(hours=1)
    assert bot.backups == [START], "what is damaged never takes the place of what is whole"
    assert "could not make a backup" in bot.told.pop()
    bot.after(hours=22, minutes=59)
    assert not [text for text in bot.told if "is damaged (" in text]
    bot.after(minutes=1)
    assert "is damaged (" in bot.told[-1]
    assert "cuffline restore" in bot.told[-1]


def test_what_was_erased_is_wiped_once_nobody_has_bands_on(bot: Bot) -> None:
    store = bot.store
    store.execute("DELETE FROM coach_did")
    settings.put(store, "compact", "yes")
    bot.after(minutes=0)
    assert settings.get(store, "compact") is None
    assert (bot.db.with_name("cuffline.db-wal")).read_bytes().count(b"well done") == 0
    assert b"well done" not in bot.db.read_bytes()


def trains(bot: Bot) -> None:
    duties.watch(bot.store, Watch(0, 2, "2-2", "1.1", "legs", START, 600, 0, START))


def waits(bot: Bot) -> bool:
    """Whether what was erased is still to be wiped."""
    return settings.get(bot.store, erasure.TO_WIPE) is not None


def erased(bot: Bot) -> None:
    settings.put(bot.store, erasure.TO_WIPE, bot.clock.now().isoformat())


def test_a_session_is_not_held_up_by_the_wiping(bot: Bot) -> None:
    trains(bot)
    erased(bot)
    bot.after(minutes=0)
    assert waits(bot)
    duties.unwatch(bot.store, 2, "2-2", "1.1")
    bot.after(minutes=1)
    assert not waits(bot)


def test_where_somebody_always_trains_it_is_done_after_half_a_day(bot: Bot) -> None:
    trains(bot)
    erased(bot)
    bot.after(hours=11, minutes=59)
    assert waits(bot)
    bot.after(minutes=1)
    assert not waits(bot)


def test_what_an_earlier_version_left_to_wipe_is_wiped(bot: Bot) -> None:
    settings.put(bot.store, erasure.TO_WIPE, "yes")
    bot.after(minutes=0)
    assert not waits(bot)


def test_who_is_erased_in_the_middle_of_it_is_wiped_the_next_time(
    bot: Bot, monkeypatch: pytest.MonkeyPatch
) -> None:
    async def meanwhile(store: Store) -> None:
        bot.clock.skip_to(bot.clock.now() + timedelta(seconds=1))
        erased(bot)

    erased(bot)
    with monkeypatch.context() as patched:
        patched.setattr(wiping, "wipe", meanwhile)
        bot.after(minutes=0)
    assert waits(bot)
    bot.after(minutes=1)
    assert not waits(bot)


def test_a_wiping_that_fails_is_told_once_and_tried_every_hour(
    bot: Bot, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.CRITICAL)
    tried: list[datetime] = []

    async def full(store: Store) -> None:
        tried.append(bot.clock.now())
        raise OSError(28, "No space left on device")

    erased(bot)
    with monkeypatch.context() as patched:
        patched.setattr(wiping, "wipe", full)
        for minutes in (0, 59, 1):
            bot.after(minutes=minutes)
    assert tried == [START, START + timedelta(hours=1)]
    [told] = [text for text in bot.told if "No space left" in text]
    assert "tries again every hour" in told
    bot.after(minutes=59)
    assert waits(bot)
    bot.after(minutes=1)
    assert not waits(bot)


def test_while_somebody_copies_the_file_it_waits_a_minute_and_nobody_is_told(bot: Bot) -> None:
    erased(bot)
    reading = copies.reading(bot.db)
    reading.execute("SELECT count(*) FROM person").fetchone()
    bot.after(minutes=0)
    assert waits(bot)
    reading.close()
    bot.after(minutes=1)
    assert not waits(bot)
    assert bot.told == []


def test_a_value_that_changed_by_itself_is_told_with_the_last_good_backup(
    bot: Bot, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("CRITICAL")
    bot.after(minutes=0)
    bot.store.execute(
        "UPDATE coach_did SET note = replace(note, 'well', 'wall')"
    )  # as a disk does it, unasked
    bot.after(hours=1)
    [told] = bot.told
    assert "coach_did row 1" in told
    assert str(backups.path_for(bot.config.backups, bot.db, START)) in told


def test_such_damage_is_told_every_day_and_the_last_good_backup_stays(
    bot: Bot, caplog: pytest.LogCaptureFixture, capsys: pytest.CaptureFixture[str]
) -> None:
    """The first word may meet a dead network, and every later backup has the same damage."""
    caplog.set_level("CRITICAL")
    bot.after(minutes=0)
    bot.store.execute("UPDATE coach_did SET note = replace(note, 'well', 'wall')")
    good = backups.path_for(bot.config.backups, bot.db, START)
    for told in (1, 2, 3):
        bot.after(hours=1)
        bot.after(hours=22)
        assert (len(bot.told), good.exists()) == (told, True)
        bot.after(hours=1)
    assert all(str(good) in text for text in bot.told)
    main(["check", "--offline", "--db", str(bot.db)])
    assert f"{good} is the last good backup" in capsys.readouterr().out
    bot.after(days=30)
    assert not good.exists(), "nobody's records outlive their 30 days"


@pytest.mark.parametrize("undone", [True, False])
def test_it_is_told_no_more_once_the_values_are_right_again_or_the_operator_deletes_the_older_file(
    bot: Bot, caplog: pytest.LogCaptureFixture, undone: bool
) -> None:
    caplog.set_level("CRITICAL")
    bot.after(minutes=0)
    bot.store.execute("UPDATE coach_did SET note = replace(note, 'well', 'wall')")
    bot.after(hours=1)
    if undone:
        bot.store.execute("UPDATE coach_did SET note = replace(note, 'wall', 'well')")
    else:
        backups.path_for(bot.config.backups, bot.db, START).unlink()
    for _ in range(30):
        bot.after(hours=1)
    assert len(bot.told) == 1
    assert settings.get(bot.store, backups.LAST_GOOD) is None


def test_a_practice_at_work_is_not_taken_for_damage(bot: Bot) -> None:
    bot.after(minutes=0)
    facts.put(bot.store, 2, Noticed(START, "note", "new"), START)
    people.rename(bot.store, 2, "Ruta the elder")
    bot.after(hours=1)
    assert bot.told == []


def test_forty_days_of_a_played_practice_are_never_taken_for_damage(
    practice: Practice, tmp_path: Path
) -> None:
    store, kept = practice.stage.engine.store, [tmp_path / f"{number}.db" for number in range(4)]
    store.snapshot(kept[0])
    practice.in_a_set()
    store.snapshot(kept[1])
    practice.taps(CLIENT, "Set done")
    practice.types(CLIENT, "31")
    practice.types(CLIENT, "no, 30")
    practice.types(CLIENT, "stop")
    practice.types(COACH, "clients")
    store.snapshot(kept[2])
    practice.later(days=40)
    store.snapshot(kept[3])
    for before, after in pairwise(kept):
        assert copies.changed(before, after) == []
