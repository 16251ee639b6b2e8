"""A coach or second contact who blocked the bot, found out by the alert itself: it goes to whoever is next at once."""

import pytest

from conversations.protocol import Say
from core.store import people
from core.store.people import Role
from tests.practice import CLIENT, COACH, SECOND, START, Practice

SOON = {"seconds": 10}  # not the five minutes of a coach who only does not answer


@pytest.fixture
def training(practice: Practice) -> Practice:
    for number in (COACH, SECOND):
        practice.types(number, "hello")
    practice.in_a_set()
    return practice


def test_the_second_contact_has_it_at_once(training: Practice) -> None:
    training.stage.phones[COACH].blocks()
    training.types(CLIENT, "chest pain")
    training.later(**SOON)
    assert "chest pain" in training.newest(SECOND).text
    assert "not answered yet" not in training.newest(SECOND).text
    assert not any("could not be reached" in text for text in training.heard(CLIENT))


def test_with_neither_the_client_hears_at_once_that_nobody_could_be_reached(training: Practice) -> None:
    for number in (COACH, SECOND):
        training.stage.phones[number].blocks()
    training.types(CLIENT, "chest pain")
    training.later(**SOON)
    assert sum("could not be reached" in text for text in training.heard(CLIENT)) == 1


def never_wrote(practice: Practice, number: int) -> None:
    """Such as a number that is mistyped in the settings: the server refuses it with other words than a block."""
    del practice.stage.api._exchange.chats[number]


def test_a_coach_whom_the_server_does_not_know_is_passed_over_at_once(training: Practice) -> None:
    never_wrote(training, COACH)
    training.types(CLIENT, "chest pain")
    training.later(**SOON)
    assert "chest pain" in training.newest(SECOND).text


def test_with_neither_known_to_the_server_the_client_hears_it_at_once_too(training: Practice) -> None:
    training.stage.phones[COACH].blocks()
    never_wrote(training, SECOND)
    training.types(CLIENT, "chest pain")
    training.later(**SOON)
    assert sum("could not be reached" in text for text in training.heard(CLIENT)) == 1


def test_it_goes_on_as_usual_afterwards(training: Practice) -> None:
    training.stage.phones[COACH].blocks()
    training.types(CLIENT, "chest pain")
    training.taps(CLIENT, "Bands are off")
    training.later(minutes=4)
    assert sum("chest pain" in text for text in training.heard(SECOND)) == 1
    training.later(minutes=2)
    assert sum("chest pain" in text for text in training.heard(SECOND)) == 2
    training.taps(SECOND, "I am on it")
    training.later(hours=2)
    assert sum("emergency words" in text for text in training.heard(SECOND)) == 3


def test_an_alert_that_somebody_has_taken_is_not_sent_anew(training: Practice) -> None:
    training.types(CLIENT, "chest pain")
    training.taps(COACH, "I am on it")
    training.stage.phones[COACH].blocks()
    training.types(CLIENT, "coach, where are you?")
    training.later(**SOON)
    assert not any("chest pain" in text for text in training.heard(SECOND))


def test_an_alert_of_somebody_else_is_not_sent_anew(training: Practice) -> None:
    training.stage.add(2009, "Milo", lambda message, now: None)
    store = training.stage.engine.store
    second = people.by_chat(store, SECOND)
    assert second is not None
    people.add(store, 2009, "Milo", Role.CLIENT, "Europe/Lisbon", START, second.id)
    training.types(2009, "chest pain")
    heard = sum("chest pain" in text for text in training.heard(SECOND))
    training.stage.phones[COACH].blocks()
    training.types(CLIENT, "coach, where are you?")
    training.later(**SOON)
    assert sum("chest pain" in text for text in training.heard(SECOND)) == heard


def test_the_second_contact_hears_who_blocked_the_bot_when_the_coach_did_too(practice: Practice) -> None:
    for number in (COACH, SECOND, CLIENT):
        practice.types(number, "hello")
    practice.stage.phones[COACH].blocks()
    practice.types(CLIENT, "tell my coach I will be late")
    practice.stage.phones[CLIENT].blocks()
    client = people.by_chat(practice.stage.engine.store, CLIENT)
    assert client is not None
    practice.stage.engine.say(client, Say("a reminder"), practice.stage.clock.now())
    practice.settle()
    assert "Ruta can't be reached" in practice.heard(SECOND)[-1]


def test_a_stand_in_hears_who_blocked_the_bot(training: Practice) -> None:
    store = training.stage.engine.store
    for said in ("stand-in", "Second", "two weeks", "yes"):
        training.types(COACH, said)
    assert people.stand_in_of(store, 1, training.stage.clock.now()) is not None, training.newest(COACH).text
    training.stage.phones[CLIENT].blocks()
    training.later(minutes=12)
    assert any("can't be reached" in text for text in training.heard(SECOND))
