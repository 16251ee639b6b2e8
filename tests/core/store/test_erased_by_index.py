"""Nobody's erasure reads a table that grows from end to end: it happens in the loop, and everybody waits for it."""

import re
from collections.abc import Iterator
from datetime import UTC, datetime

import pytest

from core.store import erasure, people, tables
from core.store.connection import Store
from core.store.people import Role

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
SMALL = {
    "person",
    "p",
    "invitation",
    "setting",
    "sqlite_schema",
}  # a row or a few for each person, for each table
SOME = ("idx_inbox_open", "idx_inbox_of_nobody")  # indexes of what waits, of what strangers wrote


@pytest.fixture
def store() -> Iterator[Store]:
    made = Store(":memory:")
    coach = people.add(made, 1001, "Coach", Role.COACH, "UTC", NOW)
    people.add(made, 2001, "Ruta", Role.CLIENT, "UTC", NOW, coach)
    yield made
    made.close()


def read_whole(store: Store, statements: list[str]) -> set[str]:
    """Tables that SQLite would read from end to end for these statements."""
    plans = [row["detail"] for sql in statements for row in store.rows(f"EXPLAIN QUERY PLAN {sql}")]
    scans = [plan for plan in plans if not plan.endswith(SOME)]
    return {match[1] for match in (re.match(r"SCAN (\w+)", plan) for plan in scans) if match}


def said(store: Store, erase: object, person: int) -> list[str]:
    """Every statement of it, with its values."""
    heard: list[str] = []
    store.connection.set_trace_callback(heard.append)
    with store.transaction():
        erase(store, person)  # type: ignore[operator]
    store.connection.set_trace_callback(None)
    return [sql for sql in heard if sql.startswith(("DELETE", "UPDATE", "SELECT"))]


@pytest.mark.parametrize("erase", [erasure.erase, erasure.close])
def test_no_statement_of_it_reads_a_table_that_grows_from_end_to_end(store: Store, erase: object) -> None:
    statements = said(store, erase, 2)
    assert sum(sql.startswith("DELETE") for sql in statements) > 5
    assert read_whole(store, statements) <= SMALL


def test_the_look_would_notice_one(store: Store) -> None:
    assert read_whole(store, ["DELETE FROM inbox WHERE json_extract(body, '$.a') = 1"]) == {"inbox"}


def test_a_row_that_goes_is_looked_for_by_an_index_wherever_it_may_be_named(store: Store) -> None:
    """SQLite looks itself, at each row of a person or a thread that goes."""
    names = [*tables.names(store), "button"]
    named = [(name, row["from"]) for name in names for row in store.rows(f"PRAGMA foreign_key_list({name})")]
    assert ("outbox", "person") in named
    assert ("button", "thread") in named
    plain = [f"SELECT 1 FROM {name} WHERE {column} = 2" for name, column in named]
    assert read_whole(store, plain) == set()


@pytest.mark.parametrize("place", ["message", "edited_message", "callback_query"])
@pytest.mark.parametrize("handled", [True, False])
def test_a_strangers_words_that_later_turn_out_to_be_theirs_go(
    store: Store, place: str, handled: bool
) -> None:
    sender = "from" if place == "callback_query" else "chat"
    for number, chat in ((1, 2001), (2, 2002)):
        store.execute(
            "INSERT INTO inbox (update_id, body, received_at, handled_at)"
            " VALUES (?, json_object(?, json_object(?, json_object('id', ?))), 0, ?)",
            [number, place, sender, chat, 0 if handled else None],
        )
    with store.transaction():
        erasure.erase(store, 2)
    assert [row["update_id"] for row in store.rows("SELECT update_id FROM inbox")] == [2]
