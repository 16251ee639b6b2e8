"""Updates of no shape that we know, broken characters, strange strings: nobody else is held up."""

from typing import Any

import pytest

from core.store import people
from core.store.people import Role
from tests.bot.arriving import NUMBERS, comes, message
from tests.practice import CLIENT, COACH, OTHER, Practice
from tests.strangers.naughty import STRINGS


@pytest.mark.parametrize(
    "part",
    [
        *({"chat": broken} for broken in (None, [], 7, "x", {"id": 10**30, "type": "private"})),
        {"from": [1]},
        {"photo": []},
        {"date": 10**30},
        {"edit_date": float("inf")},
        {"reply_to_message": "x"},
        {"text": {"a": 1}, "date": None},
    ],
)
def test_an_update_of_no_shape_that_we_know_takes_no_other_along(
    practice: Practice, part: dict[str, Any]
) -> None:
    odd, fine = message(CLIENT, "31") | part, message(CLIENT, "coach, are you there?")
    practice.stage.engine.receive([(next(NUMBERS), {"message": one}) for one in (odd, fine)])
    practice.settle()
    assert "are you there?" in practice.newest(COACH).text
    store = practice.stage.engine.store
    assert store.rows("SELECT 1 FROM inbox WHERE handled_at IS NULL") == []
    assert len(store.rows("SELECT 1 FROM inbox WHERE failed IS NOT NULL")) == 1
    assert any("could not deal with" in text for text in practice.heard(COACH))


def test_half_a_character_stops_nobody(practice: Practice) -> None:
    comes(practice, message=message(CLIENT, "coach \ud83d hello \x00"))
    assert "hello" in practice.heard(COACH)[-1]
    store = practice.stage.engine.store
    assert store.rows("SELECT failed FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL") == []
    assert [one.role for one in people.coaches(store)] == [Role.COACH, Role.COACH]


def test_everybody_may_type_anything_and_nothing_fails(practice: Practice) -> None:
    practice.in_a_set()
    for place, text in enumerate(STRINGS[::9]):
        shown = text.strip()
        if shown:
            for number in (CLIENT, COACH, OTHER):
                practice.stage.phones[number].types(shown)
                if number == CLIENT:
                    practice.stage.phones[number].types(f"coach, {shown}")
        if place % 5 == 0:
            practice.later(minutes=2)
    practice.settle()
    store = practice.stage.engine.store
    assert store.rows("SELECT failed FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL") == []
    assert store.rows("SELECT dropped FROM outbox WHERE dropped IS NOT NULL") == []
