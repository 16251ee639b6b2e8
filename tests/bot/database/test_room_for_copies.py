"""Where copies of the database lie that are read and thrown away."""

import shutil
import tempfile
from collections import namedtuple
from pathlib import Path

import pytest

from bot.database import opened, room
from core.store.connection import Store

Usage = namedtuple("Usage", "total used free")


@pytest.fixture
def folders(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> dict[str, Path]:
    """A database of 1,000 bytes with a log of 500, memory, and a folder for what is thrown away."""
    made = {name: tmp_path / name for name in ("data", "memory", "usual")}
    for one in made.values():
        one.mkdir()
    (made["data"] / "cuffline.db").write_bytes(bytes(1_000))
    (made["data"] / "cuffline.db-wal").write_bytes(bytes(500))
    monkeypatch.setattr(room, "IN_MEMORY", made["memory"])
    monkeypatch.setattr(room, "SMALL", 1_500)
    monkeypatch.setattr(tempfile, "tempdir", str(made["usual"]))
    return made


def frees(monkeypatch: pytest.MonkeyPatch, **free: int) -> None:
    """So many bytes are free in the folders of these names; in the others, many."""
    monkeypatch.setattr(shutil, "disk_usage", lambda folder: Usage(0, 0, free.get(Path(folder).name, 10**9)))


def test_a_small_file_is_copied_into_memory_beside_a_bot_that_answers(folders: dict[str, Path]) -> None:
    db = folders["data"] / "cuffline.db"
    assert room.beside_sets(db) == folders["memory"]
    assert room.anywhere(db) == folders["usual"]


def test_a_larger_one_is_not(folders: dict[str, Path]) -> None:
    db = folders["data"] / "cuffline.db"
    db.write_bytes(bytes(1_001))
    assert room.beside_sets(db) == folders["usual"]


def test_a_system_without_such_memory_uses_the_usual_folder(folders: dict[str, Path]) -> None:
    folders["memory"].rmdir()
    assert room.beside_sets(folders["data"] / "cuffline.db") == folders["usual"]


@pytest.mark.parametrize(("free", "where"), [(1_799, "usual"), (1_800, "memory")])
def test_the_copy_and_a_fifth_more_must_fit(
    folders: dict[str, Path], monkeypatch: pytest.MonkeyPatch, free: int, where: str
) -> None:
    frees(monkeypatch, memory=free)
    assert room.beside_sets(folders["data"] / "cuffline.db") == folders[where]


def test_where_the_usual_folder_is_too_small_the_copy_lies_beside_the_database(
    folders: dict[str, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """In a container /tmp holds 64 MB: a practice that outgrew it had no week and no export any more."""
    frees(monkeypatch, memory=0, usual=0)
    db = folders["data"] / "cuffline.db"
    assert room.beside_sets(db) == room.anywhere(db) == folders["data"].resolve()


def test_a_practice_is_read_from_there_and_nothing_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    db = tmp_path / "cuffline.db"
    Store(db).close()
    monkeypatch.setattr(room, "anywhere", lambda db: tmp_path)
    with opened.reading(db) as engine:
        assert Path(engine.store.path).parent.parent == tmp_path
    assert [one.name for one in tmp_path.iterdir() if one.is_dir()] == []
