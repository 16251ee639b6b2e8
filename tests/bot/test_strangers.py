"""Whoever is not known, not a person, too fast, or speaks with somebody else's words."""

import re
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from itertools import count
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.engine.limits import CLIENT as CLIENT_RATE
from bot.engine.limits import REMEMBERED, Limits, Rate
from bot.engine.limits import STRANGER as STRANGER_RATE
from conversations.words import engine as words
from core.store import duties, people
from core.store.people import Role
from tests.practice import CLIENT, COACH, OTHER, START, Practice
from tests.strangers.naughty import STRINGS

NUMBERS = count(10**12)
GROUP = -100123


def comes(practice: Practice, **body: Any) -> None:
    """An update as the server gives it."""
    practice.stage.engine.receive([(next(NUMBERS), body)])
    practice.settle()


def message(sender: int, text: str, **more: Any) -> dict[str, Any]:
    at = int(START.timestamp())
    user = {"id": sender, "is_bot": False, "first_name": "X"}
    chat = {"id": sender, "type": "private"}
    return {"message_id": next(NUMBERS) % 10**9, "date": at, "chat": chat, "from": user, "text": text} | more


def letters(practice: Practice, chat: int) -> list[str]:
    rows = practice.stage.engine.store.rows(
        "SELECT json_extract(body, '$.text') AS t FROM outbox WHERE chat = ?", [chat]
    )
    return [row["t"] for row in rows]


# --- groups, channels, bots, inline ------------------------------------------------------------------------
@pytest.mark.parametrize("kind", ["group", "supergroup", "channel"])
def test_a_group_is_refused_politely_once_and_never_again(practice: Practice, kind: str) -> None:
    for day in range(3):
        comes(practice, message=message(CLIENT, "31", chat={"id": GROUP, "type": kind}))
        comes(practice, edited_message=message(CLIENT, "stop", chat={"id": GROUP, "type": kind}))
        practice.later(days=day)
    assert letters(practice, GROUP) == ["I only talk in a private chat."]
    assert not any("Bands off" in text for text in practice.heard(CLIENT))


def test_another_bot_is_refused_once(practice: Practice) -> None:
    bot = {"id": 5005, "is_bot": True, "first_name": "Bot"}
    for _ in range(3):
        comes(practice, message=message(5005, "hello", **{"from": bot}))
    assert letters(practice, 5005) == ["I only talk in a private chat."]


def test_a_post_in_a_channel_is_refused_once_and_its_edits_are_left_alone(practice: Practice) -> None:
    post = {"message_id": 1, "date": 1, "chat": {"id": GROUP, "type": "channel"}, "text": "31"}
    comes(practice, edited_channel_post=post)
    assert letters(practice, GROUP) == []
    for _ in range(3):
        comes(practice, channel_post=post)
    assert letters(practice, GROUP) == ["I only talk in a private chat."]


@pytest.mark.parametrize("number", [CLIENT, OTHER])
def test_words_behind_the_bots_name_elsewhere_get_no_result_but_a_way_in(
    practice: Practice, number: int
) -> None:
    phone = practice.stage.phones[number]
    said = len(practice.messages(number))
    phone.types_elsewhere("stop, my leg is numb")
    practice.settle()
    assert phone.notices == ["I only talk in a private chat: open it"]
    assert len(practice.messages(number)) == said
    practice.types(number, "/start private")  # what the button sends
    assert len(practice.messages(number)) == said + 1


def test_a_query_for_every_letter_typed_is_answered_a_few_times_only(practice: Practice) -> None:
    for _ in range(40):
        practice.stage.phones[OTHER].types_elsewhere("hello")
    practice.settle()
    assert len(practice.stage.phones[OTHER].notices) == 5


def test_an_answer_that_comes_too_late_is_let_go(practice: Practice) -> None:
    query = {
        "id": "gone",
        "from": {"id": OTHER, "is_bot": False, "first_name": "X"},
        "query": "",
        "offset": "",
    }
    comes(practice, inline_query=query)
    row = practice.stage.engine.store.row("SELECT dropped FROM outbox WHERE kind = 'inline'")
    assert row is not None
    assert row["dropped"] == "refused"


PERSON = {"id": CLIENT, "is_bot": False, "first_name": "X"}
FROM_ELSEWHERE = {"message_id": 1, "date": 1, "chat": {"id": GROUP, "type": "group"}}
IN_BUSINESS = {"business_connection_id": "b", **FROM_ELSEWHERE, "from": PERSON, "text": "stop"}


@pytest.mark.parametrize(
    "update",
    [
        {"inline_query": {"id": "1", "from": {**PERSON, "is_bot": True}, "query": "stop", "offset": ""}},
        {"chosen_inline_result": {"result_id": "1", "from": PERSON, "query": "stop"}},
        {"edited_channel_post": {**FROM_ELSEWHERE, "text": "31"}},
        {"my_chat_member": {"chat": {"id": GROUP, "type": "group"}, "date": 1}},
        {"chat_member": {"chat": {"id": GROUP, "type": "group"}, "date": 1}},
        {"chat_join_request": {"chat": {"id": GROUP, "type": "group"}, "from": PERSON, "date": 1}},
        {"business_connection": {"id": "b", "user": PERSON, "date": 1}},
        {"business_message": IN_BUSINESS},
        {"edited_business_message": IN_BUSINESS},
        {"deleted_business_messages": {"business_connection_id": "b", "message_ids": [1]}},
        {"message_reaction": {**FROM_ELSEWHERE, "user": PERSON, "old_reaction": [], "new_reaction": []}},
        {"message_reaction_count": {**FROM_ELSEWHERE, "reactions": []}},
        {"poll": {"id": "1"}},
        {"poll_answer": {"poll_id": "1", "user": PERSON, "option_ids": [0]}},
        {"shipping_query": {"id": "1", "from": PERSON, "invoice_payload": "x"}},
        {"pre_checkout_query": {"id": "1", "from": PERSON, "currency": "EUR"}},
        {"chat_boost": {"chat": {"id": GROUP, "type": "channel"}}},
        {"something_of_next_year": {"from": PERSON, "text": "stop"}},
        {},
    ],
)
def test_what_was_never_asked_for_is_kept_and_left_alone(practice: Practice, update: dict[str, Any]) -> None:
    comes(practice, **update)
    store = practice.stage.engine.store
    assert store.rows("SELECT failed FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL") == []
    assert letters(practice, GROUP) == letters(practice, CLIENT) == []
    assert store.rows("SELECT id FROM outbox") == []
    assert letters(practice, GROUP) == letters(practice, CLIENT) == []


def test_a_button_pressed_in_a_group_does_nothing(practice: Practice) -> None:
    practice.in_a_set()
    before = practice.heard(CLIENT)
    row = practice.stage.engine.store.row("SELECT token FROM button WHERE value = 'done' LIMIT 1")
    token = "x" if row is None else row["token"]
    sender = {"id": CLIENT, "is_bot": False, "first_name": "X"}
    shown = {"message_id": 1, "chat": {"id": GROUP, "type": "group"}}
    comes(practice, callback_query={"id": "1", "from": sender, "message": shown, "data": token})
    assert practice.heard(CLIENT) == before


# --- somebody else's words -----------------------------------------------------------------------------------
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


# --- invitations ---------------------------------------------------------------------------------------------
def invitation(practice: Practice) -> str:
    store = practice.stage.engine.store
    coach = people.by_chat(store, COACH)
    assert coach is not None
    code = "ABCDEFGHIJKLMNOPQRSTUVWX23"
    people.invite(store, coach.id, "Milo", code, practice.stage.clock.now())
    return code


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


# --- too fast ------------------------------------------------------------------------------------------------
@pytest.fixture
def flooded(practice: Practice) -> Iterator[Practice]:
    """A client who has written as much as may be."""
    engine = practice.stage.engine
    burst = int(CLIENT_RATE.burst)
    engine.receive([(next(NUMBERS), {"message": message(CLIENT, f"hm {number}")}) for number in range(burst)])
    practice.settle()
    return practice


def test_a_flood_is_answered_once_and_then_not_at_all(flooded: Practice) -> None:
    before = len(flooded.heard(CLIENT))
    for _ in range(5):
        flooded.types(CLIENT, "hm")
    [said] = flooded.heard(CLIENT)[before:]
    assert "a lot at once" in said
    flooded.later(seconds=1)
    flooded.types(CLIENT, "plan")
    assert "plan" in flooded.newest(CLIENT).text


@pytest.mark.parametrize(
    "text", ["stop", "chest pain", "my foot is numb", "it hurts", "dizzy", "I can't feel my leg"]
)
def test_words_about_stopping_are_never_limited(flooded: Practice, text: str) -> None:
    for _ in range(3):
        flooded.types(CLIENT, "hm")
    flooded.types(CLIENT, text)
    assert "a lot at once" not in flooded.newest(CLIENT).text
    client = people.by_chat(flooded.stage.engine.store, CLIENT)
    assert client is not None
    assert duties.open_alerts(flooded.stage.engine.store, client.id) or "off" in flooded.newest(CLIENT).text


def test_nobody_with_bands_on_is_limited(practice: Practice) -> None:
    practice.in_a_set()
    for _ in range(int(CLIENT_RATE.burst) + 5):
        practice.stage.engine.limits.allow(CLIENT, CLIENT_RATE, practice.stage.clock.now())
    practice.types(CLIENT, "31")
    assert practice.sets() == {1: 31}


def test_what_waited_during_an_outage_is_no_flood(practice: Practice) -> None:
    def later(number: int) -> dict[str, Any]:
        return message(CLIENT, "hm") | {"date": int(START.timestamp()) + 10 * number}

    practice.stage.clock.skip_to(START + timedelta(hours=2))
    practice.stage.engine.receive([(next(NUMBERS), {"message": later(number)}) for number in range(300)])
    practice.settle()
    assert not any("a lot at once" in text for text in practice.heard(CLIENT))


@given(st.lists(st.floats(0, 5), max_size=80), st.floats(1, 5), st.floats(0.1, 2))
def test_no_more_gets_through_than_burst_and_rate_allow(
    gaps: list[float], burst: float, per_s: float
) -> None:
    limits, at, through = Limits(), START, 0
    for gap in gaps:
        at += timedelta(seconds=gap)
        through += limits.allow(1, Rate(burst, per_s), at)
    assert through <= burst + per_s * sum(gaps) + 0.001
    assert through >= min(len(gaps), int(burst))


def test_only_so_many_chats_are_remembered() -> None:
    limits = Limits()
    for chat in range(REMEMBERED + 100):
        limits.allow(chat, STRANGER_RATE, datetime(2026, 3, 2, tzinfo=UTC))
    assert len(limits.buckets) == REMEMBERED
    assert (0, STRANGER_RATE) not in limits.buckets


def test_who_joins_after_many_words_as_a_stranger_begins_afresh(practice: Practice) -> None:
    code = invitation(practice)
    for _ in range(int(STRANGER_RATE.burst) - 1):
        practice.types(OTHER, "hello?")
    practice.types(OTHER, code)
    for _ in range(20):
        practice.types(OTHER, "hm")
    assert not any("a lot at once" in text for text in practice.heard(OTHER))


# --- broken shapes -------------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    "part",
    [
        *({"chat": broken} for broken in (None, [], 7, "x", {"id": 10**30, "type": "private"})),
        {"from": [1]},
        {"photo": []},
        {"date": 10**30},
        {"edit_date": float("inf")},
        {"reply_to_message": "x"},
        {"text": {"a": 1}, "date": None},
    ],
)
def test_an_update_of_no_shape_that_we_know_takes_no_other_along(
    practice: Practice, part: dict[str, Any]
) -> None:
    odd, fine = message(CLIENT, "31") | part, message(CLIENT, "coach, are you there?")
    practice.stage.engine.receive([(next(NUMBERS), {"message": one}) for one in (odd, fine)])
    practice.settle()
    assert "are you there?" in practice.newest(COACH).text
    store = practice.stage.engine.store
    assert store.rows("SELECT 1 FROM inbox WHERE handled_at IS NULL") == []
    assert len(store.rows("SELECT 1 FROM inbox WHERE failed IS NOT NULL")) == 1
    assert any("could not deal with" in text for text in practice.heard(COACH))


# --- broken characters ----------------------------------------------------------------------------------------
def test_half_a_character_stops_nobody(practice: Practice) -> None:
    comes(practice, message=message(CLIENT, "coach \ud83d hello \x00"))
    assert "hello" in practice.heard(COACH)[-1]
    store = practice.stage.engine.store
    assert store.rows("SELECT failed FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL") == []
    assert [one.role for one in people.coaches(store)] == [Role.COACH, Role.COACH]


# --- strange strings ---------------------------------------------------------------------------------------------
def test_everybody_may_type_anything_and_nothing_fails(practice: Practice) -> None:
    practice.in_a_set()
    for place, text in enumerate(STRINGS[::9]):
        shown = text.strip()
        if shown:
            for number in (CLIENT, COACH, OTHER):
                practice.stage.phones[number].types(shown)
                if number == CLIENT:
                    practice.stage.phones[number].types(f"coach, {shown}")
        if place % 5 == 0:
            practice.later(minutes=2)
    practice.settle()
    store = practice.stage.engine.store
    assert store.rows("SELECT failed FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL") == []
    assert store.rows("SELECT dropped FROM outbox WHERE dropped IS NOT NULL") == []
