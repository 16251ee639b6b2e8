"""The local API over HTTP on 127.0.0.1, for a bot in another process and for the page in a browser."""

import asyncio
import json
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import Any, Final

import tornado.httpserver
import tornado.netutil
import tornado.web

from bot.local.api import LocalApi
from bot.local.faults import Lost
from bot.local.guard import Guarded
from bot.local.page import page_routes
from bot.local.pushing import push
from bot.local.refusals import refusal_for

# Bytes; what the API takes: https://core.telegram.org/bots/api#senddocument
_UPLOAD_LIMIT: Final = 50 * 1024 * 1024

Skip = Callable[[], Awaitable[str]]


@dataclass(frozen=True, slots=True)
class Server:
    """A server that is listening; `url` has no slash at its end."""

    url: str
    _http: tornado.httpserver.HTTPServer
    _pushing: asyncio.Task[None]

    async def stop(self) -> None:
        """Stop listening and drop what is still connected."""
        self._pushing.cancel()
        self._http.stop()
        await self._http.close_all_connections()


async def serve(api: LocalApi, port: int, skip: Skip | None = None) -> Server:
    """Listen on 127.0.0.1; port 0 takes a free one. `skip` moves the clock on and says what it came to."""
    [socket] = tornado.netutil.bind_sockets(port, address="127.0.0.1")
    taken = socket.getsockname()[1]
    shared = {"api": api, "hosts": {f"127.0.0.1:{taken}", f"localhost:{taken}"}}
    routes: list[Any] = [
        (r"/bot([^/]+)/(\w+)", Method, shared),
        (r"/file/bot([^/]+)/(.+)", File, shared),
        *page_routes(shared, skip),
    ]
    # Refusals are part of the play and no news for a terminal; what breaks in a handler is logged all the same.
    application = tornado.web.Application(routes, log_function=lambda handler: None)
    http = tornado.httpserver.HTTPServer(application, max_body_size=_UPLOAD_LIMIT)
    http.add_sockets([socket])
    return Server(f"http://127.0.0.1:{taken}", http, asyncio.ensure_future(push(api)))


class Method(Guarded):
    """/bot<token>/<method>: parameters in the query, a form, a multipart form or JSON."""

    async def post(self, token: str, method: str) -> None:
        """Answer the call; the status is the envelope's error code."""
        if token != self.api.token:
            return self._reply(refusal_for(401).envelope())
        try:
            params, files = self._params(), self._files()
        except (ValueError, TypeError):
            return self._reply(refusal_for(400).envelope())
        files_named = {f"{field}.name": name for field, (name, _) in files.items()}
        contents = {field: data for field, (_, data) in files.items()}
        try:
            return self._reply(await self.api.call(method, params | files_named, contents))
        except Lost:
            return self.detach().close()

    get = post

    def _reply(self, answer: dict[str, Any]) -> None:
        self.set_status(answer.get("error_code", 200))
        self.write(answer)

    def _params(self) -> dict[str, Any]:
        params: dict[str, Any] = {k: v[-1].decode() for k, v in self.request.arguments.items()}
        if self.request.headers.get("Content-Type", "").startswith("application/json"):
            params |= dict(json.loads(self.request.body or b"{}"))
        return params

    def _files(self) -> dict[str, tuple[str, bytes]]:
        return {field: (sent[-1].filename, sent[-1].body) for field, sent in self.request.files.items()}


class File(Guarded):
    """/file/bot<token>/<path>: the bytes of a file."""

    async def get(self, token: str, path: str) -> None:
        """Send the file, 401 on a wrong token, 404 when there is none."""
        data = self.api.file(path)
        if token != self.api.token or data is None:
            self.set_status(404 if token == self.api.token else 401)
            return
        self.set_header("Content-Type", "application/octet-stream")
        self.write(data)
