"""What stands on a button of the engine's own can be typed; nothing that was typed vanishes."""

import pytest

from conversations.words.engine import COACH_WENT_NOWHERE
from core.facts import CoachDid, SetDone
from core.store import duties, facts
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, Room


@pytest.fixture
def room() -> Room:
    room = Room()
    room.client(RUTA, "Ruta")
    return room


def heard(room: Room, number: int) -> list[str]:
    return [message.text for message in room.messages(number)]


def log_of(room: Room, number: int) -> list[tuple[str, str]]:
    return [(one.action, one.note) for one in facts.current(room.store, CoachDid, room.person(number).id)]


def numb(room: Room, number: int = RUTA) -> None:
    """An alert is open."""
    room.types(number, "my foot is numb")
    room.taps(number, "Better")


# --- menus ---
def test_the_clients_menu_can_be_typed(room: Room) -> None:
    room.types(RUTA, "my plan")
    assert "Goblet squat" in room.says(RUTA)
    room.types(RUTA, "Start a session.")
    assert "Anything new since" in room.says(RUTA)


def test_the_coachs_menu_can_be_typed(room: Room) -> None:
    room.types(COACH, "my clients")
    assert "Ruta" in room.says(COACH)
    room.types(COACH, "invite a client")
    assert "name" in room.says(COACH).lower()


@pytest.mark.parametrize("typed", ["I am alone", "i'm alone"])
def test_being_alone_can_be_typed_while_the_plan_is_asked(typed: str) -> None:
    room = Room((COACH,))
    client = room.client(RUTA, "Ruta", plan=None)
    room.types(COACH, "Ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "New plan")
    room.types(COACH, typed)
    assert any("alerts reach you only" in text for text in heard(room, COACH))
    assert room.stage.engine.has_backup(room.person(RUTA))
    assert client


def test_start_again_under_the_summary_starts_the_plan_again(room: Room) -> None:
    room.types(COACH, "Ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "New plan")
    for said in ("travel", "none", "start again"):
        room.types(COACH, said)
    assert "Which template?" in room.says(COACH)


def test_a_label_under_the_newest_message_can_be_typed(room: Room) -> None:
    room.types(COACH, "Ruta")
    room.types(COACH, "more")
    room.types(COACH, "log")
    assert "What was done about Ruta" in room.says(COACH)


def test_a_name_typed_for_a_question_is_no_tap_on_an_old_list(room: Room) -> None:
    room.types(COACH, "clients")
    room.types(COACH, "invite")
    room.types(COACH, "Ruta")
    assert any("works once" in text for text in heard(room, COACH)[-2:])


# --- alerts ---
def test_the_one_open_alert_is_taken_and_closed_in_words(room: Room) -> None:
    numb(room)
    room.types(COACH, "I am on it")
    assert any("is on it" in text for text in heard(room, RUTA)[-2:])
    room.types(COACH, "clear to train")
    assert duties.open_alerts(room.store, room.person(RUTA).id) == []


def test_hold_in_words_holds(room: Room) -> None:
    numb(room)
    room.types(COACH, "hold")
    room.types(RUTA, "start")
    assert "on hold" in room.says(RUTA)


def test_with_two_alerts_it_is_asked_which(room: Room) -> None:
    room.client(MILO, "Milo")
    numb(room)
    numb(room, MILO)
    room.types(COACH, "clear to train")
    assert [label.partition(":")[0] for label in room.labels(COACH)] == ["Ruta", "Milo"]
    room.taps(COACH, room.labels(COACH)[1])
    assert duties.open_alerts(room.store, room.person(MILO).id) == []
    assert duties.open_alerts(room.store, room.person(RUTA).id) != []


def test_without_an_alert_the_words_get_an_answer(room: Room) -> None:
    room.types(COACH, "clear to train")
    assert room.says(COACH) == "No alert is open."


def test_the_second_contact_may_type_it_too_and_a_third_coach_may_not(room: Room) -> None:
    numb(room)
    room.types(1003, "i am on it")
    assert room.says(1003) == "No alert is open."
    room.types(SECOND, "i am on it")
    assert any("is on it" in text for text in heard(room, RUTA)[-2:])


def test_a_note_with_the_call_is_kept(room: Room) -> None:
    numb(room)
    room.types(COACH, "call noted: she is fine, foot woke up after a minute")
    assert ("call_note", "she is fine, foot woke up after a minute") in log_of(room, RUTA)


def test_a_line_after_the_call_is_kept_too(room: Room) -> None:
    numb(room)
    room.taps(COACH, "Call noted")
    assert "What came of the call?" in room.says(COACH)
    room.types(COACH, "all good, slept on it")
    assert ("call_note", "all good, slept on it") in log_of(room, RUTA)
    room.types(COACH, "and the next line")
    assert ("call_note", "and the next line") not in log_of(room, RUTA)


def test_a_line_long_after_the_call_is_no_note(room: Room) -> None:
    numb(room)
    room.taps(COACH, "Call noted")
    room.later(minutes=16)
    room.types(COACH, "all good, slept on it")
    assert log_of(room, RUTA)[-1][0] == "alert_call"


# --- words to a client ---
@pytest.mark.parametrize("typed", ["to Ruta well done", "to Ruta: well done", "To ruta, well done"])
def test_words_to_a_client_need_no_colon(room: Room, typed: str) -> None:
    room.types(COACH, typed)
    assert any(text.endswith("well done") for text in heard(room, RUTA))


@pytest.mark.parametrize("typed", ["to Nora well done", "to Nora: well done", "to Nora"])
def test_words_that_cannot_be_sent_are_told_so(room: Room, typed: str) -> None:
    room.types(COACH, typed)
    assert room.says(COACH).startswith("Not sent:")


def test_an_answer_that_begins_with_to_goes_to_its_question(room: Room) -> None:
    room.types(COACH, "Ruta")
    room.taps(COACH, "Message")
    room.types(COACH, "to be honest, that was great")
    assert any("to be honest" in text for text in heard(room, RUTA))


# --- in the middle of a session ---
@pytest.mark.parametrize("typed", ["/start", "start", "Start a session"])
def test_start_in_a_session_says_where_we_were_and_asks_again(room: Room, typed: str) -> None:
    room.in_a_set(RUTA)
    room.types(RUTA, typed)
    assert any("your bands may be on" in text for text in heard(room, RUTA)[-2:])
    assert "Set 1 of" in room.says(RUTA)


def test_start_during_a_rest_is_never_silent(room: Room) -> None:
    room.in_a_set(RUTA)
    room.types(RUTA, "31")
    before = len(heard(room, RUTA))
    room.types(RUTA, "/start")
    assert any("your bands may be on" in text for text in heard(room, RUTA)[before:])


def test_a_restart_says_so_asks_again_and_keeps_what_was_done(room: Room) -> None:
    room.in_a_set(RUTA)
    room.stage.engine.resume()
    room.settle()
    assert any("I was away for a moment. If your bands are on" in text for text in heard(room, RUTA)[-2:])
    assert "Set 1 of" in room.says(RUTA)
    room.types(RUTA, "31")
    assert [one.reps for one in facts.current(room.store, SetDone, room.person(RUTA).id)] == [31]


def test_a_restart_does_not_put_off_the_question_to_a_quiet_set(room: Room) -> None:
    room.in_a_set(RUTA)
    asked = "All right? Bands off if not."
    while not any(asked in text for text in heard(room, RUTA)):
        room.later(seconds=20)
    after = room.now
    other = Room()
    other.client(RUTA, "Ruta")
    other.in_a_set(RUTA)
    other.later(seconds=60)
    other.stage.engine.resume()
    while not any(asked in text for text in heard(other, RUTA)):
        other.later(seconds=20)
    assert other.now == after


def test_a_restart_says_nothing_to_who_is_in_no_session(room: Room) -> None:
    room.types(RUTA, "menu")
    before = len(heard(room, RUTA))
    room.stage.engine.resume()
    room.settle()
    assert len(heard(room, RUTA)) == before


def test_a_coach_whose_words_nobody_has_reads_so_and_how_to_keep_them(room: Room) -> None:
    numb(room)
    room.types(COACH, "on it")
    room.types(COACH, "called her, the taxi to the clinic waits outside")
    assert heard(room, COACH)[-1] == COACH_WENT_NOWHERE
    room.types(COACH, "call noted: she took a taxi to the clinic")
    assert ("call_note", "she took a taxi to the clinic") in log_of(room, RUTA)
    room.types(COACH, "hm")
    assert heard(room, COACH)[-1] == "What would you like?"
