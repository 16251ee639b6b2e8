"""What a spreadsheet gets."""

import csv
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.cli import main
from bot.export.sheets import DANGEROUS, harmless
from core.store import inbox, mail, people, settings, tables, threads
from core.store.connection import Store
from core.store.mail import Letter
from core.store.threads import Button
from tests.bot.terminal.practice import COACH, MONDAY, made

RECORDS = (*tables.OF_CLIENTS, *tables.OF_COACHES)
FORMULA = '=HYPERLINK("http://example.org";"click")'


def exported(tmp_path: Path, name: str = "Ruta") -> Path:
    made(tmp_path / "cuffline.db", name)
    assert main(["export", str(tmp_path / "out"), "--db", str(tmp_path / "cuffline.db")]) == 0
    return tmp_path / "out"


def read(file: Path) -> list[dict[str, Any]]:
    with file.open(encoding="utf-8-sig", newline="") as content:
        return list(csv.DictReader(content))


def test_sessions_have_a_row_a_set_with_all_that_belongs_to_it(tmp_path: Path) -> None:
    rows = read(exported(tmp_path) / "sessions.csv")
    assert [row["reps"] for row in rows] == ["42", "19", "9"]
    assert rows[0] == {
        "client": "Ruta",
        "client_id": "2",
        "session": "2-1",
        "date": "2026-01-26",
        "time": "20:01:00",
        "zone": "Europe/Helsinki",
        "movement": "Goblet squat",
        "side": "both",
        "scheme": "open",
        "set": "1",
        "load": "10",
        "unit": "kg",
        "reps": "42",
        "rough": "no",
        "reps_left": "2",
        "tightness": "7",
        "refill": "under_2",
        "rest_s": "",
        "effort": "6",
        "pain": "1",
        "next_load": "12 kg",
    }
    assert (rows[2]["rough"], rows[2]["rest_s"]) == ("yes", "30.0")


def test_every_table_of_records_has_its_file_and_no_row_is_lost(tmp_path: Path) -> None:
    folder = exported(tmp_path)
    store = Store(tmp_path / "cuffline.db")
    for name in RECORDS:
        count = store.rows(f"SELECT count(*) AS n FROM {name}")[0]["n"]
        assert len(read(folder / f"{name}.csv")) == count, name
    store.close()
    assert {file.stem for file in folder.iterdir()} == {*RECORDS, "sessions"}


def test_every_table_is_either_records_or_plumbing(tmp_path: Path) -> None:
    made(tmp_path / "cuffline.db")
    store = Store(tmp_path / "cuffline.db")
    known = [*RECORDS, *tables.PLUMBING]
    assert len(known) == len(set(known))
    assert set(known) == {*tables.names(store), *tables.LEFT_OUT}
    assert {*tables.OF_CLIENTS, *tables.OF_COACHES} - {"person"} <= set(tables.personal(store))
    store.close()


def test_no_token_no_code_and_no_message_word_for_word_is_in_any_file(tmp_path: Path) -> None:
    db = tmp_path / "cuffline.db"
    made(db)
    store, now = Store(db), MONDAY
    marks = [f"Zmark{number}q" for number in range(4)]
    [token] = threads.add_buttons(store, [Button(1, None, None, "menu:help")], now)
    people.invite(store, 1, marks[0], "CODE", now)
    mail.post(store, Letter(COACH, {"text": marks[1], "buttons": [["Help", token]]}), now)
    inbox.receive(store, 1, {"message": {"text": marks[2]}}, now)
    settings.put(store, "alone:1", marks[3])
    store.close()
    assert main(["export", str(tmp_path / "out"), "--db", str(db)]) == 0
    written = b"".join(file.read_bytes() for file in (tmp_path / "out").iterdir())
    assert b"Ruta" in written
    for hidden in (*marks, token, people.hashed("CODE")):
        assert hidden.encode() not in written


def test_files_begin_with_the_mark_that_spreadsheets_look_for(tmp_path: Path) -> None:
    for file in exported(tmp_path).glob("*.csv"):
        assert file.read_bytes().startswith(b"\xef\xbb\xbf"), file
        assert file.stat().st_mode & 0o077 == 0, file


def test_a_name_that_is_a_formula_stays_a_name(tmp_path: Path) -> None:
    folder = exported(tmp_path, FORMULA)
    assert read(folder / "sessions.csv")[0]["client"] == f"'{FORMULA}"
    for file in folder.glob("*.csv"):
        for row in read(file):
            assert not [cell for cell in row.values() if cell.startswith(DANGEROUS)], file


@given(st.one_of(st.text(), st.integers(), st.floats(allow_nan=False), st.none()))
def test_no_cell_of_words_begins_as_a_formula_and_numbers_stay_numbers(value: str | float | None) -> None:
    cell = harmless(value)
    if isinstance(value, str):
        assert not cell.startswith(DANGEROUS)
        assert cell.removeprefix("'") == value.removeprefix("'")
    else:
        assert cell == value


def test_a_folder_with_something_in_it_is_left_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = exported(tmp_path)
    before = sorted(folder.iterdir())
    assert main(["export", str(folder), "--db", str(tmp_path / "cuffline.db")]) == 2
    assert "not empty" in capsys.readouterr().err
    assert sorted(folder.iterdir()) == before


def test_a_folder_that_is_a_file_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made(tmp_path / "cuffline.db")
    assert main(["export", str(tmp_path / "cuffline.db"), "--db", str(tmp_path / "cuffline.db")]) == 2
    assert capsys.readouterr().err.count("\n") == 1
