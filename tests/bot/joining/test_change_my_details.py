"""A client moves, has a new number, or somebody types for them now: changed in the chat, seen where it matters."""

from collections.abc import Iterator

import pytest

from bot.engine import status
from tests.practice import CLIENT, COACH, Practice


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


def kept(practice: Practice, name: str) -> str:
    return status.detail(practice.stage.engine, practice.client, name, "-")


def changes(practice: Practice, what: str, *answers: str) -> None:
    practice.types(CLIENT, "card")
    practice.taps(CLIENT, "Change my details")
    practice.taps(CLIENT, what)
    for answer in answers:
        practice.types(CLIENT, answer)


def test_a_new_address_is_on_the_card_and_in_alerts(practice: Practice) -> None:
    changes(practice, "Where I train", "Rua Nova 3, Lisbon")
    assert practice.newest(CLIENT).text == "Noted. You train at: Rua Nova 3, Lisbon."
    practice.types(CLIENT, "card")
    assert "Trains at: Rua Nova 3, Lisbon" in practice.newest(CLIENT).text
    practice.types(CLIENT, "chest pain")
    assert any("Rua Nova 3" in text for text in practice.heard(COACH))


@pytest.mark.parametrize(
    ("what", "answers", "name", "value"),
    [
        ("Phone", ("+351 555 0101",), "phone", "+351 555 0101"),
        ("Phone", ("call me", "555 0101"), "phone", "555 0101"),
        ("Whom to ring", ("Tomas, 555 0101",), "emergency_contact", "Tomas, 555 0101"),
        ("Whom to ring", ("Tomas", "555 0101"), "emergency_contact", "Tomas 555 0101"),
        ("Whom to ring", ("Tomas", "skip"), "emergency_contact", "Tomas"),
        ("Emergency number", ("skip", "112"), "emergency_number", "112"),
        ("Who types", ("yes", "Tomas"), "helper", "Tomas"),
        ("Who types", ("no",), "helper", "-"),
    ],
)
def test_each_is_read_as_at_the_beginning(
    practice: Practice, what: str, answers: tuple[str, ...], name: str, value: str
) -> None:
    changes(practice, what, *answers)
    assert practice.newest(CLIENT).text.startswith("Noted. ")
    assert kept(practice, name) == value


def test_a_helper_is_named_when_the_next_session_begins(practice: Practice) -> None:
    changes(practice, "Who types", "Tomas types for me")
    practice.types(CLIENT, "start")
    assert any(
        "Tomas types for you; what you feel is what counts." in text for text in practice.heard(CLIENT)
    )


def test_all_is_right_changes_nothing(practice: Practice) -> None:
    practice.types(CLIENT, "my details")
    assert "Phone: not said." in practice.newest(CLIENT).text
    practice.taps(CLIENT, "All is right")
    assert practice.newest(CLIENT).text == "Good, all stays."


def test_in_a_set_the_card_offers_no_questions(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "card")
    assert practice.newest(CLIENT).buttons == ()
