"""A coach's week in a terminal, of any week."""

import json
from pathlib import Path

import pytest

from bot.cli import main
from core.store import people
from core.store.connection import Store
from core.store.people import Role
from tests.bot.terminal.practice import MONDAY, ZONE, made


@pytest.fixture
def db(tmp_path: Path) -> Path:
    made(tmp_path / "cuffline.db")
    return tmp_path / "cuffline.db"


def sessions_in(db: Path, week: str, capsys: pytest.CaptureFixture[str]) -> int:
    assert main(["digest", "--week", week, "--json", "--db", str(db)]) == 0
    [coach] = json.loads(capsys.readouterr().out)
    done: int = coach["clients"][0]["done"]
    return done


def test_the_week_is_told_as_in_the_chat(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["digest", "--week", "2026-W05", "--db", str(db)]) == 0
    text = capsys.readouterr().out
    assert text.startswith("Your week.\n")
    assert "Ruta: 1 done" in text


@pytest.mark.parametrize(("week", "sessions"), [("2026-W04", 0), ("2026-W05", 1), ("2026-W06", 0)])
def test_a_session_counts_in_its_own_week_only(
    db: Path, week: str, sessions: int, capsys: pytest.CaptureFixture[str]
) -> None:
    assert sessions_in(db, week, capsys) == sessions


def test_the_picture_goes_into_a_file(db: Path, tmp_path: Path) -> None:
    assert main(["digest", "--week", "2026-W05", "-o", str(tmp_path / "week.png"), "--db", str(db)]) == 0
    assert (tmp_path / "week.png").read_bytes().startswith(b"\x89PNG")


def test_a_week_without_sets_has_no_picture(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["digest", "--week", "2026-W04", "-o", str(tmp_path / "week.png"), "--db", str(db)]) == 2
    assert "nothing to draw" in capsys.readouterr().err


def test_json_says_why_a_client_needs_the_coach(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["digest", "--week", "2026-W07", "--json", "--db", str(db)]) == 0
    [coach] = json.loads(capsys.readouterr().out)
    assert [(one["name"], "quiet" in one["why"]) for one in coach["needs_you"]] == [("Ruta", True)]


@pytest.mark.parametrize("week", ["0001-W01", "1969-W01"])
def test_a_week_beyond_all_records_is_said(db: Path, week: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["digest", "--week", week, "--db", str(db)]) == 2
    assert "too long ago" in capsys.readouterr().err


def test_a_picture_of_the_week_is_a_png(db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["digest", "--week", "2026-W05", "-o", str(tmp_path / "week.jpg"), "--db", str(db)]) == 2
    assert "must end in .png" in capsys.readouterr().err


@pytest.mark.parametrize("week", ["2026-05", "W05", "2026-W54", "soon"])
def test_what_is_no_week_is_said(db: Path, week: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["digest", "--week", week, "--db", str(db)]) == 2
    assert "2026-W05" in capsys.readouterr().err


def test_two_coaches_get_a_heading_each_and_a_picture_needs_one_of_them(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    store = Store(db)
    people.add(store, 1002, "Second", Role.COACH, ZONE, MONDAY)
    store.close()
    week = ["digest", "--week", "2026-W05", "--db", str(db)]
    assert main(week) == 0
    text = capsys.readouterr().out
    assert text.index("Coach (1001)") < text.index("Second (1002)")
    assert main([*week, "-o", str(tmp_path / "week.png")]) == 2
    assert main([*week, "-o", str(tmp_path / "week.png"), "--coach", "1001"]) == 0
    assert main([*week, "--coach", "Nobody"]) == 2
