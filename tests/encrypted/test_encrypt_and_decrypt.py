"""`cuffline encrypt` and `cuffline decrypt`: all of it, or as it was, whenever it is killed."""

import os
import shutil
import signal
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

from bot.cli import main
from bot.database import backups, held
from bot.database.keyed import KEY
from bot.terminal import encrypt
from core.store import converting, keys
from core.store.connection import Store
from core.store.keys import Key
from tests.bot.terminal.practice import made
from tests.encrypted.conftest import DIGITS


def contents(db: Path, digits: str | None) -> dict[str, tuple[int, str]]:
    with keys.using(Key(digits) if digits else None):
        return converting.contents(db)


def on_disk(folder: Path) -> bytes:
    return b"".join(file.read_bytes() for file in sorted(folder.rglob("*")) if file.is_file())


def test_encrypting_keeps_every_row_and_leaves_nothing_to_read(
    plain: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = contents(plain, None)
    assert b"Ruta" in on_disk(tmp_path)
    assert main(["encrypt", "--db", str(plain)]) == 0
    assert contents(plain, DIGITS) == before
    assert b"Ruta" not in on_disk(tmp_path)
    assert b"SQLite format 3" not in on_disk(tmp_path)
    assert "An SSD" in capsys.readouterr().out
    assert sorted(path.name for path in tmp_path.iterdir()) == ["backups", "cuffline.db", "cuffline.db.lock"]
    assert plain.stat().st_mode & 0o077 == 0


def test_older_backups_are_encrypted_too_and_hold(plain: Path, tmp_path: Path) -> None:
    with keys.using(None):
        (tmp_path / "backups").mkdir()
        old = backups.path_for(tmp_path / "backups", plain, encrypt.Clock().now().replace(year=2026, month=1))
        backups.write(plain, old)
    assert main(["encrypt", "--db", str(plain)]) == 0
    with keys.using(Key(DIGITS)):
        assert {backups.verify(one.path) for one in backups.found(tmp_path / "backups", plain)} == {
            "whole (checksum agrees)"
        }
    assert main(["restore", str(old), "--db", str(plain)]) == 0


def test_a_damaged_backup_is_left_and_named(
    plain: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "backups").mkdir()
    broken = tmp_path / "backups" / "cuffline-20260101T000000Z.db"
    broken.write_bytes(converting.MAGIC + bytes(5000))
    assert main(["encrypt", "--db", str(plain)]) == 1
    assert f"{broken}: damaged" in capsys.readouterr().out


def test_there_and_back_is_what_it_was(plain: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = contents(plain, None)
    assert main(["encrypt", "--db", str(plain)]) == 0
    assert main(["decrypt", "--db", str(plain)]) == 0
    assert contents(plain, None) == before
    monkeypatch.delenv(KEY)
    assert main(["clients", "--db", str(plain)]) == 0
    assert all(converting.is_plain(one.path) for one in backups.found(plain.parent / "backups", plain))


def test_what_stands_only_in_the_log_comes_along(plain: Path, tmp_path: Path) -> None:
    store = Store(plain)
    store.execute("UPDATE person SET name = 'Only in the log' WHERE id = 2")
    crashed = tmp_path / "crashed"
    crashed.mkdir()
    for path in tmp_path.glob("cuffline.db*"):
        (crashed / path.name).write_bytes(path.read_bytes())
    store.close()
    assert main(["encrypt", "--db", str(crashed / "cuffline.db")]) == 0
    with keys.using(Key(DIGITS)):
        store = Store(crashed / "cuffline.db")
    assert store.rows("SELECT name FROM person WHERE id = 2")[0][0] == "Only in the log"
    store.close()
    assert b"Only in the log" not in on_disk(crashed)


@pytest.mark.parametrize("command", ["encrypt", "decrypt"])
def test_nothing_is_converted_under_a_running_bot(
    command: str, plain: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = plain.read_bytes()
    with held.by_this_process(plain):
        assert main([command, "--db", str(plain)]) == 2
    assert "running" in capsys.readouterr().err
    assert plain.read_bytes() == before


def test_nothing_is_converted_while_another_program_reads(
    plain: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    store = Store(plain)
    store.execute("UPDATE person SET name = 'Later' WHERE id = 2")
    store.execute("BEGIN")
    store.rows("SELECT 1 FROM person")
    writer = Store(plain)
    writer.execute("UPDATE person SET name = 'Latest' WHERE id = 2")
    writer.connection.execute("PRAGMA busy_timeout = 0")
    assert main(["encrypt", "--db", str(plain)]) == 2
    assert "another program reads it" in capsys.readouterr().err
    store.close()
    writer.close()
    assert converting.is_plain(plain)


@pytest.mark.parametrize(
    ("command", "word"), [("encrypt", "encrypted already"), ("decrypt", "plain already")]
)
def test_a_second_time_there_is_nothing_to_do(
    command: str, word: str, plain: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    if command == "encrypt":
        assert main([command, "--db", str(plain)]) == 0
    assert main([command, "--db", str(plain)]) == 2
    assert word in capsys.readouterr().err


def test_without_a_key_it_says_how_to_make_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv(KEY, raising=False)
    made(tmp_path / "cuffline.db")
    assert main(["encrypt", "--db", str(tmp_path / "cuffline.db")]) == 2
    assert "openssl rand -hex 32" in capsys.readouterr().err


def test_a_copy_kept_aside_by_a_restore_is_named(plain: Path, capsys: pytest.CaptureFixture[str]) -> None:
    aside = plain.with_name(f"{plain.name}.before-20260101T000000Z")
    aside.write_bytes(plain.read_bytes())
    assert main(["encrypt", "--db", str(plain)]) == 0
    assert f"{aside}: still plain; delete it" in capsys.readouterr().out


def test_a_second_name_of_the_file_is_not_overwritten(plain: Path) -> None:
    other = plain.with_name("mine.db")
    os.link(plain, other)
    before = other.read_bytes()
    assert main(["encrypt", "--db", str(plain)]) == 0
    assert other.read_bytes() == before


def test_behind_a_link_the_database_itself_is_encrypted(plain: Path, tmp_path: Path) -> None:
    (tmp_path / "home").mkdir()
    link = tmp_path / "home" / "practice.db"
    link.symlink_to(plain)
    assert main(["encrypt", "--db", str(link)]) == 0
    assert link.is_symlink()
    assert not converting.is_plain(plain)
    assert b"Ruta" not in on_disk(tmp_path)


# --- killed ---
@pytest.fixture
def quick_disk() -> Iterator[Path]:
    """In memory where that can be: no power is cut here, and a disk would flush a thousand times."""
    memory = "/dev/shm" if Path("/dev/shm").is_dir() else None
    with tempfile.TemporaryDirectory(dir=memory) as folder:
        yield Path(folder)


def killed_at_line(number: int, act: Callable[[], Any]) -> bool:
    """Do it in a process of its own that is killed at its n-th line in `encrypt.py`. False: it ended before that."""
    child = os.fork()
    if child == 0:
        lines = 0

        def trace(frame: FrameType, event: str, _: Any) -> Any:
            nonlocal lines
            if frame.f_code.co_filename != encrypt.__file__:
                return None
            lines += event == "line"
            if lines == number:
                os.kill(os.getpid(), signal.SIGKILL)
            return trace

        sys.settrace(trace)
        try:
            act()
        finally:
            os._exit(0)
    return os.WIFSIGNALED(os.waitpid(child, 0)[1])


@pytest.mark.parametrize("command", ["encrypt", "decrypt"])
def test_killed_at_any_line_it_is_the_one_or_the_other_and_a_second_run_ends_it(
    command: str, plain: Path, quick_disk: Path
) -> None:
    plain = Path(shutil.copy(plain, quick_disk))
    before = contents(plain, None)
    if command == "decrypt":
        main(["encrypt", "--db", str(plain)])
    kept = {file: file.read_bytes() for file in quick_disk.rglob("*.db*")}
    for number in range(1, 400, 29):
        for file in [*quick_disk.rglob("*.db*"), *quick_disk.rglob("*.converting")]:
            file.unlink(missing_ok=True)
        for file, content in kept.items():
            file.parent.mkdir(exist_ok=True)
            file.write_bytes(content)
        died = killed_at_line(number, lambda: main([command, "--db", str(plain)]))
        digits = None if converting.is_plain(plain) else DIGITS
        assert contents(plain, digits) == before, number
        if not died:
            break
        done = digits is None if command == "decrypt" else digits is not None
        assert main([command, "--db", str(plain)]) in ((0, 2) if done else (0,))
    assert not died
    assert number > 100
