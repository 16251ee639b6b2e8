"""Who asks for a report and gets it, in the chat and in a terminal."""

import json
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest

from bot.cli import main
from bot.engine.numbers import reports
from core.facts import CalendarChanged, Cleared, Paused, SessionEnded
from core.store import facts, people
from tests.bot.terminal.practice import made
from tests.practice import CLIENT, COACH, SECOND, START, Practice


@pytest.fixture
def practice() -> Iterator[Practice]:
    room = Practice()
    yield room
    room.stage.close()


def trains_once(practice: Practice) -> None:
    """A session of one set."""
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.taps(CLIENT, "Bands are off")
    store = practice.stage.engine.store
    with store.transaction():
        facts.put(store, practice.client, SessionEnded(START, "x", "done"), START)


def test_the_coach_asks_from_the_card(practice: Practice) -> None:
    trains_once(practice)
    practice.types(COACH, "client ruta")
    practice.taps(COACH, "Report")
    assert practice.newest(COACH).document_name == "report-ruta.pdf"


def test_a_client_gets_their_own_report(practice: Practice) -> None:
    trains_once(practice)
    practice.types(CLIENT, "cancel")
    practice.types(CLIENT, "report")
    assert practice.newest(CLIENT).document_name == "report-ruta.pdf"


def test_before_anything_was_trained_there_is_nothing_to_report(practice: Practice) -> None:
    practice.types(COACH, "report ruta")
    assert practice.newest(COACH).text == "There is nothing to report on Ruta yet."
    practice.types(CLIENT, "report")
    assert practice.newest(CLIENT).text == "There is nothing to report yet."


def test_another_coach_does_not_get_it(practice: Practice) -> None:
    trains_once(practice)
    practice.types(SECOND, "report ruta")
    assert practice.newest(SECOND).text == "I don't find one client by that name."


def test_when_the_plan_is_finished_both_get_the_report(practice: Practice) -> None:
    trains_once(practice)
    practice.types(COACH, "client ruta")
    practice.taps(COACH, "The plan")
    practice.taps(COACH, "Finish the plan")
    practice.taps(COACH, "Finish it")
    for number in (CLIENT, COACH):
        assert "report-ruta.pdf" in [
            message.document_name for message in practice.stage.phones[number].history
        ]


def test_notes_are_clearance_alerts_pauses_and_limits_set_aside_in_order(practice: Practice) -> None:
    engine, client = practice.stage.engine, practice.client
    with engine.store.transaction():
        note = Cleared(START, "1", "cleared", "legs", 1, START + timedelta(days=60), "Knee is calm.")
        facts.put(engine.store, client, note, START)
        later = START + timedelta(days=2)
        facts.put(
            engine.store, client, Paused(later, later, later + timedelta(days=7), 1, "a holiday"), later
        )
        limit = START + timedelta(days=1)
        facts.put(
            engine.store, client, CalendarChanged(limit, "", 1, "x", "hours_apart", "Light day."), limit
        )
    person = people.by_id(engine.store, client)
    assert reports.notes(engine, person, START) == [
        "2 March 2026: Cleared for legs until 1 May 2026: Knee is calm.",
        "3 March 2026: Usual limit set aside: less than 36 h between sessions. Light day.",
        "4 March 2026: Pause until 11 March 2026: a holiday",
    ]


# --- in a terminal ---
@pytest.fixture
def db(tmp_path: Path) -> Path:
    made(tmp_path / "cuffline.db")
    return tmp_path / "cuffline.db"


@pytest.mark.parametrize(("suffix", "begins"), [("pdf", b"%PDF"), ("png", b"\x89PNG")])
def test_the_page_goes_into_a_file(db: Path, tmp_path: Path, suffix: str, begins: bytes) -> None:
    file = tmp_path / f"ruta.{suffix}"
    assert main(["report", "ruta", "-o", str(file), "--db", str(db)]) == 0
    assert file.read_bytes().startswith(begins)


def test_without_a_file_its_sentences_are_printed(db: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["report", "Ruta", "--db", str(db)]) == 0
    text = capsys.readouterr().out
    assert "1 session done; no fixed days." in text
    assert "not a medical document" in text
    assert main(["report", "Ruta", "--json", "--db", str(db)]) == 0
    assert json.loads(capsys.readouterr().out)["report"]["sessions"] == 1


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["nobody"], "there is no client 'nobody'; known: Ruta"),
        (["ruta", "-o", "x.doc"], "must end in .pdf or .png"),
    ],
)
def test_mistakes_are_said_in_one_line(
    db: Path, arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["report", *arguments, "--db", str(db)]) == 2
    assert said in capsys.readouterr().err


def test_a_file_that_cannot_be_written_is_said(
    db: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["report", "ruta", "-o", str(tmp_path / "no" / "x.pdf"), "--db", str(db)]) == 2
    assert "No such file" in capsys.readouterr().err
