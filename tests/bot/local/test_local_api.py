"""The local Bot API keeps the promises of the real one, called plainly and by the real library."""

import asyncio
import json
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
import telegram
import tornado.httpclient
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup
from telegram.error import BadRequest, Conflict, Forbidden, InvalidToken, RetryAfter

from bot.local.api import LocalApi
from bot.local.http import Server, serve
from bot.local.inprocess import InProcess

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DANA = 77
TOKEN = "1:local"


class Clock:
    def __init__(self) -> None:
        self.time = MORNING

    def __call__(self) -> datetime:
        return self.time


def new_api(first_update_id: int = 1) -> LocalApi:
    api = LocalApi(Clock(), TOKEN, first_update_id)
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


def test_any_other_keyboard_is_refused() -> None:
    assert send(new_api(), reply_markup={"keyboard": [["Yes"]]})["error_code"] == 400


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
    queries = [u["callback_query"]["data"] for u in call(api, "getUpdates")["result"]]
    assert queries == ["left", "right", "left"]


def test_a_phone_cannot_press_what_is_not_there() -> None:
    api = new_api()
    number = send(api, reply_markup=keyboard("yes"))["result"]["message_id"]
    with pytest.raises(ValueError, match="no button"):
        api.phones[DANA].taps(number, "no")
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


# --- the real library, through both fronts

Scene = Callable[[LocalApi, Bot], Awaitable[None]]


async def over_http(api: LocalApi, scene: Scene) -> None:
    server = await serve(api, 0)
    try:
        async with Bot(TOKEN, base_url=f"{server.url}/bot", base_file_url=f"{server.url}/file/bot") as bot:
            await scene(api, bot)
    finally:
        await server.stop()


async def in_process(api: LocalApi, scene: Scene) -> None:
    async with Bot(TOKEN, request=InProcess(api), get_updates_request=InProcess(api)) as bot:
        await scene(api, bot)


FRONTS = pytest.mark.parametrize("front", [over_http, in_process])
Front = Callable[[LocalApi, Scene], Awaitable[None]]


def play(front: Front, scene: Scene) -> None:
    async def run() -> None:
        await front(new_api(), scene)

    asyncio.run(run())


@FRONTS
def test_a_question_is_asked_tapped_answered_and_closed(front: Front) -> None:
    async def scene(api: LocalApi, bot: Bot) -> None:
        phone = api.phones[DANA]
        markup = InlineKeyboardMarkup([[InlineKeyboardButton("Set done", callback_data="done:1")]])
        asked = await bot.send_message(DANA, "30 reps 💪", reply_markup=markup, disable_notification=True)
        assert asked.date == MORNING
        [shown] = phone.history
        assert (shown.text, shown.quiet, shown.buttons) == ("30 reps 💪", True, ((("Set done", "done:1"),),))
        phone.taps(asked.message_id, "Set done")
        [update] = await bot.get_updates(timeout=5)
        assert update.callback_query is not None
        assert update.callback_query.data == "done:1"
        assert update.callback_query.message == asked
        await bot.answer_callback_query(update.callback_query.id)
        await bot.edit_message_text("Done.", DANA, asked.message_id)
        assert [m.text for m in phone.history] == ["Done."]
        assert await bot.get_updates(offset=update.update_id + 1, timeout=0) == ()

    play(front, scene)


@FRONTS
def test_what_a_phone_sends_arrives_as_what_it_is(front: Front) -> None:
    async def scene(api: LocalApi, bot: Bot) -> None:
        phone = api.phones[DANA]
        start = phone.types("/start abc")
        phone.edits(start, "started")
        phone.sends("photo", b"\xff\xd8picture")
        phone.sends("sticker")
        phone.sends("voice", b"sound")
        first, edited, photo, sticker, voice = [u.effective_message for u in await bot.get_updates()]
        assert first is not None
        assert first.parse_entities(["bot_command"]) != {}
        assert edited is not None
        assert (edited.text, edited.edit_date) == ("started", MORNING)
        assert photo is not None
        file = await bot.get_file(photo.photo[-1])
        assert bytes(await file.download_as_bytearray()) == b"\xff\xd8picture"
        assert sticker is not None
        assert sticker.sticker is not None
        assert voice is not None
        assert voice.voice is not None

    play(front, scene)


@FRONTS
def test_pictures_and_documents_reach_the_phone_whole(front: Front) -> None:
    async def scene(api: LocalApi, bot: Bot) -> None:
        sent = await bot.send_photo(DANA, b"\x89PNG\r\n\x00\xff", caption="Your week")
        await bot.send_document(DANA, b"a,b\n1,2\n", filename="sets.csv")
        await bot.send_photo(DANA, sent.photo[-1].file_id)
        photo, document, again = api.phones[DANA].history
        assert (photo.photo, photo.text) == (b"\x89PNG\r\n\x00\xff", "Your week")
        assert (document.document, document.document_name) == (b"a,b\n1,2\n", "sets.csv")
        assert again.photo == photo.photo
        await bot.send_chat_action(DANA, "typing")
        assert await bot.set_my_commands([("stop", "Stop now")])

    play(front, scene)


@FRONTS
def test_refusals_arrive_as_the_library_names_them(front: Front) -> None:
    async def scene(api: LocalApi, bot: Bot) -> None:
        with pytest.raises(BadRequest, match="hat not found"):
            await bot.send_message(1234, "hi")
        sent = await bot.send_message(DANA, "hi")
        with pytest.raises(BadRequest, match="essage is not modified"):
            await bot.edit_message_text("hi", DANA, sent.message_id)
        api.fail_next("sendMessage", 1, 429, retry_after=7)
        with pytest.raises(RetryAfter):
            await bot.send_message(DANA, "hi")
        api.phones[DANA].blocks()
        with pytest.raises(Forbidden):
            await bot.send_message(DANA, "hi")

    play(front, scene)


@FRONTS
def test_of_two_polling_bots_the_earlier_is_told_of_the_conflict(front: Front) -> None:
    async def scene(api: LocalApi, bot: Bot) -> None:
        async def beside(api: LocalApi, other: Bot) -> None:
            polls = [asyncio.create_task(each.get_updates(timeout=5)) for each in (bot, other)]
            done, [left] = await asyncio.wait(polls, return_when=asyncio.FIRST_COMPLETED)
            assert isinstance(done.pop().exception(), Conflict)
            api.phones[DANA].types("hi")
            assert len(await left) == 1

        await front(api, beside)

    play(front, scene)


def test_every_message_reads_as_the_librarys_own() -> None:
    api = new_api()
    sent = send(api, reply_markup=keyboard("yes"))["result"]
    read = telegram.Message.de_json(sent, None)
    assert read.chat.type == "private"
    # The library adds its own words for what is absent; all that was sent must be there.
    assert {key: read.to_dict()[key] for key in sent} == sent


def test_a_wrong_token_is_turned_away() -> None:
    async def run() -> None:
        server = await serve(new_api(), 0)
        with pytest.raises(InvalidToken):
            await Bot("2:other", base_url=f"{server.url}/bot").get_me()
        await server.stop()

    asyncio.run(run())


# --- the page's door


def on_the_page(scene: Callable[[LocalApi, Server], Awaitable[None]]) -> None:
    async def skip() -> str:
        return "Tuesday"

    async def run() -> None:
        api = new_api()
        server = await serve(api, 0, skip)
        await scene(api, server)
        await server.stop()

    asyncio.run(run())


async def fetch(
    url: str, body: dict[str, Any] | None = None, **headers: str
) -> tornado.httpclient.HTTPResponse:
    sent = None if body is None else json.dumps(body).encode()
    headers = {"Content-Type": "application/json"} | headers
    request = tornado.httpclient.HTTPRequest(url, "GET" if body is None else "POST", headers, sent)
    return await tornado.httpclient.AsyncHTTPClient().fetch(request, raise_error=False)


def test_the_page_types_taps_edits_and_sees_it() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        door = f"{server.url}/phone/{DANA}"
        await api.call("sendMessage", {"chat_id": DANA, "text": "Go?", "reply_markup": keyboard("yes")}, {})
        await fetch(f"{door}/tap", {"message": 1, "data": "yes"})
        await fetch(f"{door}/type", {"text": "hello"})
        await fetch(f"{door}/edit", {"message": 2, "text": "hello there"})
        await fetch(f"{door}/send", {"kind": "photo", "data": "iVBORw=="})
        state = json.loads((await fetch(f"{server.url}/phone/state")).body)
        assert [m["text"] for m in state["phones"][0]["messages"]] == ["Go?", "hello there", ""]
        assert state["time"] == "Mon 02 Mar 06:00"
        assert (await fetch(f"{door}/attachment/3")).body == b"\x89PNG"
        assert (await fetch(f"{door}/tap", {"message": 1, "data": "no"})).code == 400

    on_the_page(scene)


def test_skipping_tells_what_came_and_wakes_the_page() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        known = api.version
        waiting = asyncio.create_task(fetch(f"{server.url}/phone/state?version={known}"))
        assert json.loads((await fetch(f"{server.url}/clock/skip", {})).body) == {"came_to": "Tuesday"}
        assert json.loads((await waiting).body)["version"] == known + 1

    on_the_page(scene)


def test_a_foreign_host_and_a_foreign_form_are_refused() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        assert (await fetch(f"{server.url}/", Host="example.org")).code == 403
        form = {"Content-Type": "text/plain"}
        assert (await fetch(f"{server.url}/phone/{DANA}/type", {"text": "x"}, **form)).code == 415
        assert api.phones[DANA].history == []

    on_the_page(scene)
