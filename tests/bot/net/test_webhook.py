"""Updates posted to the bot, over HTTP on this machine."""

import asyncio
import json
import socket
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, cast

import pytest
from telegram import Bot
from tornado.httpclient import AsyncHTTPClient, HTTPResponse

from bot.config import Config, Wrong
from bot.local.api import LocalApi
from bot.local.http import serve
from bot.net import intake, reached, webhook
from bot.net.intake import Numbered

SECRET = "s" * 40
UPDATE = {"update_id": 7, "message": {"text": "31"}}


class Keeper:
    """Keeps what it is given, after failing as often as asked."""

    def __init__(self, failures: int = 0) -> None:
        self.failures = failures
        self.kept: list[Numbered] = []
        self.third = asyncio.Event()

    def receive(self, updates: list[Numbered]) -> None:
        if self.failures:
            self.failures -= 1
            raise OSError("disk full")
        self.kept += updates
        if len(self.kept) == 3:
            self.third.set()


def settings(port: int = 0, path: str = "/hook-1") -> Config:
    return Config(
        "1:local",
        "http://127.0.0.1",
        Path("unused.db"),
        (1,),
        "UTC",
        webhook=f"http://127.0.0.1:{port}{path}",
        listen=("127.0.0.1", port),
        webhook_secret=SECRET,
    )


Post = Callable[..., Awaitable[HTTPResponse]]


def posting(keeper: Keeper, scene: Callable[[Post], Awaitable[None]]) -> None:
    """Run a scene that can post to a listening webhook."""

    async def run() -> None:
        server, port = webhook.listen(settings(), keeper.receive)
        client = AsyncHTTPClient(force_instance=True)

        async def post(
            body: bytes | None, secret: str | None = SECRET, path: str = "/hook-1", **how: Any
        ) -> HTTPResponse:
            headers = {} if secret is None else {webhook.SECRET_HEADER: secret}
            url = f"http://127.0.0.1:{port}{path}"
            how = {"method": "POST", "body": body, "headers": headers, "raise_error": False} | how
            return await client.fetch(url, **how)

        await scene(post)
        server.stop()

    asyncio.run(run())


def test_an_update_with_the_secret_is_kept_and_then_confirmed() -> None:
    keeper = Keeper()

    async def scene(post: Post) -> None:
        answer = await post(json.dumps(UPDATE).encode())
        assert (answer.code, answer.body, keeper.kept) == (200, b"", [(7, UPDATE)])
        assert "Server" not in answer.headers

    posting(keeper, scene)


@pytest.mark.parametrize("secret", [None, "", "s" * 39, "s" * 41, "S" * 40, "é" * 20])
def test_nobody_without_the_secret_gets_anything_in(secret: str | None) -> None:
    keeper = Keeper()

    async def scene(post: Post) -> None:
        answer = await post(json.dumps(UPDATE).encode(), secret)
        assert (answer.code, answer.body, keeper.kept) == (403, b"", [])

    posting(keeper, scene)


def test_the_secret_is_compared_in_the_same_time_whatever_was_sent(monkeypatch: pytest.MonkeyPatch) -> None:
    compared: list[tuple[bytes, bytes]] = []

    def compare(given: bytes, known: bytes) -> bool:
        compared.append((given, known))
        return False

    async def scene(post: Post) -> None:
        assert (await post(b"{}")).code == 403

    monkeypatch.setattr("bot.net.webhook.hmac.compare_digest", compare)
    posting(Keeper(), scene)
    assert compared == [(SECRET.encode(), SECRET.encode())]


def test_the_server_is_asked_for_one_connection_the_secret_and_what_we_read() -> None:
    class Asked:
        async def set_webhook(self, url: str, **more: object) -> None:
            assert url == settings().webhook
            asked.update(more)

    asked: dict[str, object] = {}
    asyncio.run(webhook.announce(cast(Bot, Asked()), settings()))
    wanted = {"secret_token": SECRET, "max_connections": 1, "allowed_updates": intake.KINDS}
    assert asked == wanted, "with more connections words would arrive in any order"


def test_an_update_that_could_not_be_kept_is_not_confirmed_and_comes_again() -> None:
    keeper = Keeper(failures=1)

    async def scene(post: Post) -> None:
        assert [(await post(json.dumps(UPDATE).encode())).code for _ in range(2)] == [503, 200]
        assert keeper.kept == [(7, UPDATE)]

    posting(keeper, scene)


@pytest.mark.parametrize(
    "body",
    [b"", b"{", b"[]", b"null", b"7", b"{}", b"\xff", b"[" * 100_000]
    + [json.dumps({"update_id": number}).encode() for number in ("7", 7.0, True, None, -1, 2**63)],
)
def test_what_is_no_update_is_declined_and_not_kept(body: bytes) -> None:
    keeper = Keeper()

    async def scene(post: Post) -> None:
        assert (await post(body)).code == 400
        assert (await post(json.dumps(UPDATE | {"update_id": 2**63 - 1}).encode())).code == 200
        assert len(keeper.kept) == 1

    posting(keeper, scene)


@pytest.mark.parametrize(("more", "code"), [(0, 200), (1, 400)])
def test_a_body_at_the_limit_is_taken_and_one_byte_more_is_not(more: int, code: int) -> None:
    keeper = Keeper()

    async def scene(post: Post) -> None:
        start = json.dumps(UPDATE).encode()
        body = start + b" " * (webhook.BODY_LIMIT - len(start) + more)
        assert (await post(body)).code == code
        assert len(keeper.kept) == (code == 200)

    posting(keeper, scene)


def test_no_other_address_and_no_other_method_answers() -> None:
    keeper = Keeper()

    async def scene(post: Post) -> None:
        body = json.dumps(UPDATE).encode()
        for path in ("/", "/hook-1/", "/hook-11", "/hook_1"):
            assert (await post(body, path=path)).code == 404
        assert (await post(body, method="PUT")).code == 405
        assert (await post(None, method="GET")).code == 405
        assert keeper.kept == []

    posting(keeper, scene)


def free_port() -> int:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        port: int = taken.getsockname()[1]
        return port


def test_the_server_posts_each_update_in_order_until_it_is_kept() -> None:
    async def run() -> None:
        api = LocalApi(lambda: datetime.now(UTC))
        phone = api.add_phone(77, "Dana")
        server = await serve(api, 0)
        keeper = Keeper(failures=3)
        async with Bot("1:local", base_url=f"{server.url}/bot") as bot:
            standing = asyncio.create_task(webhook.stand(bot, settings(free_port()), keeper.receive))
            for text in ("one", "two", "three"):
                phone.types(text)
            await asyncio.wait_for(keeper.third.wait(), 10)
            assert [body["message"]["text"] for _, body in keeper.kept] == ["one", "two", "three"]
            standing.cancel()
            await asyncio.wait([standing])
            await bot.delete_webhook()
            phone.types("four")
            [update] = await intake.fetch(bot, None, 0)
            assert update["message"]["text"] == "four"
        await server.stop()

    asyncio.run(run())


def test_a_webhook_that_was_taken_away_is_set_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """A second program that fetches takes it away, and nothing would come here any more."""
    monkeypatch.setattr(reached, "LOOK_EVERY_S", 0.01)

    async def run() -> None:
        api = LocalApi(lambda: datetime.now(UTC))
        phone = api.add_phone(77, "Dana")
        server = await serve(api, 0)
        came: asyncio.Queue[list[Numbered]] = asyncio.Queue()
        told = asyncio.Event()
        async with Bot("1:local", base_url=f"{server.url}/bot") as bot:
            standing = asyncio.create_task(
                webhook.stand(bot, settings(free_port()), came.put_nowait, lambda text: told.set())
            )
            phone.types("one")
            await asyncio.wait_for(came.get(), 10)
            await bot.delete_webhook()
            await asyncio.wait_for(told.wait(), 10)
            phone.types("two")
            await asyncio.wait_for(came.get(), 10)
            standing.cancel()
            await asyncio.wait([standing])
        await server.stop()

    asyncio.run(run())


def test_a_declined_webhook_and_a_taken_port_end_the_bot_with_one_clear_line() -> None:
    async def run(config: Config, refuse: bool) -> str:
        api = LocalApi(lambda: datetime.now(UTC))
        server = await serve(api, 0)
        if refuse:
            api.fail_next("setWebhook", 1, 400)
        async with Bot("1:local", base_url=f"{server.url}/bot") as bot:
            with pytest.raises(Wrong) as wrong:
                await webhook.stand(bot, config, Keeper().receive)
        await server.stop()
        [line] = wrong.value.lines
        return line

    assert asyncio.run(run(settings(free_port()), refuse=True)).startswith("CUFFLINE_WEBHOOK:")
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        assert asyncio.run(run(settings(port), refuse=False)).startswith("CUFFLINE_LISTEN:")
