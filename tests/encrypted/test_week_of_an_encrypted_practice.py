"""The coach's week of an encrypted database: the process that makes it has the key, and shows it to nobody."""

import asyncio
from pathlib import Path

import msgspec
import pytest

from bot.database import keyed
from bot.database.opened import reading
from bot.engine.coach import digest
from bot.making.slow_work import Failed, SlowWork
from core.store import duties, people
from tests.encrypted.conftest import DIGITS


def wanted(db: Path) -> dict[str, object]:
    """What the week's own talk asks for, at its time."""
    with reading(db) as engine:
        coach = people.coaches(engine.store)[0]
        talk = duties.next_talk(engine.store, coach.id, "weekly")
    assert talk is not None
    return {"what": "week", "db": str(db), "talk": talk, "now": talk.due_at.isoformat()}


def test_the_week_is_made_in_a_process_of_its_own(db: Path) -> None:
    made = msgspec.json.decode(asyncio.run(SlowWork().done(wanted(db))), type=digest.Week)
    assert "Ruta" in str(made)


def test_the_key_may_stand_in_a_file(db: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "key"
    file.write_text(DIGITS)
    file.chmod(0o600)
    monkeypatch.delenv(keyed.KEY)
    monkeypatch.setenv(keyed.KEY_FILE, str(file))
    assert asyncio.run(SlowWork().done(wanted(db)))


def test_without_the_key_it_fails_and_says_nothing_of_it(db: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked = wanted(db)
    monkeypatch.setenv(keyed.KEY, "f" * 64)
    with pytest.raises(Failed) as problem:
        asyncio.run(SlowWork().done(asked))
    assert "f" * 64 not in str(problem.value)
    assert DIGITS not in str(problem.value)
