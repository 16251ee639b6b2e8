"""Copies say nothing of where they came from, forwards name who wrote first, and captions have their limit."""

import asyncio
from datetime import UTC, datetime
from typing import Any

import pytest

from bot.local.api import LocalApi

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DANA, COACH, SECOND = 77, 78, 79
BUTTONS = {"inline_keyboard": [[{"text": "Yes", "callback_data": "yes"}]]}


def new_api() -> LocalApi:
    api = LocalApi(lambda: MORNING)
    for number, name in ((DANA, "Dana"), (COACH, "Coach"), (SECOND, "Second")):
        api.add_phone(number, name)
    return api


def call(api: LocalApi, method: str, **params: Any) -> Any:
    return asyncio.run(api.call(method, params, {}))


def test_a_forward_of_a_forward_still_names_who_wrote_it_first() -> None:
    api = new_api()
    written = api.phones[DANA].types("My knee clicks.")
    first = call(api, "forwardMessage", chat_id=COACH, from_chat_id=DANA, message_id=written)["result"]
    again = call(api, "forwardMessage", chat_id=SECOND, from_chat_id=COACH, message_id=first["message_id"])[
        "result"
    ]
    assert again["forward_origin"]["sender_user"]["first_name"] == "Dana"
    assert again["text"] == "My knee clicks."


def test_what_the_bot_wrote_is_passed_on_without_its_buttons() -> None:
    api = new_api()
    asked = call(api, "sendMessage", chat_id=DANA, text="Ready?", reply_markup=BUTTONS)["result"][
        "message_id"
    ]
    forwarded = call(api, "forwardMessage", chat_id=COACH, from_chat_id=DANA, message_id=asked)["result"]
    assert forwarded["forward_origin"]["sender_user"]["is_bot"]
    call(api, "copyMessage", chat_id=COACH, from_chat_id=DANA, message_id=asked)
    assert [(m.text, m.buttons, m.origin is None) for m in api.phones[COACH].history] == [
        ("Ready?", (), False),
        ("Ready?", (), True),
    ]


@pytest.mark.parametrize("method", ["forwardMessage", "copyMessage"])
def test_what_is_not_there_cannot_be_passed_on(method: str) -> None:
    answer = call(new_api(), method, chat_id=COACH, from_chat_id=DANA, message_id=5)
    assert answer["error_code"] == 400


@pytest.mark.parametrize(("length", "fits"), [(1024, True), (1025, False)])
def test_a_caption_holds_1024_units(length: int, fits: bool) -> None:
    params = {"chat_id": DANA, "caption": "a" * length}
    assert asyncio.run(new_api().call("sendPhoto", params, {"photo": b"\x89PNG"}))["ok"] is fits
