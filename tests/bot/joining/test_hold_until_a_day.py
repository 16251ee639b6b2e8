"""A hold has a day, and on that day the coach is asked."""

import pytest

from core.facts import ScreeningDone
from core.store import facts
from tests.practice import CLIENT, COACH, SECOND, START, Practice


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


def held_from_an_alert(number: int = COACH) -> Practice:
    """A numb foot, and "Hold" under its alert."""
    room = Practice()
    room.types(CLIENT, "my foot is numb")
    room.later(minutes=6)
    room.taps(number, "Hold")
    return room


def test_hold_under_an_alert_holds_at_once_and_asks_until_when() -> None:
    room = held_from_an_alert()
    assert "on hold" in room.heard(CLIENT)[-1]
    assert room.newest(COACH).text.startswith("Hold Ruta until when?")
    room.taps(COACH, "One week")
    assert room.newest(COACH).text.startswith("Ruta: held until 8 March 2026")
    assert "Sunday 8 March" in room.newest(CLIENT).text
    room.later(days=7)
    assert any("on hold until today" in text for text in room.heard(COACH))
    room.types(CLIENT, "start")
    assert "You may train" not in room.newest(CLIENT).text


@pytest.mark.parametrize("said", ["until I say", "cancel", None])
def test_a_hold_without_a_day_stays_and_asks_nobody(said: str | None) -> None:
    room = held_from_an_alert()
    if said is not None:
        room.types(COACH, said)
        assert room.newest(COACH).text == "Ruta stays on hold until you say."
    room.later(days=30)
    assert not any("on hold until today" in text for text in room.heard(COACH))


def test_a_day_that_has_passed_is_asked_again() -> None:
    room = held_from_an_alert()
    room.types(COACH, "yesterday")
    assert room.newest(COACH).text.startswith("Hold Ruta until when?")
    room.types(COACH, "until 3 january")
    assert "3 January 2027" in room.newest(COACH).text


def test_a_second_contact_holds_and_is_asked_for_no_day() -> None:
    room = held_from_an_alert(SECOND)
    assert "on hold" in room.heard(CLIENT)[-1]
    assert not any("until when" in text for text in room.heard(SECOND))


def test_while_a_hold_has_its_day_nobody_is_asked_every_morning_whether_the_alert_is_settled() -> None:
    room = held_from_an_alert()
    room.taps(COACH, "Two weeks")
    room.later(days=12)
    assert not any("Still open since" in text for text in room.heard(COACH))
    room.later(days=1)
    assert sum("Still open since" in text for text in room.heard(COACH)) == 1
    assert sum("on hold until today" in text for text in room.heard(COACH)) == 1


def test_start_while_it_is_asked_how_it_is_names_no_session() -> None:
    room = Practice()
    room.types(CLIENT, "my foot is numb")
    room.types(CLIENT, "start")
    assert room.heard(CLIENT)[-2:] == [
        "Before the next session I need this one answer. Then write 'start' again.",
        "How is it now?",
    ]
