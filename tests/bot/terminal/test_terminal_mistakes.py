"""What a person types wrongly gets one clear line and exit code 2, never a traceback."""

import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest

from bot.cli import main, parser
from bot.database import held
from core.store.connection import Store
from tests.bot.terminal.practice import made

ON_DATA = (("clients",), ("replay",), ("backup", "new.db"), ("digest",), ("export", "new"))


@pytest.fixture
def db(tmp_path: Path) -> Path:
    made(tmp_path / "cuffline.db")
    return tmp_path / "cuffline.db"


def refused(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert main(list(arguments)) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    return said.err


@pytest.mark.parametrize("command", ON_DATA)
def test_a_missing_file_is_named(
    command: tuple[str, ...], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "no such file" in refused(capsys, *command, "--db", str(tmp_path / "none.db"))
    assert not (tmp_path / "none.db").exists()


@pytest.mark.parametrize("command", ON_DATA)
def test_a_file_that_is_no_database_is_refused(
    command: tuple[str, ...], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "text.db").write_text("not a database at all " * 100)
    assert "not a database" in refused(capsys, *command, "--db", str(tmp_path / "text.db"))


@pytest.mark.parametrize("command", ON_DATA)
def test_somebody_elses_database_is_refused(
    command: tuple[str, ...], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sqlite3.connect(tmp_path / "other.db").execute("CREATE TABLE t (a)").connection.close()
    assert "no database of cuffline" in refused(capsys, *command, "--db", str(tmp_path / "other.db"))


@pytest.mark.parametrize("command", ON_DATA)
def test_a_database_of_a_newer_version_is_refused(
    command: tuple[str, ...], db: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with sqlite3.connect(db) as other:
        other.execute(
            "INSERT INTO _sqlite_migrations (migration_set, name, applied_at) VALUES ('cuffline', 'm999', '')"
        )
    other.close()
    assert "newer cuffline" in refused(capsys, *command, "--db", str(db))


def test_what_changes_the_file_waits_for_the_bot_to_stop(
    db: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with held.by_this_process(db):
        assert "running" in refused(capsys, "replay", "--db", str(db))
        assert main(["clients", "--db", str(db)]) == 0
    assert main(["replay", "--db", str(db)]) == 0


def test_every_command_explains_itself_and_its_exit_codes(capsys: pytest.CaptureFixture[str]) -> None:
    commands = next(action for action in parser()._actions if action.dest == "command").choices
    assert commands
    for name in commands:  # type: ignore[union-attr]
        with pytest.raises(SystemExit) as ended:
            main([name, "--help"])
        assert ended.value.code == 0
        assert "Exit codes" in capsys.readouterr().out


def test_parsing_imports_nothing_slow() -> None:
    code = "import sys, bot.cli; bot.cli.parser(); print(' '.join(sys.modules))"
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert not {"telegram", "matplotlib", "dateparser", "numpy", "sqlite_utils"} & set(loaded.split())


# --- senseless values ---
def one_line(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """What is said about wrong use, whether the parser or the command says it."""
    try:
        code: object = main(list(arguments))
    except SystemExit as ended:
        code = ended.code
    said = capsys.readouterr()
    assert (code, said.out, said.err.count("\n")) == (2, "", 1)
    return said.err


@pytest.mark.parametrize("days", ["-3", "0", "367", "1.5", "99999999999", "１４", "two", ""])
def test_a_play_of_senseless_days_is_refused(days: str, capsys: pytest.CaptureFixture[str]) -> None:
    said = one_line(capsys, "play", f"--days={days}")
    assert f"{days!r} is no whole number from 1 to 366" in said


@pytest.mark.parametrize("days", [1, 366])
def test_the_fewest_and_the_most_days_can_be_played(days: int) -> None:
    assert parser().parse_args(["play", f"--days={days}"]).days == days


@pytest.mark.parametrize("seed", ["-1", "4294967296", "x", "1e3"])
def test_a_seed_that_is_none_is_refused(seed: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert "--seed" in one_line(capsys, "play", f"--seed={seed}")


@pytest.mark.parametrize("picture", ["x.txt", "none/x.png", "", "."])
def test_a_picture_that_cannot_be_written_is_said_before_anything_is_played(
    picture: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert "--picture" in one_line(capsys, "play", f"--picture={picture}")


@pytest.mark.parametrize(
    "week",
    ["2026-W99", "2026-W00", "2025-W53", "2026-05", "W05", "", "２０２６-W05", "9999-W52", "2026-W05-1"],
)
def test_a_week_that_is_none_or_has_not_begun_is_refused(
    week: str, db: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    said = one_line(capsys, "digest", "--db", str(db), f"--week={week}")
    assert f"--week: {week!r}" in said


@pytest.mark.parametrize("week", ["2026-W05", "2026-w5", "2020-W53"])
def test_a_week_may_be_typed_shorter(week: str, db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["digest", "--db", str(db), f"--week={week}"]) == 0


@pytest.mark.parametrize(
    "arguments",
    [
        ("digest", "--coach="),
        ("digest", "--json", "-o", "x.png"),
        ("report", "--json", "-o", "x.pdf", "ana"),
        ("report", ""),
        ("report", " "),
        ("export", ""),
        ("backup", ""),
        ("restore", ""),
        ("clients", "--db="),
        ("try", "--db="),
        ("try", "--port=abc"),
        ("run", "now"),
        ("play", "--scenario=storm"),
        ("nonsense",),
        (),
    ],
)
def test_wrong_use_is_one_line(arguments: tuple[str, ...], capsys: pytest.CaptureFixture[str]) -> None:
    assert one_line(capsys, *arguments)


def test_a_database_is_no_backup_of_itself(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "that is the database itself" in refused(capsys, "restore", "--db", str(db), str(db))


def test_a_real_practice_is_not_played_with(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Its letters would go to phones that are not there, and its clients count as out of reach."""
    store = Store(db)
    store.execute("UPDATE person SET chat = 123456789 WHERE role = 'coach'")
    store.close()
    before = db.read_bytes()
    assert "a real practice" in refused(capsys, "try", "--db", str(db), "--port", "0")
    assert db.read_bytes() == before
