"""What is forwarded is somebody else's words, film or place."""

from typing import Any

import pytest

from conversations.words import engine as words
from tests.bot.arriving import comes, message
from tests.practice import CLIENT, COACH, START, Practice

ORIGIN = {"type": "hidden_user", "sender_user_name": "A friend", "date": 1}


def test_a_forwarded_count_is_not_the_clients_own(practice: Practice) -> None:
    practice.in_a_set()
    comes(practice, message=message(CLIENT, "31", forward_origin=ORIGIN))
    assert "forwarded" in practice.heard(CLIENT)[-1]
    assert practice.sets() == {}
    practice.types(CLIENT, "31")
    assert practice.sets() == {1: 31}


def test_forwarded_words_about_stopping_stop_all_the_same(practice: Practice) -> None:
    practice.in_a_set()
    comes(practice, message=message(CLIENT, "chest pain", forward_origin=ORIGIN))
    assert any("chest pain" in text for text in practice.heard(COACH))


@pytest.mark.parametrize("sign", [{"forward_origin": ORIGIN}, {"forward_date": 1}])
@pytest.mark.parametrize(
    "held",
    [
        {"location": {"latitude": 40.7, "longitude": -74.0}},
        {"video": {"file_id": "f"}},
        {"voice": {"file_id": "f"}},
        {"photo": [{"file_id": "f"}]},
        {"document": {"file_id": "f"}},
        {"contact": {"phone_number": "1", "first_name": "X"}},
    ],
)
def test_what_is_forwarded_is_nobodys_own_place_film_or_voice(
    practice: Practice, held: dict[str, Any], sign: dict[str, Any]
) -> None:
    told = practice.heard(COACH)
    forwarded = message(CLIENT, "", **held, **sign)
    del forwarded["text"]
    for _ in range(4):  # several chosen together come one by one
        comes(practice, message=forwarded)
    assert practice.heard(CLIENT) == [words.NOT_FORWARDED_MEDIA]
    assert practice.heard(COACH) == told
    practice.later(seconds=10)
    comes(practice, message=forwarded | {"date": int(START.timestamp()) + 10})
    assert practice.heard(CLIENT) == [words.NOT_FORWARDED_MEDIA] * 2


def test_a_sign_under_a_forwarded_picture_is_heard_all_the_same(practice: Practice) -> None:
    practice.in_a_set()
    picture = {"photo": [{"file_id": "f"}], "caption": "chest pain", "forward_origin": ORIGIN}
    comes(practice, message=message(CLIENT, "", **picture))
    assert any("chest pain" in text for text in practice.heard(COACH))
