"""A test can ask for failures: this call, in this chat, so many times, before or after it took effect."""

import asyncio
from datetime import UTC, datetime
from typing import Any

import pytest

from bot.local.api import LocalApi
from bot.local.faults import Lost

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DANA, RUTA = 77, 78
TOKEN = "1:local"


def new_api() -> LocalApi:
    api = LocalApi(lambda: MORNING, TOKEN)
    for number, name in ((DANA, "Dana"), (RUTA, "Ruta")):
        api.add_phone(number, name)
    return api


def send(api: LocalApi, chat_id: int = DANA) -> dict[str, Any]:
    return asyncio.run(api.call("sendMessage", {"chat_id": chat_id, "text": "hi"}, {}))


def test_a_failure_can_be_kept_to_one_chat() -> None:
    api = new_api()
    api.fail_next("sendMessage", 1, 429, retry_after=3, chat_id=RUTA)
    assert send(api, DANA)["ok"]
    assert send(api, RUTA)["parameters"] == {"retry_after": 3}
    assert send(api, RUTA)["ok"]


def test_failures_planned_one_after_another_come_in_that_order() -> None:
    api = new_api()
    api.fail_next("sendMessage", 1, 502)
    api.fail_next("sendMessage", 1, 429, retry_after=1)
    assert [send(api).get("error_code") for _ in range(3)] == [502, 429, None]


@pytest.mark.parametrize(("done", "arrived"), [(False, []), (True, ["hi"])])
def test_a_lost_connection_leaves_no_answer_and_says_whether_it_took_effect(
    done: bool, arrived: list[str]
) -> None:
    api = new_api()
    api.lose_next("sendMessage", 1, done=done)
    with pytest.raises(Lost):
        send(api)
    assert [m.text for m in api.phones[DANA].history] == arrived


def test_a_refused_call_is_refused_before_its_answer_can_be_lost() -> None:
    api = new_api()
    api.lose_next("sendMessage", 1, done=True)
    assert send(api, 1234)["description"] == "Bad Request: chat not found"


def test_two_runs_start_their_numbers_in_different_places() -> None:
    starts = {send(new_api())["result"]["message_id"] for _ in range(8)}
    assert len(starts) > 1  # eight equal draws out of a thousand million do not happen
