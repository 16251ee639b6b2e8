"""What was read ahead is what the tables say, and nothing may be written meanwhile."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from core.facts import Detail, Paused, SetDone
from core.plans import Side
from core.store import facts, people
from core.store.ahead import read_ahead
from core.store.connection import Store
from core.store.people import Role

NOW = datetime(2026, 3, 2, 18, 0, 0, 123000, tzinfo=UTC)
RUTA, TOMAS, ANA = 1, 2, 3
LATER = NOW + timedelta(hours=1)


@pytest.fixture
def store() -> Store:
    """Three people, with facts out of order, of one moment, and replaced."""
    made = Store(":memory:", synchronous="OFF")
    for number, name in enumerate(("Ruta", "Tomas", "Ana")):
        person = people.add(made, 2001 + number, name, Role.CLIENT, "Europe/Lisbon", NOW)
        for at, value in ((LATER, "12"), (NOW, "24"), (NOW, name)):
            facts.put(made, person, Detail(at, "clock_face", value), NOW)
        facts.put(made, person, Detail(NOW, "company", "alone"), NOW)
        for hours in (3, 1, 2, 1):
            at = NOW + timedelta(hours=hours)
            facts.put(made, person, Paused(at, at, at + timedelta(days=hours), 9, name), NOW)
    return made


def read(store: Store, person: int) -> list[Any]:
    """The same by every way of reading."""
    return [
        facts.current(store, Paused, person),
        facts.current(store, Detail, person, name="company"),
        facts.since(store, Paused, person, LATER),
        facts.since(store, Paused, person, LATER + timedelta(milliseconds=1)),
        facts.since(store, Paused, person, LATER + timedelta(microseconds=1)),
        facts.newest(store, Paused, person, 2),
        facts.newest(store, Paused, person, 2, why="nobody"),
        facts.latest(store, Detail, person, name="clock_face"),
        facts.latest(store, Detail, person, name="date_order"),
    ]


@pytest.mark.parametrize("person", [RUTA, TOMAS, ANA])  # Ana is not read ahead
def test_it_reads_the_same(store: Store, person: int) -> None:
    before = read(store, person)
    assert len(before[0]) == 4
    with read_ahead(store, (Detail, Paused), (RUTA, TOMAS)):
        assert read(store, person) == before
    assert read(store, person) == before


def test_no_table_is_asked_for_what_is_known(store: Store) -> None:
    with read_ahead(store, (Detail, Paused), (RUTA, TOMAS)):
        asked: list[str] = []
        store.connection.set_trace_callback(asked.append)
        read(store, TOMAS)
        assert asked == []
        read(store, ANA)
        assert len(asked) == 9


def test_a_list_that_was_handed_out_may_be_changed(store: Store) -> None:
    with read_ahead(store, (Paused,), (RUTA,)):
        facts.current(store, Paused, RUTA).clear()
        assert len(facts.current(store, Paused, RUTA)) == 4


def test_nothing_is_put_meanwhile(store: Store) -> None:
    with read_ahead(store, (Paused,), (RUTA,)), pytest.raises(AssertionError, match="old"):
        facts.put(store, RUTA, Detail(NOW, "company", "x"), NOW)
    facts.put(store, RUTA, Detail(NOW, "company", "x"), NOW)


def test_an_error_inside_ends_it_too(store: Store) -> None:
    with pytest.raises(RuntimeError), read_ahead(store, (Paused,), (RUTA,)):
        raise RuntimeError
    assert store.ahead == {}


def test_values_are_counted_person_by_person_and_only_current_ones(store: Store) -> None:
    def done(person: int, movement: str, set_no: int, at: datetime, exercise: int = 1) -> None:
        one = SetDone(at, "1", exercise, movement, set_no, Side.BOTH, "", 30, False, at, None, None, False)
        facts.put(store, person, one, NOW)

    done(RUTA, "curl", 1, NOW)  # replaced by the next one
    done(RUTA, "squat", 1, LATER)
    done(RUTA, "press", 1, LATER, exercise=2)
    done(RUTA, "bridge", 2, LATER, exercise=3)
    done(TOMAS, "squat", 1, LATER)
    done(ANA, "squat", 1, LATER)

    def count(since: datetime) -> int:
        return facts.distinct_since(store, SetDone, (RUTA, TOMAS), "movement", since, set_no=1)

    assert [count(NOW), count(LATER), count(LATER + timedelta(milliseconds=1))] == [3, 3, 0]
