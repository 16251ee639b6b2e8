"""What a client did before is read in a few statements, however long they have trained."""

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.engine.training import history
from core.facts import Answered, Rated, SessionEnded, SetDone
from core.plans import Side
from core.store import facts
from tests.practice import SQUAT, START, Practice


def trained(practice: Practice, sessions: int) -> None:
    """Sessions of one set each, three days apart, with an effort of 6."""
    store = practice.stage.engine.store
    with store.transaction():
        for number in range(sessions):
            at, session = START - timedelta(days=3 * (sessions - number)), f"h{number}"
            for fact in (
                SetDone(
                    at,
                    session,
                    1,
                    "goblet_squat",
                    1,
                    Side.BOTH,
                    "10 kg",
                    20 + number % 30,
                    False,
                    at,
                    None,
                    6,
                    False,
                ),
                Rated(at, session, "effort", "after", 6, ""),
                Rated(at, session, "pain", "after", number % 3, ""),
                Answered(at, session, "before", "heavy", "yes" if number == 1 else "no"),
                SessionEnded(at, session, "stop" if number == 2 else "done"),
            ):
                facts.put(store, practice.client, fact, at)


def statements(practice: Practice) -> int:
    """How many the history takes."""
    asked: list[str] = []
    practice.stage.engine.store.connection.set_trace_callback(asked.append)
    history.history(practice.stage.engine, practice.client, SQUAT)
    practice.stage.engine.store.connection.set_trace_callback(None)
    return len(asked)


def test_a_year_of_sessions_takes_as_many_statements_as_three() -> None:
    counts = []
    for sessions in (3, 100):
        practice = Practice()
        trained(practice, sessions)
        counts.append(statements(practice))
        practice.stage.close()
    assert counts[0] == counts[1] <= 8


def test_each_session_keeps_what_was_said_around_it_and_not_its_neighbours_words(practice: Practice) -> None:
    trained(practice, 4)
    found = history.history(practice.stage.engine, practice.client, SQUAT)
    assert [one.reps for one in found] == [(20,), (21,), (22,), (23,)]
    assert [one.effort for one in found] == [6, 6, 6, 6]
    assert [one.pain for one in found] == [0, 1, 2, 0]
    assert [one.tired for one in found] == [False, True, False, False]
    assert [one.stopped for one in found] == [None, None, "stop", None]


def test_the_load_model_looks_back_on_the_last_sessions_and_a_report_on_all(practice: Practice) -> None:
    trained(practice, history.REMEMBERED + 5)
    engine, client = practice.stage.engine, practice.client
    looked_at = history.history(engine, client, SQUAT)
    everything = history.by_session(engine, client, SQUAT)
    assert len(looked_at) == history.REMEMBERED
    assert looked_at == tuple(record for _, record in everything[-history.REMEMBERED :])
    assert len(everything) == history.REMEMBERED + 5


def test_a_session_long_ago_that_was_corrected_today_is_read_whole(practice: Practice) -> None:
    trained(practice, history.REMEMBERED + 1)
    store, client = practice.stage.engine.store, practice.client
    [first] = facts.current(store, SetDone, client, session="h0")
    facts.put(store, client, replace(first, set_no=2, at=first.at), START)
    facts.put(store, client, replace(first, reps=21, at=START), START)
    found = history.history(practice.stage.engine, client, SQUAT)
    assert found[0].reps == (21, 20)
    assert len(found) == history.REMEMBERED


def test_as_many_facts_are_read_on_the_way_into_a_set_after_five_years_as_after_one(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    counts = []
    real = facts._fact
    for sessions in (100, 500):
        practice, read = Practice(), list[object]()
        trained(practice, sessions)
        monkeypatch.setattr(facts, "_fact", lambda kind, row, read=read: read.append(row) or real(kind, row))
        practice.in_a_set()
        counts.append(len(read))
        practice.stage.close()
    assert counts[0] == counts[1] > 0
