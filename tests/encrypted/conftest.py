"""A key, and a small practice under it. Without SQLCipher on this machine nothing here runs."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from bot.database import keyed
from core.store import keys
from core.store.keys import Key
from tests.bot.terminal.practice import made

pytest.importorskip("sqlcipher3", reason="needs `pip install cuffline[encrypted]`")

DIGITS = "0123456789abcdef" * 4


@pytest.fixture
def key(monkeypatch: pytest.MonkeyPatch) -> Iterator[Key]:
    """In force here, and in the settings of every command."""
    monkeypatch.setenv(keyed.KEY, DIGITS)
    with keys.using(Key(DIGITS)):
        yield Key(DIGITS)


@pytest.fixture
def db(tmp_path: Path, key: Key) -> Path:
    """An encrypted database with one client who trained once."""
    made(tmp_path / "cuffline.db")
    return tmp_path / "cuffline.db"


@pytest.fixture
def plain(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The same database, not encrypted, and a key in the settings."""
    made(tmp_path / "cuffline.db")
    monkeypatch.setenv(keyed.KEY, DIGITS)
    return tmp_path / "cuffline.db"
