"""The card says what to do with the bands first, then whom to call."""

from core.facts import Detail
from core.store import facts
from tests.practice import CLIENT, START, Practice


def test_the_card_says_bands_first_then_the_number_and_whom_to_ring(practice: Practice) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        for name, value in (("emergency_number", "112"), ("emergency_contact", "Tomas, 555 0101")):
            facts.put(store, practice.client, Detail(START, name, value), START)
    practice.types(CLIENT, "card")
    lines = practice.newest(CLIENT).text.splitlines()
    assert lines[0] == "EMERGENCY CARD"
    assert "undo it, or cut it" in lines[1]
    assert "Call 112 (your local emergency number)." in lines
    assert "Ring also: Tomas, 555 0101" in lines
    assert not any("Trains at" in line for line in lines)


def test_while_bands_are_on_the_card_says_so_and_the_session_goes_on(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "card")
    assert "The bands may be ON now." in practice.newest(CLIENT).text
    practice.types(CLIENT, "31")
    assert practice.sets() == {1: 31}
