"""The way to the server, over a real socket."""

import asyncio
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime
from typing import Any

import pytest
from telegram import Bot, InputFile
from telegram.error import BadRequest, Forbidden, NetworkError, RetryAfter, TimedOut

from bot.local.api import LocalApi
from bot.local.http import serve
from bot.net.transport import Transport, proxy_for

TOKEN = "1:local"
CLIENT = 2001
NOBODY = "http://127.0.0.1:1"


def with_bot(act: Callable[[Bot, LocalApi], Awaitable[None]]) -> None:
    async def run() -> None:
        api = LocalApi(lambda: datetime.now(UTC), TOKEN)
        api.add_phone(CLIENT, "Ruta")
        server = await serve(api, 0)
        ways = {"request": Transport(server.url, 4), "get_updates_request": Transport(server.url, 1)}
        bot = Bot(TOKEN, base_url=f"{server.url}/bot", base_file_url=f"{server.url}/file/bot", **ways)
        try:
            async with bot:
                await act(bot, api)
        finally:
            await server.stop()

    asyncio.run(run())


def test_words_signs_and_files_arrive_whole() -> None:
    async def act(bot: Bot, api: LocalApi) -> None:
        await bot.send_message(CLIENT, "Bands off · ½ & 50 % + 🦵🏽")
        await bot.send_document(CLIENT, InputFile(b"\x00\xff\r\n--", "mañana.pdf"), caption="a, b = c & d")
        said = [message.text for message in api.phones[CLIENT].history]
        assert said == ["Bands off · ½ & 50 % + 🦵🏽", "a, b = c & d"]
        assert list(api._exchange.files.values()) == [b"\x00\xff\r\n--"]

    with_bot(act)


@pytest.mark.parametrize(
    ("code", "error"), [(429, RetryAfter), (400, BadRequest), (403, Forbidden), (502, NetworkError)]
)
def test_a_refusal_has_the_librarys_own_name(code: int, error: type[Exception]) -> None:
    async def act(bot: Bot, api: LocalApi) -> None:
        api.fail_next("sendMessage", 1, code, 3 if code == 429 else None)
        with pytest.raises(error):
            await bot.send_message(CLIENT, "hello")
        await bot.send_message(CLIENT, "hello again")

    with_bot(act)


def test_a_slow_answer_is_a_time_out_and_the_next_call_gets_its_own_answer() -> None:
    async def act(bot: Bot, api: LocalApi) -> None:
        real, goes_on = api.call, asyncio.Event()

        async def slow(*call: Any) -> dict[str, Any]:
            await goes_on.wait()
            return await real(*call)

        api.call = slow  # type: ignore[method-assign]
        with pytest.raises(TimedOut):
            await bot.send_message(CLIENT, "slow", read_timeout=0.01)
        api.call = real  # type: ignore[method-assign]
        goes_on.set()
        sent = await bot.send_message(CLIENT, "quick")
        assert sent.text == "quick"

    with_bot(act)


def test_a_server_that_is_not_there_is_a_network_error_without_the_token() -> None:
    async def run() -> None:
        way = Transport(NOBODY, 1)
        await way.initialize()
        try:
            with pytest.raises(NetworkError) as found:
                await way.post(f"{NOBODY}/bot{TOKEN}/getMe")
            assert TOKEN not in f"{found.value!r} {found.value.__cause__!r} {found.value.__context__!r}"
        finally:
            await way.shutdown()

    asyncio.run(run())


def test_a_call_before_the_start_says_so() -> None:
    with pytest.raises(NetworkError, match="not initialized"):
        asyncio.run(Transport(NOBODY, 1).post(f"{NOBODY}/getMe"))


@pytest.mark.parametrize(
    ("named", "proxy"),
    [
        ({}, None),
        ({"HTTPS_PROXY": "http://proxy:3128"}, "http://proxy:3128"),
        ({"ALL_PROXY": "http://proxy:3128"}, "http://proxy:3128"),
        ({"HTTP_PROXY": "http://proxy:3128"}, None),
        ({"HTTPS_PROXY": "http://proxy:3128", "NO_PROXY": "telegram.org"}, None),
    ],
)
def test_the_environment_names_the_proxy(
    named: dict[str, str], proxy: str | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("HTTP_PROXY", "HTTPS_PROXY", "ALL_PROXY", "NO_PROXY"):
        monkeypatch.delenv(name, raising=False)
        monkeypatch.delenv(name.lower(), raising=False)
    for name, value in named.items():
        monkeypatch.setenv(name, value)
    assert proxy_for("https://api.telegram.org") == proxy
