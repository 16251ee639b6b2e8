"""`cuffline check`: what is wrong, one line each."""

import json
import logging
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.cli import main
from bot.database import backups
from bot.terminal import looking
from bot.terminal.looking import Finding, Place
from core.facts import Noticed
from core.store import duties, erasure, facts, mail, people, settings
from core.store.connection import Store
from core.store.mail import Letter
from core.store.people import Role
from core.store.times import ms
from tests.bot.terminal.practice import made

NOW = datetime(2026, 2, 2, 12, 0, tzinfo=UTC)
TOKEN = "123:SECRETSECRET"


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Place:
    made(tmp_path / "cuffline.db")
    for name, value in (("TOKEN", TOKEN), ("COACH", "1001,1002"), ("API_URL", "http://127.0.0.1:9")):
        monkeypatch.setenv(f"CUFFLINE_{name}", value)
    (tmp_path / "backups").mkdir()
    return Place.named(tmp_path / "cuffline.db")


def backed_up(place: Place, at: datetime) -> Path:
    file = backups.path_for(place.backups, place.db, at)
    backups.write(place.db, file)
    return file


def wrong(findings: list[Finding]) -> list[str]:
    return [finding.says for finding in findings if not finding.ok]


def flip(file: Path, text: bytes) -> None:
    content = bytearray(file.read_bytes())
    content[content.index(text)] ^= 1
    file.write_bytes(content)


def test_all_is_well(place: Place, capsys: pytest.CaptureFixture[str]) -> None:
    backed_up(place, datetime.now(UTC))
    assert main(["check", "--offline", "--db", str(place.db)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[:2] for line in lines] == [
        ["ok", what] for what in ("settings", "database", "clock", "zones", "disk", "disk", "backup")
    ]


def test_a_misspelt_setting_is_wrong_though_all_others_are_right(
    place: Place, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("CUFFLINE_BACKUP", "/elsewhere")
    assert wrong(list(looking.settings(place, NOW))) == [
        "CUFFLINE_BACKUP: there is no such setting; is CUFFLINE_BACKUPS meant?"
    ]


def test_something_wrong_is_exit_code_one_and_scripts_get_json(
    place: Place, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", "--offline", "--json", "--db", str(place.db)]) == 1
    bad = [one for one in json.loads(capsys.readouterr().out) if not one["ok"]]
    assert [one["what"] for one in bad] == ["backup"]


def test_an_unreachable_server_is_said_and_the_token_is_not(
    place: Place, capsys: pytest.CaptureFixture[str], caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.DEBUG)
    main(["--verbose", "check", "--db", str(place.db)])
    said = capsys.readouterr()
    assert "no answer from http://127.0.0.1:9" in said.out
    assert "SECRET" not in said.out + said.err + caplog.text


def test_settings_that_are_missing_are_each_a_line(place: Place, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("CUFFLINE_TOKEN")
    monkeypatch.setenv("CUFFLINE_TZ", "Nowhere/Land")
    assert [line.split(":")[0] for line in wrong(list(looking.settings(place, NOW)))] == [
        "CUFFLINE_TOKEN",
        "CUFFLINE_TZ",
    ]


def test_before_the_first_start_the_way_to_a_database_is_said(tmp_path: Path) -> None:
    [line] = wrong(list(looking.database(Place.named(tmp_path / "cuffline.db"), NOW)))
    assert "`cuffline run` makes it" in line


@pytest.mark.parametrize(
    ("file", "folder", "open_to_all"),
    [(0o644, 0o755, True), (0o640, 0o755, False), (0o644, 0o750, False), (0o600, 0o755, False)],
)
def test_a_database_that_others_on_the_machine_can_read_is_said(
    place: Place, monkeypatch: pytest.MonkeyPatch, file: int, folder: int, open_to_all: bool
) -> None:
    place.db.chmod(file)
    place.db.parent.chmod(folder)
    # pytest's own folders above are closed to others
    monkeypatch.setattr(type(place.db), "parents", property(lambda path: [path.parent]))
    assert any("chmod 600" in line for line in wrong(list(looking.database(place, NOW)))) == open_to_all


def test_a_value_that_changed_since_the_last_backup_is_noticed(place: Place) -> None:
    backed_up(place, NOW)
    assert wrong(list(looking.database(place, NOW))) == []
    flip(place.db, b"well done")
    [line] = wrong(list(looking.database(place, NOW)))
    assert "coach_did row 1" in line
    assert "restore" in line


def test_what_was_added_since_the_last_backup_is_no_damage(place: Place) -> None:
    backed_up(place, NOW)
    store = Store(place.db)
    store.execute("INSERT INTO noticed (person, noted_at, at, kind, said) VALUES (2, 1, 1, 'note', 'new')")
    store.close()
    assert wrong(list(looking.database(place, NOW))) == []


def test_a_row_number_that_is_used_again_after_an_erasure_is_no_damage(place: Place) -> None:
    store = Store(place.db)
    other = people.add(store, 3001, "Aino", Role.CLIENT, "UTC", NOW, 1)
    facts.put(store, other, Noticed(NOW, "note", "mine"), NOW)
    mail.post(store, Letter(3001, {"text": "hello"}, person=other), NOW)
    backed_up(place, NOW)
    erasure.erase(store, other)
    later = NOW + timedelta(minutes=5)
    people.add(store, 3002, "Milo", Role.CLIENT, "UTC", later, 1)
    facts.put(store, other, Noticed(later, "note", "another's"), later)
    mail.post(store, Letter(3002, {"text": "good day"}, person=other), later)
    store.close()
    assert wrong(list(looking.database(place, NOW))) == []


def test_a_talk_that_is_planned_again_word_for_word_is_no_damage(place: Place) -> None:
    store = Store(place.db)
    about = {"session": "2-3", "day": "morning"}
    duties.plan(store, 2, "morning", about, NOW + timedelta(hours=9), NOW)  # when the bands go on
    backed_up(place, NOW)
    later = NOW + timedelta(minutes=5)
    duties.unplan_session(store, 2, "morning", "2-3")
    duties.plan(store, 2, "morning", about, later + timedelta(hours=9), later)  # when they are off
    [again] = store.rows("SELECT id, made_at FROM planned WHERE dialogue = 'morning'")
    assert tuple(again) == (1, ms(later))
    store.close()
    assert wrong(list(looking.database(place, NOW))) == []


def test_a_talk_that_says_another_thing_is_damage(place: Place) -> None:
    store = Store(place.db)
    duties.plan(store, 2, "morning", {"session": "2-3"}, NOW + timedelta(hours=9), NOW)
    backed_up(place, NOW)
    store.execute("UPDATE planned SET about = replace(about, '2-3', '2-2')")
    store.close()
    [line] = wrong(list(looking.database(place, NOW)))
    assert "planned row" in line


def test_a_flipped_time_is_noticed_although_it_makes_the_row_newer(place: Place) -> None:
    backed_up(place, NOW)
    store = Store(place.db)
    store.execute("UPDATE coach_did SET noted_at = noted_at + 70368744177664")
    store.close()
    assert len(wrong(list(looking.database(place, NOW)))) == 1


@pytest.mark.parametrize(
    ("change", "good"),
    [
        ("UPDATE outbox SET body = NULL", True),
        ("DELETE FROM outbox", True),
        ("UPDATE outbox SET attempts = 3, sent_at = 1", True),
        ("UPDATE outbox SET chat = chat + 1", False),
        ("UPDATE outbox SET body = replace(body, '31', '33')", False),
    ],
)
def test_letters_may_be_sent_and_forgotten_and_never_say_another_thing(
    place: Place, change: str, good: bool
) -> None:
    store = Store(place.db)
    mail.post(store, Letter(2001, {"text": "31, noted."}, person=2), NOW)
    backed_up(place, NOW)
    store.execute(change)
    store.close()
    assert (wrong(list(looking.database(place, NOW))) == []) is good


def test_a_row_that_is_gone_although_its_person_is_not_is_noticed(place: Place) -> None:
    backed_up(place, NOW)
    store = Store(place.db)
    store.execute("DELETE FROM coach_did")
    store.close()
    assert len(wrong(list(looking.database(place, NOW)))) == 1


def test_a_broken_page_is_noticed(place: Place) -> None:
    content = bytearray(place.db.read_bytes())
    content[4096:4196] = b"\xff" * 100
    place.db.write_bytes(content)
    assert wrong(list(looking.database(place, NOW)))


@pytest.mark.parametrize(("ahead", "good"), [(60, True), (61, False)])
def test_a_clock_behind_the_last_work_of_the_bot_is_wrong(place: Place, ahead: int, good: bool) -> None:
    store = Store(place.db)
    settings.put(store, "awake_at", (NOW + timedelta(seconds=ahead)).isoformat())
    store.close()
    assert (wrong(list(looking.clock(place, NOW))) == []) is good


@pytest.mark.parametrize(("year", "good"), [(2025, False), (2026, True)])
def test_a_clock_before_this_program_is_wrong(place: Place, year: int, good: bool) -> None:
    assert (wrong(list(looking.clock(place, NOW.replace(year=year)))) == []) is good


def test_a_zone_that_this_machine_does_not_know_is_wrong(place: Place) -> None:
    store = Store(place.db)
    store.execute("UPDATE person SET zone = 'Europe/Atlantis' WHERE id = 2")
    store.close()
    [line] = wrong(list(looking.zones(place, NOW)))
    assert "Europe/Atlantis" in line


@pytest.mark.parametrize(("minutes", "good"), [(180, True), (181, False)])
def test_a_backup_older_than_three_hours_is_wrong(place: Place, minutes: int, good: bool) -> None:
    backed_up(place, NOW - timedelta(minutes=minutes))
    assert (wrong(list(looking.last_backup(place, NOW))) == []) is good


def test_a_damaged_backup_is_wrong(place: Place) -> None:
    flip(backed_up(place, NOW), b"well done")
    [line] = wrong(list(looking.last_backup(place, NOW)))
    assert "checksum differs" in line


def test_a_full_disk_is_said_before_it_is_too_late(place: Place, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(looking, "LEAST_FREE", 1 << 60)
    assert len(wrong(list(looking.disk(place, NOW)))) == 2


def test_a_disk_that_does_not_answer_is_a_finding_and_no_traceback(
    place: Place, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def gone(*_: object) -> list[backups.Backup]:
        raise OSError(5, "Input/output error", "/mnt/gone")

    monkeypatch.setattr(backups, "found", gone)
    assert main(["check", "--offline", "--db", str(place.db)]) == 1
    said = capsys.readouterr().out
    assert "/mnt/gone: Input/output error" in said
    assert "zones" in said, "the others are looked at all the same"
