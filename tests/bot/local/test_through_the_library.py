"""The real library reads the local API as it reads the real one, over HTTP and in process."""

import asyncio
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime

import pytest
import telegram
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, MessageOriginUser, Update
from telegram.error import BadRequest, Conflict, Forbidden, InvalidToken, NetworkError, RetryAfter
from telegram.ext import Application, ContextTypes, MessageHandler

from bot.local.api import LocalApi
from bot.local.http import serve
from bot.local.inprocess import InProcess

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DANA, RUTA = 77, 78
TOKEN = "1:local"
BUTTONS = {"inline_keyboard": [[{"text": "Yes", "callback_data": "yes"}]]}


def new_api() -> LocalApi:
    api = LocalApi(lambda: MORNING, TOKEN)
    api.add_phone(DANA, "Dana")
    return api


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


@pytest.mark.filterwarnings("ignore:.*retry_after.*timedelta")
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
def test_a_lost_answer_is_a_network_error_though_the_message_arrived(front: Front) -> None:
    async def scene(api: LocalApi, bot: Bot) -> None:
        api.lose_next("sendMessage", 1, done=True)
        with pytest.raises(NetworkError) as lost:
            await bot.send_message(DANA, "hi")
        assert not isinstance(lost.value, BadRequest)  # which the library derives from it
        api.lose_next("sendMessage", 1)
        with pytest.raises(NetworkError):
            await bot.send_message(DANA, "again")
        assert [m.text for m in api.phones[DANA].history] == ["hi"]

    play(front, scene)


@FRONTS
def test_clips_and_sounds_arrive_whole_and_are_passed_on(front: Front) -> None:
    async def scene(api: LocalApi, bot: Bot) -> None:
        coach = api.add_phone(RUTA, "Ruta")
        dana = api.phones[DANA]
        clip = dana.sends("video", b"moving")
        await bot.copy_message(RUTA, DANA, clip, caption="Dana, goblet squat")
        forwarded = await bot.forward_message(RUTA, DANA, clip)
        assert isinstance(forwarded.forward_origin, MessageOriginUser)
        assert forwarded.forward_origin.sender_user.first_name == "Dana"
        assert [(m.document, m.text) for m in coach.history] == [
            (b"moving", "Dana, goblet squat"),
            (b"moving", ""),
        ]
        await bot.send_audio(DANA, b"beat", filename="beat.mp3")
        await bot.send_voice(DANA, b"word")
        sent = await bot.send_video(DANA, b"squat")
        assert sent.video is not None
        assert [(m.kind, m.document) for m in dana.history[1:]] == [
            ("audio", b"beat"),
            ("voice", b"word"),
            ("video", b"squat"),
        ]

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


@FRONTS
def test_the_librarys_own_application_polls_and_answers(front: Front) -> None:
    async def echo(update: Update, context: ContextTypes.DEFAULT_TYPE) -> None:
        assert update.message is not None
        await update.message.reply_text(f"heard: {update.message.text}")

    async def scene(api: LocalApi, bot: Bot) -> None:
        application = Application.builder().bot(bot).build()
        application.add_handler(MessageHandler(None, echo))
        await application.initialize()
        await application.start()
        assert application.updater is not None
        await application.updater.start_polling()
        phone = api.phones[DANA]
        phone.types("31")
        await api.wait(lambda: phone.history[-1].text == "heard: 31", 10)
        await application.updater.stop()
        await application.stop()
        await application.shutdown()
        assert (await api.call("getWebhookInfo", {}, {}))["result"]["pending_update_count"] == 0

    play(front, scene)


def test_every_message_reads_as_the_librarys_own() -> None:
    params = {"chat_id": DANA, "text": "Ready?", "reply_markup": BUTTONS}
    sent = asyncio.run(new_api().call("sendMessage", params, {}))["result"]
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
