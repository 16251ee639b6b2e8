"""A hold has a day, and on that day the coach is asked."""

from core.facts import ScreeningDone
from core.store import facts
from tests.practice import CLIENT, COACH, START, Practice


def held(typed: str) -> Practice:
    """The client is on hold until what the coach typed."""
    room = Practice()
    store = room.stage.engine.store
    with store.transaction():
        facts.put(store, room.client, ScreeningDone(START, "1", "clear", "", ""), START)
    room.types(COACH, "Ruta")
    room.taps(COACH, "Clearance")
    room.taps(COACH, "Hold for now")
    assert "until when" in room.newest(COACH).text
    room.types(COACH, typed)
    room.taps(COACH, "No note")
    return room


def test_a_hold_is_asked_about_on_its_day_and_the_client_knows_the_day() -> None:
    room = held("until 6 march")
    assert any("Friday 6 March" in text for text in room.heard(CLIENT))
    room.later(days=3, hours=10)
    assert not any("on hold until today" in text for text in room.heard(COACH))
    room.later(hours=10)
    assert any("on hold until today" in text for text in room.heard(COACH))
    room.types(CLIENT, "start")
    assert "on hold" in room.newest(CLIENT).text
    room.taps(COACH, "Look at clearance")
    assert "decision" in room.newest(COACH).text


def test_a_hold_without_a_day_is_not_asked_about() -> None:
    room = held("until I say")
    assert any("Your coach will write" in text for text in room.heard(CLIENT))
    room.later(days=40)
    assert not any("on hold until today" in text for text in room.heard(COACH))


def test_a_new_decision_takes_the_question_of_the_old_hold_away() -> None:
    room = held("until 6 march")
    room.types(COACH, "Ruta")
    room.taps(COACH, "Clearance")
    room.taps(COACH, "Decline")
    room.taps(COACH, "No note")
    room.later(days=6)
    assert not any("on hold until today" in text for text in room.heard(COACH))
