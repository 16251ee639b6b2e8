"""`cuffline run` says in one line why it cannot start, and how to go on."""

import sqlite3
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.cli import main
from bot.database import backups, held
from tests.bot.terminal.practice import made

NOW = datetime(2026, 2, 2, 12, 0, tzinfo=UTC)


@pytest.fixture
def db(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    db = tmp_path / "cuffline.db"
    settings = {"TOKEN": "1:local", "COACH": "1001", "DB": str(db), "API_URL": "http://127.0.0.1:9"}
    for name, value in settings.items():
        monkeypatch.setenv(f"CUFFLINE_{name}", value)
    made(db)
    return db


def refused(capsys: pytest.CaptureFixture[str]) -> str:
    assert main(["run"]) == 2
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    return said


def test_a_damaged_database_is_noticed_with_the_way_back(
    db: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (db.parent / "backups").mkdir()
    kept = backups.path_for(db.parent / "backups", db, NOW)
    backups.write(db, kept)
    content = bytearray(db.read_bytes())
    content[4096:4196] = b"\xff" * 100
    db.write_bytes(content)
    said = refused(capsys)
    assert "damaged" in said
    assert f"cuffline restore {kept} --db {db}" in said
    assert main(["restore", str(kept)]) == 0


def test_a_file_that_is_no_database_is_noticed(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    db.write_text("no database at all " * 100)
    assert "not a database" in refused(capsys)


def test_a_database_of_a_newer_version_is_left_alone(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with sqlite3.connect(db) as other:
        other.execute(
            "INSERT INTO _sqlite_migrations (migration_set, name, applied_at) VALUES ('cuffline', 'm999', '')"
        )
    other.close()
    before = db.read_bytes()
    assert "newer cuffline" in refused(capsys)
    assert db.read_bytes() == before


def test_a_second_bot_on_the_same_database_is_refused(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with held.by_this_process(db):
        assert "another cuffline is running" in refused(capsys)


def test_two_practices_do_not_share_a_folder_of_backups(
    db: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """By the same name each would thin out the other's, and be held to its rows."""
    monkeypatch.setenv("CUFFLINE_BACKUPS", str(tmp_path / "shared"))
    with held.backups_by_this_process(tmp_path / "shared", Path("elsewhere") / db.name):
        assert "set another folder" in refused(capsys)


def test_a_folder_of_backups_that_cannot_be_had_keeps_nobody_from_starting(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with held.backups_by_this_process(tmp_path / "file", tmp_path / "cuffline.db"):
        pass
