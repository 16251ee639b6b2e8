"""The local Bot API keeps the promises of the real one: offsets, conflicts, limits, refusals."""

import asyncio
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from bot.local.api import LocalApi

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DANA = 77
TOKEN = "1:local"


class Clock:
    def __init__(self) -> None:
        self.time = MORNING

    def __call__(self) -> datetime:
        return self.time


def new_api(first_update_id: int = 1) -> LocalApi:
    api = LocalApi(Clock(), TOKEN, first_update_id, 1)
    api.add_phone(DANA, "Dana")
    return api


def call(api: LocalApi, method: str, **params: Any) -> Any:
    return asyncio.run(api.call(method, params, {}))


def send(api: LocalApi, text: str = "Hello", **params: Any) -> Any:
    return call(api, "sendMessage", chat_id=DANA, text=text, **params)


def keyboard(*data: str) -> dict[str, Any]:
    return {"inline_keyboard": [[{"text": d.title(), "callback_data": d}] for d in data]}


def numbers(answer: dict[str, Any]) -> list[int]:
    return [update["update_id"] for update in answer["result"]]


# --- updates


def test_updates_count_up_by_one_from_the_number_given() -> None:
    api = new_api(first_update_id=900)
    for word in ("one", "two", "three"):
        api.phones[DANA].types(word)
    assert numbers(call(api, "getUpdates")) == [900, 901, 902]


def test_without_an_offset_nothing_is_confirmed_and_the_oldest_come_again() -> None:
    api = new_api()
    api.phones[DANA].types("one")
    api.phones[DANA].types("two")
    assert numbers(call(api, "getUpdates")) == [1, 2]
    assert numbers(call(api, "getUpdates", limit=1)) == [1]


@pytest.mark.parametrize(("offset", "left"), [(0, [1, 2, 3]), (1, [1, 2, 3]), (2, [2, 3]), (3, [3]), (4, [])])
def test_an_offset_confirms_everything_below_it_for_good(offset: int, left: list[int]) -> None:
    api = new_api()
    for word in ("one", "two", "three"):
        api.phones[DANA].types(word)
    assert numbers(call(api, "getUpdates", offset=offset)) == left
    assert numbers(call(api, "getUpdates")) == left


def test_a_negative_offset_keeps_that_many_from_the_end() -> None:
    api = new_api()
    for word in ("one", "two", "three"):
        api.phones[DANA].types(word)
    assert numbers(call(api, "getUpdates", offset=-2)) == [2, 3]
    assert numbers(call(api, "getUpdates")) == [2, 3]


def test_a_waiting_poll_returns_as_soon_as_something_is_typed() -> None:
    async def play() -> dict[str, Any]:
        api = new_api()
        poll = asyncio.create_task(api.call("getUpdates", {"timeout": 50}, {}))
        await asyncio.sleep(0)
        api.phones[DANA].types("Set done")
        return await poll

    assert asyncio.run(play())["result"][0]["message"]["text"] == "Set done"


def test_a_second_poll_ends_the_first_with_409_and_lives() -> None:
    async def play() -> tuple[dict[str, Any], dict[str, Any]]:
        api = new_api()
        first = asyncio.create_task(api.call("getUpdates", {"timeout": 50}, {}))
        await asyncio.sleep(0)
        second = asyncio.create_task(api.call("getUpdates", {"timeout": 50}, {}))
        ended = await first
        api.phones[DANA].types("hi")
        return ended, await second

    ended, lived = asyncio.run(play())
    assert ended["error_code"] == 409
    assert numbers(lived) == [1]


def test_no_poll_is_answered_while_a_webhook_is_set() -> None:
    api = new_api()
    call(api, "setWebhook", url="https://example.org/hook")
    assert call(api, "getUpdates")["error_code"] == 409
    assert call(api, "getWebhookInfo")["result"]["url"] == "https://example.org/hook"
    call(api, "deleteWebhook")
    assert call(api, "getUpdates")["ok"]


def test_dropping_the_webhook_can_drop_what_waits() -> None:
    api = new_api()
    api.phones[DANA].types("old")
    call(api, "deleteWebhook", drop_pending_updates="true")
    api.phones[DANA].types("new")
    assert numbers(call(api, "getUpdates")) == [2]


def test_kinds_not_asked_for_are_not_queued() -> None:
    api = new_api()
    call(api, "getUpdates", allowed_updates='["callback_query"]')
    api.phones[DANA].types("hi")
    assert numbers(call(api, "getUpdates")) == []


# --- limits and refusals


@pytest.mark.parametrize(("text", "fits"), [("a" * 4096, True), ("a" * 4097, False)])
def test_a_text_holds_4096_units(text: str, fits: bool) -> None:
    assert send(new_api(), text)["ok"] is fits


@pytest.mark.parametrize(("signs", "fits"), [(2048, True), (2049, False)])
def test_a_sign_outside_the_basic_plane_counts_two(signs: int, fits: bool) -> None:
    assert send(new_api(), "💪" * signs)["ok"] is fits


def test_an_empty_text_is_refused() -> None:
    assert send(new_api(), "  ")["description"] == "Bad Request: message text is empty"


@pytest.mark.parametrize(("data", "fits"), [("", False), ("d", True), ("d" * 64, True), ("d" * 65, False)])
def test_button_data_is_1_to_64_bytes(data: str, fits: bool) -> None:
    row = [[{"text": "Yes", "callback_data": data}]]
    assert send(new_api(), reply_markup={"inline_keyboard": row})["ok"] is fits


def test_button_data_is_counted_in_bytes_not_letters() -> None:
    row = [[{"text": "Yes", "callback_data": "ä" * 33}]]
    assert send(new_api(), reply_markup={"inline_keyboard": row})["description"].endswith(
        "BUTTON_DATA_INVALID"
    )


@pytest.mark.parametrize(
    ("many", "label", "fits"),
    [(100, "x", True), (101, "x", False), (100, "x" * 60, True), (100, "é" * 60, False)],
)
def test_a_keyboard_holds_100_buttons_and_10_kilobytes(many: int, label: str, fits: bool) -> None:
    keys = [[{"text": label, "callback_data": "d"}] for _ in range(many)]
    answer = send(new_api(), reply_markup={"inline_keyboard": keys})
    assert answer["ok"] is fits
    assert fits or answer["description"] == "Bad Request: reply markup is too long"


@pytest.mark.parametrize("markup", [["rows"], {"inline_keyboard": 5}, {"inline_keyboard": [["Yes"]]}, "{"])
def test_a_keyboard_that_is_none_is_refused(markup: Any) -> None:
    assert send(new_api(), reply_markup=markup)["error_code"] == 400


def test_a_keyboard_under_the_writing_line_stays_until_it_is_taken_away() -> None:
    api = new_api()
    phone = api.phones[DANA]
    sent = send(api, reply_markup={"keyboard": [["Yes", {"text": "No"}]]})["result"]
    send(api)
    assert phone.keyboard == ("Yes", "No")
    edit = {"chat_id": DANA, "message_id": sent["message_id"], "reply_markup": {"keyboard": [["Maybe"]]}}
    answer = call(api, "editMessageText", text="Now?", **edit)
    assert answer["description"] == "Bad Request: inline keyboard expected"
    send(api, reply_markup={"remove_keyboard": True})
    assert phone.keyboard == ()


def test_an_unknown_chat_is_not_found() -> None:
    answer = call(new_api(), "sendMessage", chat_id=1234, text="hi")
    assert (answer["error_code"], answer["description"]) == (400, "Bad Request: chat not found")


def test_a_person_who_blocked_the_bot_gets_nothing_until_unblocked() -> None:
    api = new_api()
    api.phones[DANA].blocks()
    answer = send(api)
    assert (answer["error_code"], answer["description"]) == (403, "Forbidden: bot was blocked by the user")
    assert api.phones[DANA].history == []
    api.phones[DANA].unblocks()
    assert send(api)["ok"]


def test_an_unknown_method_is_404() -> None:
    assert call(new_api(), "sendPigeon")["error_code"] == 404


def test_a_planned_failure_happens_so_many_times_and_does_nothing() -> None:
    api = new_api()
    api.fail_next("sendMessage", 2, 429, retry_after=3)
    refused = [send(api), send(api)]
    assert [r["parameters"]["retry_after"] for r in refused] == [3, 3]
    assert api.phones[DANA].history == []
    assert send(api)["ok"]


# --- writing


def test_the_same_text_and_buttons_are_not_modified() -> None:
    api = new_api()
    sent = send(api, "Ready?", reply_markup=keyboard("yes"))["result"]
    same = {"chat_id": DANA, "message_id": sent["message_id"], "reply_markup": keyboard("yes")}
    assert "message is not modified" in call(api, "editMessageText", text="Ready?", **same)["description"]
    assert "message is not modified" in call(api, "editMessageReplyMarkup", **same)["description"]
    assert call(api, "editMessageText", text="Ready now?", **same)["ok"]
    # The second time it is the edited form that counts.
    assert "message is not modified" in call(api, "editMessageText", text="Ready now?", **same)["description"]


def test_an_edit_without_buttons_takes_them_away() -> None:
    api = new_api()
    sent = send(api, "Ready?", reply_markup=keyboard("yes"))["result"]
    call(api, "editMessageText", chat_id=DANA, message_id=sent["message_id"], text="Ready?")
    [shown] = api.phones[DANA].history
    assert shown.buttons == ()
    assert shown.edited == MORNING
    assert shown.earlier == ()  # the words are the same


def test_a_message_remembers_what_it_said_before_each_edit() -> None:
    api = new_api()
    number = send(api, "30 s")["result"]["message_id"]
    for left in ("20 s", "10 s"):
        call(api, "editMessageText", chat_id=DANA, message_id=number, text=left)
    [shown] = api.phones[DANA].history
    assert (shown.text, shown.earlier) == ("10 s", ("30 s", "20 s"))


def test_the_bot_cannot_edit_what_a_person_wrote() -> None:
    api = new_api()
    number = api.phones[DANA].types("mine")
    answer = call(api, "editMessageText", chat_id=DANA, message_id=number, text="ours")
    assert answer["description"] == "Bad Request: message can't be edited"


@pytest.mark.parametrize(
    ("age", "goes"), [(timedelta(hours=48), True), (timedelta(hours=48, seconds=1), False)]
)
def test_a_message_can_be_deleted_for_48_hours(age: timedelta, goes: bool) -> None:
    clock = Clock()
    api = LocalApi(clock)
    phone = api.add_phone(DANA, "Dana")
    number = phone.types("hello")
    clock.time += age
    assert call(api, "deleteMessage", chat_id=DANA, message_id=number)["ok"] is goes
    assert (phone.history == []) is goes


def test_a_reply_needs_its_message_unless_told_otherwise() -> None:
    api = new_api()
    assert send(api, reply_parameters={"message_id": 50})["error_code"] == 400
    assert send(api, reply_parameters={"message_id": 50, "allow_sending_without_reply": True})["ok"]
    number = api.phones[DANA].types("How many?")
    assert (
        send(api, reply_parameters={"message_id": number})["result"]["reply_to_message"]["text"]
        == "How many?"
    )


def test_a_query_is_answered_once_and_its_words_are_shown() -> None:
    api = new_api()
    sent = send(api, reply_markup=keyboard("yes"))["result"]
    query = api.phones[DANA].taps(sent["message_id"], "Yes")
    assert call(api, "answerCallbackQuery", callback_query_id=query, text="Noted")["ok"]
    assert api.phones[DANA].notices == ["Noted"]
    assert "query is too old" in call(api, "answerCallbackQuery", callback_query_id=query)["description"]


def test_of_two_buttons_with_one_label_each_can_be_pressed_by_its_data() -> None:
    api = new_api()
    row = [[{"text": "Yes", "callback_data": "left"}, {"text": "Yes", "callback_data": "right"}]]
    number = send(api, reply_markup={"inline_keyboard": row})["result"]["message_id"]
    api.phones[DANA].taps(number, "left")
    api.phones[DANA].taps(number, "right")
    api.phones[DANA].taps(number, "Yes")
    api.phones[DANA].taps(number, 1)
    queries = [u["callback_query"]["data"] for u in call(api, "getUpdates")["result"]]
    assert queries == ["left", "right", "left", "right"]


def test_a_phone_cannot_press_what_is_not_there() -> None:
    api = new_api()
    number = send(api, reply_markup=keyboard("yes"))["result"]["message_id"]
    with pytest.raises(ValueError, match="no button"):
        api.phones[DANA].taps(number, "no")
    with pytest.raises(ValueError, match="no button"):
        api.phones[DANA].taps(number, 1)
    with pytest.raises(ValueError, match="message_id"):
        api.phones[DANA].taps(number + 1, "yes")


def test_waiting_ends_when_the_predicate_holds_and_fails_when_it_never_does() -> None:
    async def play() -> None:
        api = new_api()
        phone = api.phones[DANA]
        waiting = asyncio.create_task(api.wait(lambda: len(phone.history) == 2, 50))
        await asyncio.sleep(0)
        phone.types("one")
        await asyncio.sleep(0)
        assert not waiting.done()
        phone.types("two")
        await waiting
        with pytest.raises(TimeoutError):
            await api.wait(lambda: False, 0.01)

    asyncio.run(play())
