"""Everything kept about a client, as they read it."""

import json
from datetime import UTC, datetime
from typing import Any

from conversations.words.records import readable

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
PERSON = [{"id": 3, "name": "Ruta", "role": "client", "coach": 1, "zone": "Europe/Helsinki"}]


def text_of(**sections: list[dict[str, Any]]) -> str:
    return readable({"person": PERSON, **sections}, {1: "Anna"}, "Europe/Helsinki", NOW)


def test_times_are_the_clients_and_the_coach_has_a_name() -> None:
    text = text_of(coach_did=[{"id": 1, "at": NOW, "by": 1, "action": "wrote", "note": "well done"}])
    assert "What your coach did\n===================\n" in text
    assert "- 2026-03-02 20:00  by: Anna, action: wrote, note: well done\n" in text


def test_questions_and_what_the_coach_did_stand_there_in_words() -> None:
    text = text_of(
        coach_did=[{"id": 1, "at": NOW, "by": 1, "action": "decided_legs_only", "note": "knee"}],
        screening_answer=[{"id": 1, "at": NOW, "screening": "2-17", "question": "smoking", "answer": "no"}],
        answered=[{"id": 1, "at": NOW, "session": "2-4", "question": "heavy", "answer": "yes"}],
        planned=[
            {"id": 1, "due_at": NOW, "dialogue": "reminding", "about": '{"zone": "UTC"}', "made_at": NOW}
        ],
    )
    assert "action: cleared the legs only, note: knee" in text
    assert "  question: Do you smoke?, answer: no\n" in text
    assert "question: Did you train the same muscles hard yesterday or today?, answer: yes" in text
    assert text.endswith("- 2026-03-02 20:00  dialogue: reminding\n")


def test_a_table_that_nobody_gave_a_title_is_shown_all_the_same() -> None:
    assert "something new\n=============\n- value: 5\n" in text_of(something_new=[{"id": 1, "value": 5}])


def test_empty_tables_are_left_out() -> None:
    assert "Sets" not in text_of(set_done=[])


def test_messages_show_what_was_said_and_taps_nothing() -> None:
    said = {"received_at": NOW, "body": json.dumps({"update_id": 1, "message": {"text": "hello"}})}
    tap = {"received_at": NOW, "body": json.dumps({"update_id": 2, "callback_query": {"data": "x"}})}
    gone = {"received_at": NOW, "body": None}
    assert text_of(inbox=[said, tap, gone]).endswith("=\n- 2026-03-02 20:00  hello\n")


def test_what_was_corrected_says_so() -> None:
    rows = [
        {"id": 1, "at": NOW, "reps": 13, "rough": 1},
        {"id": 2, "at": NOW, "reps": 31, "rough": 0, "replaces": 1},
    ]
    text = text_of(set_done=rows)
    assert "reps: 13, rough: yes (corrected later)\n" in text
    assert "reps: 31, rough: no\n" in text
