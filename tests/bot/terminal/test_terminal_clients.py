"""The list of clients in a terminal."""

import json
from pathlib import Path

import pytest

from bot.cli import main
from tests.bot.terminal.practice import made


@pytest.fixture
def db(tmp_path: Path) -> Path:
    made(tmp_path / "cuffline.db")
    return tmp_path / "cuffline.db"


def test_a_client_stands_with_what_they_wait_for(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["clients", "--db", str(db)]) == 0
    assert capsys.readouterr().out == "Ruta  waits until you say who else gets alerts\n"


def test_scripts_get_json(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["clients", "--json", "--db", str(db)]) == 0
    [one] = json.loads(capsys.readouterr().out)
    assert (one["name"], one["sessions"], one["reachable"]) == ("Ruta", 1, True)


def test_looking_changes_nothing_in_the_file(db: Path) -> None:
    before = db.read_bytes()
    main(["clients", "--db", str(db)])
    assert db.read_bytes() == before
