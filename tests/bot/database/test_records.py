"""A client asks for everything kept about them, and to be erased."""

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from bot.database import forgotten
from bot.making import documents
from conversations.words import leaving as words
from core.facts import CoachDid, Detail, Noticed, SetDone
from core.store import duties, erasure, facts, people, settings, tables, threads
from core.store.connection import Store
from core.store.people import Role
from tests.practice import CLIENT, COACH, OTHER, START, Practice, PracticeOnFile

MARK = "Zmarkerq"


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = PracticeOnFile()
    yield made
    made.stage.close()


@pytest.fixture
def known(practice: Practice) -> Practice:
    """A client with a name to look for, who has trained, talked, and rung an alarm."""
    store = practice.stage.engine.store
    people.rename(store, practice.client, MARK)
    facts.put(store, practice.client, Detail(START, "phone", f"555 {MARK}"), START)
    practice.in_a_set()
    practice.taps(CLIENT, "Set done")
    practice.types(CLIENT, "31")
    practice.types(CLIENT, f"stop, my {MARK} leg is numb")
    for _ in range(2):
        practice.taps(CLIENT, practice.newest(CLIENT).buttons[0][0][0])
    practice.types(CLIENT, f"coach, {MARK} speaking")
    practice.types(COACH, f"to {MARK}: rest well, {MARK}")
    practice.types(COACH, "clients")
    practice.types(COACH, f"client {MARK}")
    practice.taps(COACH, "Clear to train")
    return practice


def documents_of(practice: Practice) -> dict[str, bytes]:
    history = practice.stage.phones[CLIENT].history
    return {one.document_name or "": one.document or b"" for one in history if one.document is not None}


def store_of(practice: Practice) -> Store:
    return practice.stage.engine.store


def leaves(practice: Practice) -> None:
    practice.types(CLIENT, "cancel")
    practice.types(CLIENT, "delete me")
    practice.types(CLIENT, "yes")
    practice.types(CLIENT, "delete")


def keep_for(practice: Practice, years: int) -> None:
    engine = practice.stage.engine
    engine.config = replace(engine.config, keep_years=years)


def bytes_on_disk(practice: Practice) -> bytes:
    db = practice.stage.engine.config.db
    files = [db.with_name(db.name + end) for end in ("", "-wal", "-shm")]
    return b"".join(file.read_bytes() for file in files if file.exists())


def values(store: Store) -> set[object]:
    """Every value in every table."""
    every = [*tables.names(store), "button"]
    return {value for name in every for row in store.rows(f"SELECT * FROM {name}") for value in tuple(row)}


# --- my data ---
def test_my_data_comes_as_a_text_to_read_and_as_json(known: Practice) -> None:
    known.types(CLIENT, "my data")
    sent = documents_of(known)
    assert set(sent) == {"my-data.txt", "my-data.json"}
    text = sent["my-data.txt"].decode()
    assert f"phone, value: 555 {MARK}" in text
    assert "reps: 31" in text
    assert "leg is numb" in text


def test_the_log_of_what_the_coach_did_is_in_it(known: Practice) -> None:
    known.types(CLIENT, "my data")
    text = documents_of(known)["my-data.txt"].decode()
    did = text[text.index("What your coach did") :].split("\n\n")[0]
    assert f"rest well, {MARK}" in did
    assert "by: Coach" in did


def test_the_newest_of_it_is_read_in_the_chat(known: Practice) -> None:
    known.types(CLIENT, "cancel")
    known.types(CLIENT, "log")
    assert f"Coach: wrote: rest well, {MARK}" in known.newest(CLIENT).text
    assert "'my data'" in known.newest(CLIENT).text


def test_the_json_holds_every_row_about_the_client_and_nobody_elses(known: Practice) -> None:
    known.types(CLIENT, "my data")
    found = json.loads(documents_of(known)["my-data.json"])
    store = store_of(known)
    for name in tables.personal(store):
        if name not in ("inbox", "outbox"):
            count = store.rows(f"SELECT count(*) AS n FROM {name} WHERE person = ?", [known.client])[0]["n"]
            assert len(found[name]) == count, name
    assert {row["person"] for rows in found.values() for row in rows if "person" in row} == {known.client}
    assert [row["name"] for row in found["person"]] == [MARK]


def test_the_invitation_and_what_a_coach_is_in_the_middle_of_are_in_it(practice: Practice) -> None:
    store, now = store_of(practice), practice.stage.clock.now()
    coach = people.by_chat(store, COACH)
    assert coach is not None
    with store.transaction():
        for code, name in (("a" * 26, "Ruta"), ("b" * 26, "Somebody else")):
            people.invite(store, coach.id, name, code, now)
        found = people.redeem(store, "a" * 26, now)
        assert found is not None
        people.used(store, found[0], practice.client, now)
    practice.types(COACH, "pause ruta")
    practice.types(CLIENT, "my data")
    kept = json.loads(documents_of(practice)["my-data.json"])
    assert [(one["name"], sorted(one)) for one in kept["invitation"]] == [
        ("Ruta", ["coach", "expires_at", "made_at", "name", "used_at"])
    ]
    assert [one["dialogue"] for one in kept["coach_thread"]] == ["pausing"]
    text = documents_of(practice)["my-data.txt"].decode()
    assert "The invitation you used" in text
    assert "Somebody else" not in text
    practice.types(COACH, "cancel")
    assert tables.elsewhere(store, practice.client)["coach_thread"] == []


def test_a_correction_is_in_it_and_so_is_what_it_replaced(practice: Practice) -> None:
    store = store_of(practice)
    for value in ("555 0101", "555 0102"):
        facts.put(store, practice.client, Detail(START, "phone", value), START)
    practice.types(CLIENT, "my data")
    text = documents_of(practice)["my-data.txt"].decode()
    assert "555 0101 (corrected later)" in text
    assert "555 0102\n" in text


def test_records_are_written_when_they_go_out_and_not_stored_again(practice: Practice) -> None:
    practice.types(CLIENT, "my data")
    rows = store_of(practice).rows("SELECT body FROM outbox WHERE kind = 'document'")
    assert len(rows) == 2
    assert max(len(row["body"]) for row in rows) < 200


# --- delete me ---
def test_everything_goes_and_the_coach_is_told(known: Practice) -> None:
    leaves(known)
    assert words.GOODBYE in known.heard(CLIENT)
    assert words.COACH.format(name=MARK) in known.heard(COACH)[-1]
    known.later(minutes=2)
    store = store_of(known)
    assert people.by_chat(store, CLIENT) is None
    assert not {CLIENT, MARK} & values(store)
    for name in tables.personal(store):
        assert store.rows(f"SELECT 1 FROM {name} WHERE person = ?", [known.client]) == [], name
    assert store.rows("PRAGMA foreign_key_check") == []


def test_no_byte_of_it_stays_in_database_or_log(known: Practice) -> None:
    assert MARK.encode() in bytes_on_disk(known)
    leaves(known)
    known.later(minutes=2)
    assert settings.get(store_of(known), "compact") is not None
    assert erasure.compact(store_of(known))
    assert MARK.encode() not in bytes_on_disk(known)
    assert MARK.encode("utf-16-le") not in bytes_on_disk(known)


def test_what_was_written_before_the_invitation_was_typed_goes_too(practice: Practice) -> None:
    store = store_of(practice)
    practice.types(COACH, "invite")
    practice.types(COACH, "Aino")
    code = practice.newest(COACH).text.split("type ")[1].split(" ")[0].rstrip(".")
    practice.types(OTHER, f"hello, {MARK} here")
    practice.types(OTHER, code)
    person = people.by_chat(store, OTHER)
    assert person is not None
    practice.types(OTHER, "cancel")
    practice.types(OTHER, "delete me")
    practice.types(OTHER, "yes")
    practice.types(OTHER, "delete")
    practice.later(minutes=2)
    assert people.by_chat(store, OTHER) is None
    assert OTHER not in values(store)
    assert erasure.compact(store)
    assert MARK.encode() not in bytes_on_disk(practice)


def test_a_note_that_waits_for_the_coachs_morning_is_given_first(known: Practice) -> None:
    known.stage.clock.skip_to(START.replace(hour=23))
    known.types(CLIENT, f"coach, still {MARK}")
    leaves(known)
    known.later(hours=1)
    assert people.by_chat(store_of(known), CLIENT) is not None
    known.later(hours=11)
    assert any(f"still {MARK}" in text for text in known.heard(COACH))
    known.taps(COACH, "I am on it")  # the numb leg that nobody has been asked about since
    known.later(minutes=10)
    assert people.by_chat(store_of(known), CLIENT) is None
    assert erasure.compact(store_of(known))
    assert MARK.encode() not in bytes_on_disk(known)


def test_others_keep_everything(known: Practice) -> None:
    store = store_of(known)
    coach = people.by_chat(store, COACH)
    assert coach is not None
    other = people.add(store, OTHER, "Aino", Role.CLIENT, "UTC", START, coach.id)
    facts.put(store, other, Noticed(START, "note", "mine"), START)
    before = documents.everything(store, other)
    leaves(known)
    known.later(minutes=2)
    assert documents.everything(store, other) == before


def test_afterwards_they_are_a_stranger(known: Practice) -> None:
    leaves(known)
    known.later(minutes=2)
    known.types(CLIENT, "hello?")
    assert "only talks with people whom a coach has invited" in known.newest(CLIENT).text


def test_a_no_keeps_everything(known: Practice) -> None:
    known.types(CLIENT, "cancel")
    known.types(CLIENT, "delete me")
    known.types(CLIENT, "no")
    known.later(minutes=2)
    assert people.by_chat(store_of(known), CLIENT) is not None


def test_nobody_is_deleted_in_a_session(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "delete me")
    assert practice.newest(CLIENT).text == words.NOT_NOW


def test_an_open_alert_is_named_to_the_coach_before_the_phone_number_goes(practice: Practice) -> None:
    facts.put(store_of(practice), practice.client, Detail(START, "phone", "555 0101"), START)
    practice.in_a_set()
    practice.types(CLIENT, "stop, my leg is numb")
    for _ in range(2):
        practice.taps(CLIENT, practice.newest(CLIENT).buttons[0][0][0])
    leaves(practice)
    assert "555 0101" in practice.heard(COACH)[-1]


def test_nothing_is_asked_after_the_goodbye(practice: Practice) -> None:
    practice.types(CLIENT, "settings")
    store, now = store_of(practice), practice.stage.clock.now()
    with store.transaction():
        duties.plan(
            store,
            practice.client,
            "reminding",
            {"at": now.isoformat(), "again": True},
            now + timedelta(seconds=30),
            now,
        )
    practice.types(CLIENT, "delete me")
    practice.types(CLIENT, "yes")
    practice.types(CLIENT, "delete")
    practice.later(seconds=59)
    assert practice.newest(CLIENT).text == words.GOODBYE


def test_after_the_goodbye_a_limb_that_may_be_in_danger_is_still_asked_about(practice: Practice) -> None:
    practice.types(CLIENT, "my foot is numb")
    practice.types(CLIENT, "delete me")
    practice.types(CLIENT, "yes")
    practice.types(CLIENT, "delete")
    assert threads.live_in(store_of(practice), practice.client, "trouble") is not None


def test_the_goodbye_goes_out_before_the_erasure(practice: Practice) -> None:
    practice.types(CLIENT, "delete me")
    practice.types(CLIENT, "yes")
    practice.stage.api.fail_next("sendMessage", 3, 502)
    practice.types(CLIENT, "delete")
    assert words.GOODBYE not in practice.heard(CLIENT)
    practice.stage.clock.skip_to(practice.stage.clock.now() + timedelta(minutes=2))
    practice.stage.engine.work()
    assert people.by_chat(store_of(practice), CLIENT) is not None
    practice.later(minutes=20)
    practice.later(minutes=20)
    assert words.GOODBYE in practice.heard(CLIENT)
    assert people.by_chat(store_of(practice), CLIENT) is None


def test_what_must_be_kept_stays_locked_until_its_day(known: Practice) -> None:
    keep_for(known, 10)
    leaves(known)
    known.later(minutes=2)
    assert words.GOODBYE_KEEPS.format(day="2036-03-02") in known.heard(CLIENT)
    assert words.GOODBYE not in known.heard(CLIENT)
    store = store_of(known)
    assert people.by_id(store, known.client).role is Role.LEFT
    assert people.by_chat(store, CLIENT) is None
    assert facts.current(store, SetDone, known.client)
    assert facts.current(store, CoachDid, known.client)
    assert facts.current(store, Detail, known.client) == []
    for name in ("inbox", "outbox", "thread"):
        assert store.rows(f"SELECT 1 FROM {name} WHERE person = ?", [known.client]) == [], name
    day = duties.next_talk(store, known.client, "erase")
    assert day is not None
    assert day.due_at.date().isoformat() == "2036-03-02"


def test_and_goes_on_that_day(known: Practice) -> None:
    keep_for(known, 1)
    leaves(known)
    known.later(minutes=2)
    store, engine = store_of(known), known.stage.engine
    for days, there in ((364, True), (366, False)):
        known.stage.clock.skip_to(START + timedelta(days=days))
        while engine.work():
            pass
        assert (store.rows("SELECT 1 FROM person WHERE id = ?", [known.client]) != []) is there


# --- backups ---
def test_a_restored_backup_does_not_bring_anybody_back(known: Practice, tmp_path: Path) -> None:
    copy = tmp_path / "before.db"
    store_of(known).snapshot(copy)
    leaves(known)
    known.later(minutes=2)
    config = known.stage.engine.config
    restored = Store(copy)
    assert people.by_chat(restored, CLIENT) is not None
    assert forgotten.again(restored, forgotten.file_of(config.backups, config.db)) == 1
    assert people.by_chat(restored, CLIENT) is None
    restored.close()
    assert MARK.encode() not in copy.read_bytes()


def test_a_record_that_must_be_kept_goes_on_its_day_after_a_restore_too(
    known: Practice, tmp_path: Path
) -> None:
    keep_for(known, 10)
    copy = tmp_path / "before.db"
    store_of(known).snapshot(copy)
    leaves(known)
    known.later(minutes=2)
    config = known.stage.engine.config
    restored = Store(copy)
    assert forgotten.again(restored, forgotten.file_of(config.backups, config.db)) == 1
    assert people.by_id(restored, known.client).role is Role.LEFT
    day = duties.next_talk(restored, known.client, "erase")
    assert day is not None
    assert day.due_at.year == 2036
    restored.close()


def test_somebody_who_joined_later_with_the_same_number_of_row_stays(tmp_path: Path) -> None:
    store = Store(tmp_path / "cuffline.db")
    person = people.add(store, CLIENT, "New", Role.CLIENT, "UTC", START)
    note = forgotten.Note(START - timedelta(seconds=1), forgotten.What.ERASED, person)
    forgotten.note(tmp_path, tmp_path / "cuffline.db", note)
    assert forgotten.again(store, tmp_path / "cuffline-erased.txt") == 0
    assert people.by_chat(store, CLIENT) is not None
    store.close()


def test_a_torn_line_does_not_hide_the_others(tmp_path: Path) -> None:
    db = tmp_path / "cuffline.db"
    forgotten.note(tmp_path, db, forgotten.Note(START, forgotten.What.LEFT, 7))
    file = forgotten.file_of(tmp_path, db)
    file.write_text(file.read_text() + "2026-03-02T")
    assert forgotten.notes(file) == [forgotten.Note(START, forgotten.What.LEFT, 7)]


def test_nobody_is_erased_while_it_cannot_be_noted(
    practice: Practice, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("CRITICAL")
    practice.stage.engine.config.backups.write_text("a file in the way")
    leaves(practice)
    practice.later(minutes=2)
    assert people.by_chat(store_of(practice), CLIENT) is not None
    practice.stage.engine.config.backups.unlink()
    practice.later(hours=2)
    assert people.by_chat(store_of(practice), CLIENT) is None
