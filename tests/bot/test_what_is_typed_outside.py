"""Typed outside of sessions: lines for the coach, an open alert, thanks, pictures; and a coach in a hurry."""

import pytest

from conversations.words import engine as words
from conversations.words import trouble
from core.facts import BandsOff, Cleared
from core.store import duties, facts, people
from core.store.people import Role
from tests.practice import CLIENT, COACH, START, Practice


@pytest.fixture
def room() -> Practice:
    return Practice()


def labels(room: Practice, number: int) -> list[str]:
    """What is on the buttons of the newest message."""
    return [label for row in room.newest(number).buttons for label, _ in row]


def numb(room: Practice) -> None:
    """An alert that calls the coach now, and the questions about it are over."""
    room.types(CLIENT, "my foot is numb")
    room.taps(CLIENT, "Better")


# --- to the coach ---
@pytest.mark.parametrize(
    "line",
    ["Can I train in the pool?", "move my thursday please, if you can", "31", "yes", "plan B?", "thanks"],
)
def test_the_line_after_write_to_my_coach_goes_to_the_coach_word_for_word(room: Practice, line: str) -> None:
    room.types(CLIENT, "menu")
    room.taps(CLIENT, "Write to my coach")
    room.types(CLIENT, line)
    assert f"Ruta: {line}" in room.heard(COACH)
    assert "Sent to Coach." in room.heard(CLIENT)


def test_a_line_for_the_coach_is_not_taken_by_a_question_that_waits(room: Practice) -> None:
    room.types(CLIENT, "menu")
    room.types(CLIENT, "settings")
    room.taps(CLIENT, "Write to my coach")
    room.types(CLIENT, "see you in spring")
    assert "Ruta: see you in spring" in room.heard(COACH)
    assert room.newest(CLIENT).buttons, "the question that waited comes again"


@pytest.mark.parametrize("line", ["coach I am worried about thursday", "coach: something feels off"])
def test_a_worry_for_the_coach_is_passed_on_and_asked_about(room: Practice, line: str) -> None:
    room.types(CLIENT, line)
    assert any(text.endswith(line.split(" ", 1)[1]) for text in room.heard(COACH))
    assert room.newest(CLIENT).text == trouble.ASK_WRONG


def test_a_worry_typed_after_the_button_is_passed_on_and_asked_about(room: Practice) -> None:
    room.types(CLIENT, "menu")
    room.taps(CLIENT, "Write to my coach")
    room.types(CLIENT, "something feels off since monday")
    assert "Ruta: something feels off since monday" in room.heard(COACH)
    assert room.newest(CLIENT).text == trouble.ASK_WRONG


def test_cancel_sends_nothing(room: Practice) -> None:
    room.types(CLIENT, "menu")
    room.taps(CLIENT, "Write to my coach")
    room.types(CLIENT, "cancel")
    assert not any(text.startswith("Ruta: ") for text in room.heard(COACH))


# --- an open alert ---
@pytest.mark.parametrize("typed", ["menu", "hello", "start"])
def test_an_open_alert_comes_before_the_menu_and_offers_no_start(room: Practice, typed: str) -> None:
    numb(room)
    room.types(CLIENT, typed)
    newest = room.newest(CLIENT).text
    assert newest.startswith("Bands off now.")
    assert "Your coach was told on Mon 18:00" in newest
    assert labels(room, CLIENT) == ["Write to my coach"]


def test_who_took_the_alert_is_said(room: Practice) -> None:
    numb(room)
    room.types(COACH, "I am on it")
    room.types(CLIENT, "menu")
    assert "Coach is on it" in room.newest(CLIENT).text


def test_a_settled_alert_gives_the_menu_back(room: Practice) -> None:
    numb(room)
    room.types(COACH, "clear to train")
    room.types(CLIENT, "menu")
    assert "Start a session" in labels(room, CLIENT)


@pytest.mark.parametrize("number", ["112", "911", " 112!"])
def test_the_emergency_number_typed_in_an_alert_is_told_to_be_called(room: Practice, number: str) -> None:
    room.types(CLIENT, "185/112, and my head hurts badly")
    assert duties.open_alerts(room.stage.engine.store, room.client)
    room.types(CLIENT, number)
    assert "on the phone" in room.newest(CLIENT).text


# --- thanks, pictures ---
@pytest.mark.parametrize("typed", ["thanks", "Thank you!", "ok, thanks", "🙏"])
def test_thanks_are_welcome_and_no_answer(room: Practice, typed: str) -> None:
    room.types(CLIENT, "settings")
    room.types(CLIENT, typed)
    assert room.newest(CLIENT).text == words.NO_THANKS_NEEDED


@pytest.mark.parametrize("kind", ["photo", "sticker", "voice"])
def test_a_picture_or_a_voice_note_has_an_answer_of_its_own(room: Practice, kind: str) -> None:
    phone = room.stage.phones[CLIENT]
    phone.sends(kind)
    room.settle()
    assert room.newest(CLIENT).text == words.IDLE_MEDIA[kind]
    assert labels(room, CLIENT) == (["Stop"] if kind == "voice" else [])


# --- a coach in a hurry ---
def test_hold_ruta_passes_an_open_question_about_days(room: Practice) -> None:
    room.types(COACH, "ruta: move thursday to friday")
    room.types(COACH, "hold ruta")
    decided = facts.latest(room.stage.engine.store, Cleared, room.client)
    assert decided is not None
    assert decided.decision == "held"


def test_thanks_after_a_move_of_days_are_no_date(room: Practice) -> None:
    room.types(COACH, "ruta: move thursday to friday")
    room.types(COACH, "thanks")
    assert room.newest(COACH).text == words.NO_THANKS_NEEDED


@pytest.mark.parametrize(
    ("typed", "shown"), [("pause ruta", "Pause Ruta until when"), ("log Ruta", "What was done")]
)
def test_a_button_of_the_card_typed_with_a_name_is_tapped(room: Practice, typed: str, shown: str) -> None:
    room.types(COACH, typed)
    assert shown in room.newest(COACH).text


def test_hold_with_nobodys_name_is_no_command(room: Practice) -> None:
    room.types(COACH, "hold on")
    decided = facts.latest(room.stage.engine.store, Cleared, room.client)
    assert decided is not None
    assert decided.decision == "cleared"


@pytest.mark.parametrize(("hours", "asked"), [(47, True), (49, False)])
def test_words_that_fit_nothing_within_two_days_of_bands_are_asked_about(
    room: Practice, hours: int, asked: bool
) -> None:
    store = room.stage.engine.store
    with store.transaction():
        facts.put(store, room.client, BandsOff(START, "s1", "1.1", "done"), START)
    room.later(hours=hours)
    room.types(CLIENT, "the picture on the wall moves about")
    assert (trouble.ASK_WRONG in room.heard(CLIENT)) is asked


# --- from the coach ---
@pytest.mark.parametrize(
    ("line", "read"),
    [
        ("tell ruta well done", "well done"),
        ("Tell Ruta: keep it up", "keep it up"),
        ("please tell ruta that thursday is fine", "thursday is fine"),
        ("message ruta: see you at 7:30", "see you at 7:30"),
        ("to ruta come at 7:30", "come at 7:30"),
        ("to ru: well done", "well done"),
        ("let ruta know I am away", "I am away"),
        ("say well done to ruta", "well done"),
        ("to ruta: she is a fine coach, your niece", "she is a fine coach, your niece"),
    ],
)
def test_words_for_a_client_by_name_reach_them_as_they_should_read_them(
    room: Practice, line: str, read: str
) -> None:
    room.types(COACH, line)
    assert room.newest(CLIENT).text == f"From your coach: {read}"
    assert room.newest(COACH).text == "Sent to Ruta."


@pytest.mark.parametrize("line", ["tell ruta she did great", "ask ruta if she slept", "remind ruta to drink"])
def test_what_is_said_of_a_client_is_asked_for_as_they_should_read_it(room: Practice, line: str) -> None:
    room.types(COACH, line)
    assert room.newest(COACH).text.startswith("It goes out word for word, so write it as Ruta should read it")
    room.types(COACH, "Drink, please.")
    assert room.newest(CLIENT).text == "From your coach: Drink, please."


@pytest.mark.parametrize("line", ["tell nobody well done", "to mila: hi"])
def test_words_for_nobody_known_are_told_to_be_unsent(room: Practice, line: str) -> None:
    room.types(COACH, line)
    assert room.newest(COACH).text == words.NOT_SENT


def test_a_stop_told_through_the_bot_ends_the_session_at_once(room: Practice) -> None:
    room.in_a_set()
    room.types(COACH, "tell ruta to stop")
    assert any(text.startswith("Your coach ends this session. Bands off now") for text in room.heard(CLIENT))


def test_an_answer_that_begins_like_words_to_a_client_stays_an_answer(room: Practice) -> None:
    room.types(COACH, "pause ruta")
    asked = len(room.heard(COACH))
    room.types(COACH, "to 9 march")
    assert words.NOT_SENT not in room.heard(COACH)[asked:]


@pytest.mark.parametrize(
    ("line", "sent"),
    [("ruta well done", "well done"), ("good job ruta", "good job ruta"), ("Ruta: nice week", "nice week")],
)
def test_words_beside_a_clients_name_are_offered_and_go_out_once(
    room: Practice, line: str, sent: str
) -> None:
    room.types(COACH, line)
    assert "to Ruta" in room.newest(COACH).text
    assert f"From your coach: {sent}" not in room.heard(CLIENT)
    room.taps(COACH, "Send it")
    room.taps(COACH, "Send it")
    assert room.heard(CLIENT).count(f"From your coach: {sent}") == 1


def test_words_for_two_clients_go_to_none(room: Practice) -> None:
    store = room.stage.engine.store
    coach = people.by_chat(store, COACH)
    assert coach is not None
    with store.transaction():
        people.add(store, 5000, "Milo", Role.CLIENT, "UTC", START, coach.id)
    room.types(COACH, "tell ruta and milo well done")
    assert room.newest(COACH).text == words.ONE_AT_A_TIME
    assert room.heard(CLIENT) == []


@pytest.mark.parametrize("typed", ["log ruta", "Ruta log", "ruta: log"])
def test_an_act_and_a_name_are_understood_in_either_order(room: Practice, typed: str) -> None:
    room.types(COACH, typed)
    assert room.newest(COACH).text.startswith("What was done about Ruta")


@pytest.mark.parametrize(
    "asked", ["how is ruta", "How's Ruta doing?", "show me ruta", "what about ruta?", "tell me about ruta"]
)
def test_a_coach_who_asks_about_a_client_gets_the_card(room: Practice, asked: str) -> None:
    room.types(COACH, asked)
    assert room.newest(COACH).text.startswith("Ruta\nCleared: arms and legs.")


@pytest.mark.parametrize("typed", ["write ruta a message", "message ruta", "tell ruta"])
def test_a_message_without_words_is_asked_for(room: Practice, typed: str) -> None:
    room.types(COACH, typed)
    room.types(COACH, "well done")
    assert room.newest(CLIENT).text == "From your coach: well done"
