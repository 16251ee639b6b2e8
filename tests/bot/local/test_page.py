"""The page does what its owner's hand does, and opens to nobody else."""

import asyncio
import json
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime
from typing import Any

import pytest
import tornado.httpclient

from bot.local.api import LocalApi
from bot.local.http import Server, serve

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DANA = 77
TOKEN = "1:local"
BUTTONS = {"inline_keyboard": [[{"text": "Yes", "callback_data": "yes"}]]}


def new_api() -> LocalApi:
    api = LocalApi(lambda: MORNING, TOKEN, 1, 1)
    api.add_phone(DANA, "Dana")
    return api


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
        await api.call("sendMessage", {"chat_id": DANA, "text": "Go?", "reply_markup": BUTTONS}, {})
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


@pytest.mark.parametrize("name", ["", "page.css", "page.js", "lines.js", "tools.js"])
def test_the_page_brings_all_it_needs_from_here(name: str) -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        answer = await fetch(f"{server.url}/{name}")
        assert answer.code == 200
        assert b"//" not in answer.body.replace(b"// ", b"")  # no address elsewhere, only comments
        assert b"innerHTML" not in answer.body
        assert answer.headers["Content-Security-Policy"].startswith("default-src 'self'")

    on_the_page(scene)


def test_nothing_else_is_served_from_the_folder() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        for name in ("api.py", "page.html", "../cli.py", "%2e%2e/cli.py"):
            assert (await fetch(f"{server.url}/{name}")).code == 404

    on_the_page(scene)


def test_the_page_shows_offered_words_and_hands_out_clips() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        keyboard = {"keyboard": [["Yes"], ["No"]]}
        await api.call("sendMessage", {"chat_id": DANA, "text": "Go?", "reply_markup": keyboard}, {})
        await fetch(f"{server.url}/phone/{DANA}/send", {"kind": "video", "data": "bW92aW5n"})
        [phone] = json.loads((await fetch(f"{server.url}/phone/state")).body)["phones"]
        assert phone["keyboard"] == ["Yes", "No"]
        assert [(m["kind"], m["has_file"]) for m in phone["messages"]] == [("text", False), ("video", True)]
        clip = await fetch(f"{server.url}/phone/{DANA}/attachment/2")
        assert (clip.body, clip.headers["Content-Disposition"]) == (b"moving", "attachment")
        assert (await fetch(f"{server.url}/phone/{DANA}/attachment/9")).code == 404

    on_the_page(scene)


@pytest.mark.parametrize("header", [{"Origin": "https://example.org"}, {"Sec-Fetch-Site": "cross-site"}])
def test_a_page_elsewhere_can_make_neither_phones_nor_bot_act(header: dict[str, str]) -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        sent = {"chat_id": DANA, "text": "x"}
        for path in (f"phone/{DANA}/type", f"bot{TOKEN}/sendMessage", "phone/add", "clock/skip"):
            assert (await fetch(f"{server.url}/{path}", sent, **header)).code == 403
        assert api.phones[DANA].history == []
        assert (await fetch(f"{server.url}/phone/state", **header)).code == 403
        assert (await fetch(f"{server.url}/", **header)).code == 200

    on_the_page(scene)


def test_a_person_more_gets_a_phone_with_a_number_of_its_own() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        known = api.version
        waiting = asyncio.create_task(fetch(f"{server.url}/phone/state?version={known}"))
        assert json.loads((await fetch(f"{server.url}/phone/add", {"name": " Ruta "})).body) == {
            "id": DANA + 1
        }
        shown = json.loads((await waiting).body)["phones"]
        assert [(phone["id"], phone["name"]) for phone in shown] == [(DANA, "Dana"), (DANA + 1, "Ruta")]
        assert (await fetch(f"{server.url}/phone/add", {"name": " "})).code == 400

    on_the_page(scene)


def test_its_own_origin_may_act() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        answer = await fetch(f"{server.url}/phone/{DANA}/type", {"text": "x"}, Origin=server.url)
        assert answer.code == 200
        assert [m.text for m in api.phones[DANA].history] == ["x"]

    on_the_page(scene)


def test_a_foreign_host_and_a_foreign_form_are_refused() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        assert (await fetch(f"{server.url}/", Host="example.org")).code == 403
        form = {"Content-Type": "text/plain"}
        assert (await fetch(f"{server.url}/phone/{DANA}/type", {"text": "x"}, **form)).code == 415
        assert api.phones[DANA].history == []

    on_the_page(scene)


def test_a_sound_is_played_in_the_page_not_saved() -> None:
    async def scene(api: LocalApi, server: Server) -> None:
        await api.call("sendAudio", {"chat_id": DANA, "audio.name": "beat.wav"}, {"audio": b"RIFF"})
        answer = await fetch(f"{server.url}/phone/{DANA}/attachment/1")
        assert answer.body == b"RIFF"
        assert answer.headers["Content-Type"] == "audio/wav"
        assert "Content-Disposition" not in answer.headers
        script = (await fetch(f"{server.url}/lines.js")).body.decode()
        assert 'element("audio", "sound")' in script
        assert "player.controls = true" in script

    on_the_page(scene)
