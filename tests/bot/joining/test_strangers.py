"""Groups, channels, bots, inline: refused politely once; what was never asked for is left alone."""

from typing import Any

import pytest

from tests.bot.arriving import GROUP, comes, letters, message
from tests.practice import CLIENT, OTHER, Practice


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
