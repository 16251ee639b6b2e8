"""An opening that was played once is as good as one that is played: nothing is missing, and nothing leaks."""

from collections.abc import Iterator
from typing import Any

import pytest

from bot.play.stage import Stage
from core.store import facts
from core.store.connection import Store
from tests import played
from tests.bot.coach_room import Room
from tests.practice import CLIENT, COACH, OTHER, Practice

OURS = ("bot.", "core.", "conversations.")
# Made anew for each flush, the file itself, and the machine's own clock, which a set clock does not ask.
NEVER_MIND = {
    "stage.outbox.news",
    "stage.folder",
    "stage.engine.store.connection",
    "stage.engine.store.utils",
    "stage.clock.steady",
}
OF_INTEREST = (
    "SELECT person, dialogue, wake_at, state, question, floor FROM thread ORDER BY id",
    "SELECT * FROM person ORDER BY id",
    "SELECT * FROM watch ORDER BY id",
    "SELECT person, thread, question, value, made_at FROM button ORDER BY rowid",
)


@pytest.fixture(autouse=True)
def nothing_played_yet() -> Iterator[None]:
    """Each test here begins as a fresh process would."""
    before = dict(played.moments)
    played.moments.clear()
    yield
    played.moments.clear()
    played.moments.update(before)


def in_memory(value: Any, place: str, found: dict[str, str], met: set[int]) -> dict[str, str]:
    """All that objects of ours hold, by where: the words of what is plain."""
    if place in NEVER_MIND or id(value) in met:
        return found
    if type(value).__module__.startswith(OURS):
        met.add(id(value))
        fields = getattr(value, "__dict__", None) or {
            one: getattr(value, one, None) for one in type(value).__slots__
        }
        for name, inner in fields.items():
            in_memory(inner, f"{place}.{name}", found, met)
    elif isinstance(value, dict):
        found[place] = repr(list(value))
        for key, inner in value.items():
            in_memory(inner, f"{place}[{key}]", found, met)
    elif isinstance(value, list | tuple | set | frozenset):
        value = sorted(value, key=repr) if isinstance(value, set | frozenset) else value
        found[place] = repr(len(value))
        for number, inner in enumerate(value):
            in_memory(inner, f"{place}[{number}]", found, met)
    else:
        found[place] = repr(value)
    return found


def state(stage: Stage) -> dict[str, str]:
    """Of a stage."""
    return in_memory(stage, "stage", {}, set())


def rows(store: Store) -> list[list[tuple[Any, ...]]]:
    """What is in a store, but for what is drawn by lot."""
    return [[tuple(row) for row in store.rows(sql)] for sql in OF_INTEREST]


def goes_on(practice: Practice) -> list[object]:
    """A stop in mid-set, what follows for a day, and what everybody saw."""
    practice.taps(CLIENT, "Set done")
    practice.types(CLIENT, "31")
    practice.types(CLIENT, "my foot is numb")
    practice.later(days=1)
    store = practice.stage.engine.store
    seen = [practice.heard(number) for number in (CLIENT, COACH, OTHER)]
    return [seen, practice.sets(), rows(store)]


def test_what_follows_is_what_follows_an_opening_that_was_played() -> None:
    first, second, third = Practice(), Practice(), Practice()
    first.play_into_a_set()
    second.in_a_set()
    third.in_a_set()
    assert list(played.moments) == ["practice in a set"]
    assert rows(first.stage.engine.store) == rows(third.stage.engine.store)
    assert third.heard(CLIENT) == first.heard(CLIENT)
    expected = goes_on(first)
    assert goes_on(second) == expected
    assert goes_on(third) == expected


def test_all_that_an_opening_changes_in_memory_is_put_there() -> None:
    practice, other = Practice(), Practice()
    before = state(practice.stage)
    practice.in_a_set()
    after = state(practice.stage)
    assert {place for place in before if before[place] != after.get(place)} != set()
    other.in_a_set()
    assert state(other.stage) == after | of_this_stage(other), "name it in `_holders` of tests/played.py"


def of_this_stage(practice: Practice) -> dict[str, str]:
    """What is a stage's own whatever is played."""
    own = ("stage.engine.config.db", "stage.engine.store.path")
    return {
        place: said for place, said in state(practice.stage).items() if place.startswith(own) or "<" in said
    }


def test_what_is_done_afterwards_is_not_there_the_next_time() -> None:
    first, second, third = Practice(), Practice(), Practice()
    first.in_a_set()
    before = state(first.stage), rows(first.stage.engine.store)
    second.in_a_set()
    goes_on(second)
    third.in_a_set()
    assert rows(third.stage.engine.store) == before[1]
    assert state(third.stage) == before[0] | of_this_stage(third)


def types_first(practice: Practice) -> None:
    practice.types(OTHER, "hello")


def blocks_first(practice: Practice) -> None:
    practice.stage.phones[OTHER].blocks()


def a_call_will_fail(practice: Practice) -> None:
    practice.stage.api.fail_next("getFile", 1, 500)


def waits_first(practice: Practice) -> None:
    practice.later(minutes=1)


def a_row_was_changed(practice: Practice) -> None:
    practice.stage.engine.store.execute("UPDATE person SET name = 'Ana' WHERE chat = ?", [CLIENT])


def somebody_answers(practice: Practice) -> None:
    practice.stage.minds[OTHER] = lambda message, now: None


def another_pen(practice: Practice) -> None:
    async def draw(kind: str, body: dict[str, Any]) -> bytes:
        return b"a picture"

    practice.stage.outbox.sender.draw = draw


@pytest.mark.parametrize(
    "first",
    [
        types_first,
        blocks_first,
        a_call_will_fail,
        waits_first,
        a_row_was_changed,
        somebody_answers,
        another_pen,
    ],
)
def test_a_stage_that_something_was_done_to_plays_it_itself(first: Any) -> None:
    Practice().in_a_set()
    practice = Practice()
    first(practice)
    told: list[str] = []
    practice.stage.engine.store.connection.set_trace_callback(told.append)
    practice.in_a_set()
    assert len(told) > 100
    assert "Set 1 of" in practice.newest(CLIENT).text


def test_what_is_put_in_the_codes_place_meets_the_opening(monkeypatch: pytest.MonkeyPatch) -> None:
    Practice().in_a_set()
    assert played.moments == {}
    monkeypatch.setattr(facts, "put", lambda *_: None)
    broken = Practice()
    with pytest.raises(AssertionError):
        broken.in_a_set()


def test_every_room_has_its_own_coaches() -> None:
    for coaches in ((1001, 1002, 1003), (1001,), (1001, 1002, 1003)):
        room = Room(coaches)
        assert list(room.stage.phones) == list(coaches)
        assert all(room.says(coach) for coach in coaches)
