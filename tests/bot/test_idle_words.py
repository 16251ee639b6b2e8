"""What is typed while nothing, or another thing, is asked: offered to the coach, thanked, greeted, or shown."""

import pytest

from conversations.words import engine as words
from core.store import people
from tests.practice import CLIENT, COACH, Practice


def test_an_idle_line_that_fits_nothing_is_offered_to_the_coach_and_goes_as_it_was_typed(
    practice: Practice,
) -> None:
    practice.types(CLIENT, "I went to the market with my niece")
    assert practice.newest(CLIENT).text == "Shall I send that to Coach?"
    practice.taps(CLIENT, "Send it")
    assert practice.newest(COACH).text == "Ruta: I went to the market with my niece"
    assert practice.newest(CLIENT).text == "Sent to Coach."


@pytest.mark.parametrize("yes", ["yes", "ok", "yes please", "send it"])
def test_a_typed_yes_sends_the_line_once(practice: Practice, yes: str) -> None:
    practice.types(CLIENT, "my niece moved here")
    practice.types(CLIENT, yes)
    practice.types(CLIENT, yes)
    assert practice.heard(COACH).count("Ruta: my niece moved here") == 1


def test_what_is_typed_instead_of_a_yes_is_read_as_ever(practice: Practice) -> None:
    practice.types(CLIENT, "my niece moved here")
    practice.types(CLIENT, "my plan")
    assert practice.newest(CLIENT).text.startswith("Your plan")
    practice.types(CLIENT, "yes")
    assert "Ruta: my niece moved here" not in practice.heard(COACH)


def test_words_that_deny_a_sign_are_offered_too(practice: Practice) -> None:
    practice.types(CLIENT, "no numbness today at all")
    assert practice.newest(CLIENT).text == "Shall I send that to Coach?"


@pytest.mark.parametrize(
    "thanks",
    ["thank you dear", "Thanks so much coach!", "cheers mate", "vielen dank", "ok thank you my dear 🙏"],
)
def test_thanks_are_thanks_also_while_a_question_is_open(practice: Practice, thanks: str) -> None:
    practice.types(CLIENT, "settings")
    asked = len(practice.heard(CLIENT))
    practice.types(CLIENT, thanks)
    assert practice.heard(CLIENT)[asked:] == [words.NO_THANKS_NEEDED]


@pytest.mark.parametrize("more", ["thanks but my knee hurts", "thank you, 31", "no thanks"])
def test_thanks_with_something_to_read_are_read(practice: Practice, more: str) -> None:
    practice.types(CLIENT, "settings")
    practice.types(CLIENT, more)
    assert practice.newest(CLIENT).text != words.NO_THANKS_NEEDED


@pytest.mark.parametrize(
    ("said", "hello"),
    [
        ("good morning", "Good morning. "),
        ("Good evening coach", "Good evening. "),
        ("hello, what a lovely day", "Hello. "),
        ("hi coach, how are you today?", "Hello. "),
        ("😂😂", ""),
        ("lol", ""),
        ("bye", "Bye. "),
        ("how are you?", "Hello. "),
        ("And how are you today coach", "Hello. "),
    ],
)
def test_a_greeting_is_greeted_and_does_not_repeat_the_open_question(
    practice: Practice, said: str, hello: str
) -> None:
    practice.types(CLIENT, "settings")
    asked = len(practice.heard(CLIENT))
    practice.types(CLIENT, said)
    assert practice.heard(CLIENT)[asked:] == [words.GREETED.format(hello=hello)]


def test_with_bands_on_a_greeting_is_answered_that_the_question_does_not_wait(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "Good morning!")
    assert practice.newest(CLIENT).text == words.GREETED_BANDED.format(hello="Good morning. ")
    practice.types(CLIENT, "31")
    practice.types(CLIENT, "lol")
    assert practice.newest(CLIENT).text == words.GREETED_RESTING.format(hello="")


@pytest.mark.parametrize("asked", ["when is my next session?", "When do I train next", "next session"])
def test_a_client_who_asks_when_reads_the_plan_with_its_next_day(practice: Practice, asked: str) -> None:
    practice.types(CLIENT, asked)
    assert practice.newest(CLIENT).text.startswith("Your plan")


def test_a_coach_who_asks_for_alerts_gets_them_with_their_buttons(practice: Practice) -> None:
    practice.types(COACH, "alerts")
    assert practice.newest(COACH).text == "No alert is open."
    practice.types(CLIENT, "my foot is numb")
    practice.types(COACH, "alerts?")
    assert practice.newest(COACH).text.startswith("Ruta: tingling or numb")
    practice.types(CLIENT, "my chest hurts")
    practice.types(COACH, "Alerts")
    practice.taps(COACH, "Ruta: emergency words")
    assert practice.newest(COACH).text.startswith("Ruta: emergency words")
    assert "I am on it" in [label for row in practice.newest(COACH).buttons for label, _ in row]


@pytest.mark.parametrize("asked", ["status", "who needs me?", "Who needs me first"])
def test_a_coach_who_asks_who_needs_them_gets_the_list(practice: Practice, asked: str) -> None:
    practice.types(COACH, asked)
    assert practice.newest(COACH).text.startswith("1 client")


def test_the_offered_words_go_with_the_erasure(practice: Practice) -> None:
    practice.types(CLIENT, "my secret niece moved here")
    for said in ("delete me", "yes", "delete"):
        practice.types(CLIENT, said)
    practice.later(minutes=2)
    assert people.by_chat(practice.stage.engine.store, CLIENT) is None
    assert practice.stage.engine.store.rows("SELECT 1 FROM button WHERE value LIKE '%secret niece%'") == []


def test_the_button_sends_once_however_often_it_is_tapped(practice: Practice) -> None:
    practice.types(CLIENT, "my niece moved here")
    practice.taps(CLIENT, "Send it")
    practice.taps(CLIENT, "Send it")
    assert practice.heard(COACH).count("Ruta: my niece moved here") == 1
    assert practice.newest(CLIENT).text == words.SENT_ALREADY


def test_a_word_that_may_be_an_answer_is_no_greeting(practice: Practice) -> None:
    practice.types(CLIENT, "bands")
    practice.types(CLIENT, "A")
    practice.types(CLIENT, "good")
    assert not any("question above" in text for text in practice.heard(CLIENT))


@pytest.mark.parametrize(
    ("said", "place"),
    [
        ("I am in Narnia", "Narnia"),
        ("I'm in Bad Vilbel until friday", "Bad Vilbel"),
        ("We are in Narnia.", "Narnia"),
    ],
)
def test_a_place_of_unknown_time_is_asked_about_and_may_go_to_the_coach(
    practice: Practice, said: str, place: str
) -> None:
    practice.types(CLIENT, said)
    assert practice.newest(CLIENT).text.startswith(f"I don't know what time it is in {place}.")
    practice.taps(CLIENT, "Send it")
    assert practice.newest(COACH).text == f"Ruta: {said}"


@pytest.mark.parametrize("said", ["I am in bed", "I am in the garden today", "I'm in good spirits"])
def test_not_everything_one_is_in_is_a_place(practice: Practice, said: str) -> None:
    practice.types(CLIENT, said)
    assert not any("what time it is" in text for text in practice.heard(CLIENT))


def test_a_name_that_several_towns_share_is_asked_back(practice: Practice) -> None:
    practice.types(CLIENT, "I am in Springfield")
    newest = practice.newest(CLIENT)
    assert [label for row in newest.buttons for label, _ in row][:3] == ["1", "2", "3"]
    assert "Chicago time" in newest.text


@pytest.mark.parametrize("typed", ["ok, I'm ready, let's start", "start session", "can we start now?"])
def test_whoever_says_that_they_are_ready_starts(practice: Practice, typed: str) -> None:
    practice.types(CLIENT, typed)
    assert practice.newest(CLIENT).text.startswith("Anything new")


@pytest.mark.parametrize("typed", ["I'm not ready to start this", "I want to start a new medicine diary"])
def test_a_line_about_starting_that_says_more_starts_nothing(practice: Practice, typed: str) -> None:
    practice.types(CLIENT, typed)
    assert not practice.newest(CLIENT).text.startswith("Anything new since")
