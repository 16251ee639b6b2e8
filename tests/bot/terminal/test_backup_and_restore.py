"""A copy that can be relied on, and its way back."""

import os
import sqlite3
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.cli import main
from bot.config import Wrong
from bot.database import backups, forgotten, held
from core.store import copies, people
from core.store.connection import Store
from tests.bot.terminal.practice import CLIENT, made

NOW = datetime(2026, 2, 2, 12, 0, tzinfo=UTC)


@pytest.fixture
def db(tmp_path: Path) -> Path:
    made(tmp_path / "cuffline.db")
    return tmp_path / "cuffline.db"


def name_of_client(db: Path) -> str:
    store = Store(db)
    person = people.by_chat(store, CLIENT)
    store.close()
    assert person is not None
    return person.name


def renamed(db: Path, name: str) -> None:
    store = Store(db)
    person = people.by_chat(store, CLIENT)
    assert person is not None
    people.rename(store, person.id, name)
    store.close()


def test_a_backup_is_one_whole_file_with_its_checksum(db: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept.db"
    assert main(["backup", str(kept), "--db", str(db)]) == 0
    assert "checksum agrees" in backups.verify(kept)
    assert sorted(path.name for path in tmp_path.glob("kept*")) == ["kept.db", "kept.db.sha256"]
    assert kept.stat().st_mode & 0o077 == 0


def test_a_backup_of_a_bot_at_work_holds_the_last_commit(db: Path, tmp_path: Path) -> None:
    store = Store(db)
    with held.by_this_process(db), store.transaction():
        people.rename(store, 2, "Before")
    assert main(["backup", str(tmp_path / "kept.db"), "--db", str(db)]) == 0
    store.close()
    assert name_of_client(tmp_path / "kept.db") == "Before"


def test_a_restore_goes_back_and_keeps_the_old_one_aside(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["backup", str(tmp_path / "kept.db"), "--db", str(db)])
    renamed(db, "Later")
    assert main(["restore", str(tmp_path / "kept.db"), "--db", str(db)]) == 0
    assert name_of_client(db) == "Ruta"
    [aside] = [
        path for path in tmp_path.glob("cuffline.db.before-*") if not path.name.endswith(("-wal", "-shm"))
    ]
    assert str(aside) in capsys.readouterr().out
    assert name_of_client(aside) == "Later"


def test_what_stood_only_in_the_log_is_kept_aside_as_well(db: Path, tmp_path: Path) -> None:
    main(["backup", str(tmp_path / "kept.db"), "--db", str(db)])
    store = Store(db)
    people.rename(store, 2, "Only in the log")
    crashed = tmp_path / "crashed"
    crashed.mkdir()
    for path in tmp_path.glob("cuffline.db*"):
        (crashed / path.name).write_bytes(path.read_bytes())  # as a bot leaves it that was killed
    store.close()
    assert main(["restore", str(tmp_path / "kept.db"), "--db", str(crashed / "cuffline.db")]) == 0
    [aside] = [path for path in crashed.glob("*before-*") if not path.name.endswith(("-wal", "-shm"))]
    assert (name_of_client(crashed / "cuffline.db"), name_of_client(aside)) == ("Ruta", "Only in the log")


def test_a_damaged_backup_changes_nothing(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    kept = tmp_path / "kept.db"
    main(["backup", str(kept), "--db", str(db)])
    content = bytearray(kept.read_bytes())
    place = content.index(b"well done")
    content[place] ^= 1
    kept.write_bytes(content)
    assert copies.damage(kept) == [], "SQLite alone does not notice it"
    renamed(db, "Later")
    assert main(["restore", str(kept), "--db", str(db)]) == 2
    assert "checksum differs" in capsys.readouterr().err
    assert name_of_client(db) == "Later"


def test_nothing_is_restored_under_a_running_bot(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["backup", str(tmp_path / "kept.db"), "--db", str(db)])
    with held.by_this_process(db):
        assert main(["restore", str(tmp_path / "kept.db"), "--db", str(db)]) == 2
    assert "running" in capsys.readouterr().err


def test_a_database_that_is_gone_comes_back(db: Path, tmp_path: Path) -> None:
    main(["backup", str(tmp_path / "kept.db"), "--db", str(db)])
    for path in tmp_path.glob("cuffline.db*"):
        path.unlink()
    assert main(["restore", str(tmp_path / "kept.db"), "--db", str(db)]) == 0
    assert name_of_client(db) == "Ruta"


def test_a_backup_never_replaces_a_file(db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "kept.db").write_text("something else")
    assert main(["backup", str(tmp_path / "kept.db"), "--db", str(db)]) == 2
    assert (tmp_path / "kept.db").read_text() == "something else"
    assert "exists already" in capsys.readouterr().err


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is unwritable for root")
def test_a_folder_that_cannot_be_written_is_named(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shut = tmp_path / "shut"
    shut.mkdir(mode=0o500)
    assert main(["backup", str(shut / "kept.db"), "--db", str(db)]) == 2
    assert "Permission denied" in capsys.readouterr().err


def test_a_folder_that_is_not_there_is_named(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["backup", str(tmp_path / "none" / "kept.db"), "--db", str(db)]) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_an_older_backup_opens_and_is_brought_up_to_date(db: Path, tmp_path: Path) -> None:
    older = tmp_path / "older.db"
    main(["backup", str(older), "--db", str(db)])
    backups.checksum_of(older).unlink()
    with sqlite3.connect(older) as other:
        other.execute("DROP VIEW current_calendar_changed")
        other.execute("DROP TABLE calendar_changed")
        other.execute("DELETE FROM _sqlite_migrations WHERE name = 'm005_calendar_changed'")
    other.close()
    assert main(["restore", str(older), "--db", str(db)]) == 0
    assert "m005_calendar_changed" in copies.applied(db)


def test_who_was_erased_since_stays_erased(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["backup", str(tmp_path / "kept.db"), "--db", str(db)])
    note = forgotten.Note(datetime.now(UTC), forgotten.What.ERASED, 2)
    forgotten.note(tmp_path / "backups", db, note)
    assert main(["restore", str(tmp_path / "kept.db"), "--db", str(db)]) == 0
    assert "as asked since that backup: 1" in capsys.readouterr().out
    store = Store(db)
    assert people.by_chat(store, CLIENT) is None
    store.close()


def test_nobody_is_back_when_the_restore_is_killed_before_its_end(
    db: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The one moment that counts: once the file stands in its place a bot may start on it."""
    main(["backup", str(tmp_path / "kept.db"), "--db", str(db)])
    forgotten.note(tmp_path / "backups", db, forgotten.Note(datetime.now(UTC), forgotten.What.ERASED, 2))
    place = os.replace

    def killed(source: Path, target: Path) -> None:
        place(source, target)
        raise KeyboardInterrupt

    with monkeypatch.context() as patched:
        patched.setattr(os, "replace", killed)
        main(["restore", str(tmp_path / "kept.db"), "--db", str(db)])
    store = Store(db)
    assert people.by_chat(store, CLIENT) is None
    store.close()


def test_what_cannot_be_forgotten_again_changes_nothing(
    db: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def full(*_: object) -> int:
        raise sqlite3.OperationalError("database or disk is full")

    main(["backup", str(tmp_path / "kept.db"), "--db", str(db)])
    renamed(db, "Later")
    monkeypatch.setattr(forgotten, "again", full)
    assert main(["restore", str(tmp_path / "kept.db"), "--db", str(db)]) == 2
    assert "nothing was changed" in capsys.readouterr().err
    assert name_of_client(db) == "Later"


def test_what_a_killed_restore_left_goes_with_whoever_holds_the_database_next(db: Path) -> None:
    left = [db.with_name(f"cuffline.db.restoring{end}") for end in ("", "-wal")]
    for file in left:
        file.write_bytes(b"health data")
    with held.by_this_process(db):
        assert not any(file.exists() for file in left)


# --- behind a link ---
@pytest.fixture
def link(db: Path, tmp_path: Path) -> Path:
    """Another name of the database, in another folder, as one that was moved to another disk has."""
    (tmp_path / "home").mkdir()
    name = tmp_path / "home" / "practice.db"
    name.symlink_to(db)
    return name


def test_two_names_of_one_database_are_one_database(db: Path, link: Path) -> None:
    with held.by_this_process(link), pytest.raises(Wrong, match="another cuffline is running"):
        held.by_this_process(db).__enter__()


def test_a_restore_behind_a_link_leaves_no_old_database_for_ever(
    db: Path, link: Path, tmp_path: Path
) -> None:
    main(["backup", str(tmp_path / "kept.db"), "--db", str(link)])
    renamed(db, "Later")
    assert main(["restore", str(tmp_path / "kept.db"), "--db", str(link)]) == 0
    assert link.is_symlink()
    assert name_of_client(db) == "Ruta"
    [aside] = tmp_path.glob("cuffline.db.before-*")
    (tmp_path / "home" / "backups").mkdir()
    backups.prune(tmp_path / "home" / "backups", link, datetime.now(UTC) + timedelta(days=31))
    assert not aside.exists()


def test_the_list_of_who_was_erased_goes_to_a_second_place_and_to_another_name(
    db: Path, tmp_path: Path
) -> None:
    second, moved = tmp_path / "second", tmp_path / "moved"
    second.mkdir()
    moved.mkdir()
    old = backups.path_for(second, db, NOW)
    main(["backup", str(old), "--db", str(db)])
    forgotten.note(tmp_path / "backups", db, forgotten.Note(datetime.now(UTC), forgotten.What.ERASED, 2))
    main(["backup", str(backups.path_for(second, db, NOW + timedelta(days=1))), "--db", str(db)])
    assert main(["restore", str(old), "--db", str(moved / "practice.db")]) == 0
    store = Store(moved / "practice.db")
    assert people.by_chat(store, CLIENT) is None
    store.close()


# --- which are kept ---
@given(st.lists(st.integers(0, 60 * 24), unique=True, min_size=1))
def test_of_hourly_backups_a_day_is_whole_and_thirty_days_have_one_each(hours_ago: list[int]) -> None:
    times = [NOW - timedelta(hours=hours) for hours in hours_ago]
    kept = backups.to_keep(times, NOW)
    assert max(times) in kept
    assert {at for at in times if at > NOW - timedelta(hours=24)} <= kept
    days = {at.date() for at in times if at.date() > NOW.date() - timedelta(days=30)}
    assert {at.date() for at in kept} >= days
    assert len(kept) <= 24 + 30


@pytest.mark.parametrize(
    ("ago", "kept"),
    [
        (timedelta(hours=23, minutes=59), True),
        (timedelta(hours=24), False),
    ],
)
def test_an_hourly_backup_is_kept_for_less_than_24_hours(ago: timedelta, kept: bool) -> None:
    later_that_day = NOW - timedelta(hours=23)
    newest = NOW
    assert ((NOW - ago) in backups.to_keep([NOW - ago, later_that_day, newest], NOW)) is kept


@pytest.mark.parametrize(("days", "kept"), [(29, True), (30, False)])
def test_a_daily_backup_is_kept_for_30_days(days: int, kept: bool) -> None:
    at = NOW - timedelta(days=days)
    assert (at in backups.to_keep([at, NOW], NOW)) is kept


def test_pruning_leaves_other_files_alone(db: Path, tmp_path: Path) -> None:
    folder = tmp_path / "backups"
    folder.mkdir()
    for hours in (0, 40, 41):
        backups.write(db, backups.path_for(folder, db, NOW - timedelta(hours=hours)))
    (folder / "mine.db").write_text("keep")
    backups.prune(folder, db, NOW)
    names = sorted(path.name for path in folder.iterdir())
    assert names == [
        "cuffline-20260131T200000Z.db",
        "cuffline-20260131T200000Z.db.sha256",
        "cuffline-20260202T120000Z.db",
        "cuffline-20260202T120000Z.db.sha256",
        "mine.db",
    ]
