"""An invitation's code: long, hashed, good once within 72 hours; the coach sees who joined."""

import re
from datetime import timedelta

import pytest

from bot.engine.limits import STRANGER as STRANGER_RATE
from core.store import people
from tests.bot.arriving import NUMBERS, comes, invitation, letters, message
from tests.practice import CLIENT, COACH, OTHER, Practice


def test_of_a_hundred_who_send_one_code_at_once_exactly_one_joins(practice: Practice) -> None:
    code = invitation(practice)
    numbers = range(7000, 7100)
    practice.stage.engine.receive([(next(NUMBERS), {"message": message(number, code)}) for number in numbers])
    practice.settle()
    store = practice.stage.engine.store
    [joined] = store.rows("SELECT chat FROM person WHERE name = 'Milo'")
    assert joined["chat"] in numbers
    refused = [
        number for number in numbers if any("doesn't work" in text for text in letters(practice, number))
    ]
    assert len(refused) == 99
    assert sum("Milo has joined" in text for text in practice.heard(COACH)) == 1


def test_the_coach_sees_who_joined(practice: Practice) -> None:
    sender = {"id": OTHER, "is_bot": False, "first_name": "M.\nTwo lines <b>"}
    comes(practice, message=message(OTHER, f"/start {invitation(practice)}", **{"from": sender}))
    assert f"called M. Two lines <b>, number {OTHER}." in practice.heard(COACH)[-1]


def test_a_code_stands_nowhere_in_plain_words_once_the_coach_has_it(practice: Practice) -> None:
    practice.types(COACH, "invite")
    practice.types(COACH, "Milo")
    code = re.search(r"\b[A-Z2-7]{26}\b", practice.heard(COACH)[-1])
    assert code is not None
    store = practice.stage.engine.store
    tables = [row["name"] for row in store.rows("SELECT name FROM sqlite_schema WHERE type = 'table'")]
    kept = repr([tuple(row) for table in tables for row in store.rows(f"SELECT * FROM {table}")])
    assert "Milo" in kept
    assert code[0] not in kept
    practice.types(OTHER, code[0].lower())
    assert people.by_chat(store, OTHER) is not None


def test_an_invitation_read_by_the_client_says_with_whom_to_open_the_chat(practice: Practice) -> None:
    practice.types(COACH, "invite")
    practice.types(COACH, "Milo")
    told = practice.heard(COACH)[-1]
    assert "chat with @" in told or "chat with this bot" in told
    assert "with me" not in told


def test_a_code_with_a_slip_is_asked_to_be_looked_at_again(practice: Practice) -> None:
    code = invitation(practice)
    practice.types(OTHER, ("A" if code[0] != "A" else "B") + code[1:])
    assert "every letter right" in practice.newest(OTHER).text
    practice.types(OTHER, code)
    assert people.by_chat(practice.stage.engine.store, OTHER) is not None


def test_a_code_is_128_random_bits_or_more(practice: Practice, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[int] = []
    monkeypatch.setattr("bot.engine.acts.secrets.token_bytes", lambda size: asked.append(size) or bytes(size))
    practice.types(COACH, "invite")
    practice.types(COACH, "Milo")
    assert asked[0] * 8 >= 128
    assert 26 * 5 >= 128  # a letter of base32 holds 5 bits, RFC 4648
    assert f"type {'A' * 26}." in practice.heard(COACH)[-1]


@pytest.mark.parametrize(("hours", "joins"), [(71.99, True), (72, False)])
def test_a_code_is_good_for_72_hours(practice: Practice, hours: float, joins: bool) -> None:
    code = invitation(practice)
    practice.stage.clock.skip_to(practice.stage.clock.now() + timedelta(hours=hours))
    practice.types(OTHER, code)
    assert (people.by_chat(practice.stage.engine.store, OTHER) is not None) is joins


def test_a_stranger_cannot_try_codes_for_long(practice: Practice) -> None:
    for number in range(30):
        practice.types(OTHER, f"{'A' * 24}{chr(65 + number % 26)}B")
    assert len(practice.heard(OTHER)) == STRANGER_RATE.burst
    practice.later(seconds=10)
    code = invitation(practice)
    practice.types(OTHER, code)
    assert people.by_chat(practice.stage.engine.store, OTHER) is not None


@pytest.mark.parametrize("form", ["{}", "/start {}", "https://t.me/cuffline_play_bot?start={}"])
def test_whoever_is_here_already_is_told_so_and_the_code_stays_good(practice: Practice, form: str) -> None:
    """Another coach's invitation, or a coach who tries out their own one."""
    typed = form.format(invitation(practice))
    practice.types(CLIENT, typed)
    assert "You're here already" in practice.heard(CLIENT)[-1]
    practice.types(COACH, typed)
    assert "still unused" in practice.heard(COACH)[-1]
    practice.types(OTHER, typed)
    assert any("has joined" in text for text in practice.heard(COACH))


def test_words_that_are_as_long_as_a_code_are_words(practice: Practice) -> None:
    practice.types(CLIENT, "abcdefghijklmnopqrstuvwxyz")
    assert "already" not in practice.heard(CLIENT)[-1]
