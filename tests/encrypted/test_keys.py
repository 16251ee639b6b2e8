"""The key: where it comes from, what is refused, and that nobody reads it anywhere."""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.cli import main
from bot.config import Wrong
from bot.database import backups
from bot.database.keyed import KEY, KEY_FILE, key_in
from core.store import keys
from core.store.keys import Key
from tests.encrypted.conftest import DIGITS

COMMANDS = ("clients", "check", "digest", "export", "backup", "report", "replay", "run", "restore")
WITH = {"export": ["new"], "backup": ["new.db"], "report": ["Ruta"]}


def refused(environment: dict[str, str]) -> str:
    with pytest.raises(Wrong) as wrong:
        key_in(environment)
    [line] = wrong.value.lines
    assert DIGITS[:8] not in line
    return line


def test_without_a_setting_there_is_no_key() -> None:
    assert key_in({}) is None


def test_a_key_comes_from_the_environment_or_a_file(tmp_path: Path) -> None:
    file = tmp_path / "key"
    file.write_text(DIGITS + "\n")
    file.chmod(0o600)
    for environment in ({KEY: f" {DIGITS} "}, {KEY_FILE: str(file)}):
        key = key_in(environment)
        assert key is not None
        assert key.digits == DIGITS


@pytest.mark.parametrize(
    "digits", [DIGITS[:-1], DIGITS + "0", "x" + DIGITS[1:], "my dog's name", f"x'{DIGITS}'"]
)
def test_anything_but_64_digits_is_refused_without_showing_it(digits: str) -> None:
    assert refused({KEY: digits}).startswith(f"{KEY}: a key is 64 hexadecimal digits")


@pytest.mark.parametrize("mode", [0o640, 0o604, 0o660, 0o644, 0o620, 0o610])
def test_a_file_that_others_may_open_is_refused(tmp_path: Path, mode: int) -> None:
    file = tmp_path / "key"
    file.write_text(DIGITS)
    file.chmod(mode)
    assert "chmod 600" in refused({KEY_FILE: str(file)})


@pytest.mark.parametrize("mode", [0o600, 0o400])
def test_a_file_for_its_owner_only_is_taken(tmp_path: Path, mode: int) -> None:
    file = tmp_path / "key"
    file.write_text(DIGITS)
    file.chmod(mode)
    assert key_in({KEY_FILE: str(file)}) is not None


def test_a_file_that_is_not_there_is_named(tmp_path: Path) -> None:
    assert "No such file" in refused({KEY_FILE: str(tmp_path / "none")})


def test_two_keys_are_one_too_many(tmp_path: Path) -> None:
    assert "not both" in refused({KEY: DIGITS, KEY_FILE: str(tmp_path / "key")})


def test_without_the_library_it_is_said_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bot.database.keyed.find_spec", lambda name: None)
    assert "pip install cuffline[encrypted]" in refused({KEY: DIGITS})


def test_a_key_is_in_no_repr_and_no_text() -> None:
    assert DIGITS[:8] not in f"{Key(DIGITS)!r} {Key(DIGITS)} {[Key(DIGITS)]}"


def told(command: str, db: Path, capsys: pytest.CaptureFixture[str], place: Path) -> str:
    """The one line with which it refuses; nothing is written meanwhile."""
    before = {file: file.read_bytes() for file in place.iterdir() if file.suffix != ".lock"}
    words = [str(place / word) if word.startswith("new") else word for word in WITH.get(command, [])]
    if command == "restore":
        words = [str(db)]
    where = [] if command == "run" else ["--db", str(db)]
    offline = ["--offline"] if command == "check" else []
    code = main([command, *words, *where, *offline])
    said = capsys.readouterr()
    lines = [line for line in (said.out + said.err).splitlines() if str(db) in line]
    assert code == (1 if command == "check" else 2)
    assert command == "check" or (len(said.err.splitlines()) == 1 and said.out == "")
    assert {file: file.read_bytes() for file in place.iterdir() if file.suffix != ".lock"} == before
    return lines[0]


@pytest.fixture
def settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name, value in {
        "TOKEN": "1:local",
        "COACH": "1001",
        "DB": str(tmp_path / "cuffline.db"),
        "API_URL": "http://127.0.0.1:9",
    }.items():
        monkeypatch.setenv(f"CUFFLINE_{name}", value)


@pytest.mark.usefixtures("settings")
@pytest.mark.parametrize("command", COMMANDS)
def test_another_key_is_refused(
    command: str,
    db: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setenv(KEY, "f" * 64)
    assert "another key" in told(command, db, capsys, tmp_path)


@pytest.mark.usefixtures("settings")
@pytest.mark.parametrize("command", COMMANDS)
def test_an_encrypted_file_without_a_key_is_refused(
    command: str,
    db: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.delenv(KEY)
    assert f"set {KEY_FILE}" in told(command, db, capsys, tmp_path)


@pytest.mark.usefixtures("settings")
@pytest.mark.parametrize("command", COMMANDS)
def test_a_plain_file_is_refused_where_a_key_is_set(
    command: str, plain: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "is not encrypted" in told(command, plain, capsys, tmp_path)


@pytest.mark.parametrize("given", [None, "f" * 64])
def test_without_the_key_check_calls_no_good_backup_damaged(
    db: Path, given: str | None, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """'Delete it' was the advice, for whoever had forgotten a line of the settings."""
    (db.parent / "backups").mkdir()
    backups.write(db, backups.path_for(db.parent / "backups", db, datetime.now(UTC)))
    monkeypatch.delenv(KEY)
    if given is not None:
        monkeypatch.setenv(KEY, given)
    with keys.using(None):
        assert main(["check", "--offline", "--db", str(db)]) == 1
    said = capsys.readouterr().out
    assert "key" in said.lower()
    assert "delete it" not in said
