"""Facts of a session are found by the session's own index, however many years there are beside it."""

from collections.abc import Callable
from datetime import UTC, datetime

import pytest

from core.facts import Answered, CuffChecked, Fact, LoadMoved, Rated, SessionEnded, SetDone
from core.store import facts, people
from core.store.connection import Store
from core.store.people import Role

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
KINDS: tuple[type[Fact], ...] = (Answered, CuffChecked, LoadMoved, Rated, SessionEnded, SetDone)
WAYS: dict[str, Callable[[Store, type[Fact], int], object]] = {
    "current": lambda store, kind, person: facts.current(store, kind, person, session="a"),
    "latest": lambda store, kind, person: facts.latest(store, kind, person, session="a"),
    "of_sessions": lambda store, kind, person: facts.of_sessions(store, kind, person, ["a", "b"]),
}


def plans(store: Store, act: Callable[[], object]) -> list[str]:
    """How SQLite looks for what is asked."""
    asked: list[str] = []
    store.connection.set_trace_callback(asked.append)
    act()
    store.connection.set_trace_callback(None)
    return [row["detail"] for sql in asked for row in store.rows(f"EXPLAIN QUERY PLAN {sql}")]


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("kind", KINDS)
def test_a_session_is_found_by_its_index(kind: type[Fact], way: str) -> None:
    store = Store(":memory:", synchronous="OFF")
    person = people.add(store, 1, "Ruta", Role.CLIENT, "UTC", NOW)
    found = plans(store, lambda: WAYS[way](store, kind, person))
    assert any("_person_session (person=? AND session=?)" in plan for plan in found), found


@pytest.mark.parametrize("name", ["movement", "side"])
def test_a_movement_of_a_session_is_found_by_the_session(name: str) -> None:
    store = Store(":memory:", synchronous="OFF")
    person = people.add(store, 1, "Ruta", Role.CLIENT, "UTC", NOW)
    for act in (
        lambda: facts.current(store, SetDone, person, session="a", **{name: "x"}),
        lambda: facts.of_sessions(store, SetDone, person, ["a"], **{name: "x"}),
    ):
        found = plans(store, act)
        assert any("_person_session (person=? AND session=?)" in plan for plan in found), found


def test_the_newest_of_a_movement_are_found_without_sorting() -> None:
    store = Store(":memory:", synchronous="OFF")
    person = people.add(store, 1, "Ruta", Role.CLIENT, "UTC", NOW)
    found = plans(store, lambda: facts.latest(store, LoadMoved, person, movement="x"))
    assert any("_person_movement_at" in plan for plan in found), found
    assert not any("TEMP B-TREE" in plan for plan in found), found
