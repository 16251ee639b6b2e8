"""The page in the browser and what it asks for: every phone side by side, and the clock."""

import json
from base64 import b64decode
from collections.abc import Awaitable, Callable
from contextlib import suppress
from pathlib import Path
from typing import Any, Final

import tornado.web

from bot.local.api import LocalApi
from bot.local.guard import Guarded, TakesJson
from bot.local.messages import ChatMessage, Kind
from bot.local.phone import Phone

_HERE: Final = Path(__file__).parent
_ASKS_AGAIN_AFTER: Final = 20.0  # seconds a page waits for a change before it asks anew; own choice
_NAME_LIMIT: Final = 64  # letters of a first name: from memory of how the real one cuts it
_JS: Final = "text/javascript"
_TYPES: Final = {
    "page.html": "text/html",
    "page.css": "text/css",
    "page.js": _JS,
    "lines.js": _JS,
    "tools.js": _JS,
}
# Nothing from elsewhere may load, and no other page may frame this one.
_POLICY: Final = "default-src 'self'; img-src 'self' data:; frame-ancestors 'none'"


class Static(Guarded):
    """The page, its style and its script; a link elsewhere may lead here."""

    for_all_pages = True

    async def get(self, name: str) -> None:
        """Send one of the files."""
        name = name or "page.html"
        self.set_header("Content-Type", f"{_TYPES[name]}; charset=utf-8")
        self.set_header("Content-Security-Policy", _POLICY)
        self.write((_HERE / name).read_bytes())


class State(Guarded):
    """All the page shows, as JSON."""

    def initialize(self, api: LocalApi, hosts: set[str], can_skip: bool = False) -> None:
        """Take what all handlers share, and whether there is a clock to move."""
        super().initialize(api, hosts)
        self.can_skip = can_skip

    async def get(self) -> None:
        """Answer once there is a version other than the one the page has, or after a while anyway."""
        known = int(self.get_query_argument("version", "-1"))
        # After a while the time shown may have moved on: answer all the same.
        with suppress(TimeoutError):
            await self.api.wait(lambda: self.api.version != known, _ASKS_AGAIN_AFTER)
        self.write(self._state())

    def _state(self) -> dict[str, Any]:
        phones = [_phone(phone) for phone in self.api.phones.values()]
        time = self.api.now().strftime("%a %d %b %H:%M")
        return {"version": self.api.version, "time": time, "can_skip": self.can_skip, "phones": phones}


class Act(TakesJson):
    """/phone/<number>/<act>: what the owner of a phone does."""

    async def post(self, user_id: str, act: str) -> None:
        """Do it; 400 with the reason when the phone cannot, 404 when there is no such phone."""
        phone = self.api.phones.get(int(user_id))
        if phone is None:
            raise tornado.web.HTTPError(404)
        try:
            _do(phone, act, dict(json.loads(self.request.body)))
        except (ValueError, TypeError, KeyError) as error:
            self.set_status(400)
            self.write({"error": str(error)})
        else:
            self.write({})


class NewPhone(TakesJson):
    """/phone/add: one more person."""

    async def post(self) -> None:
        """Add a phone with this name and answer with its number; 400 without a name."""
        name = str(dict(json.loads(self.request.body)).get("name", "")).strip()[:_NAME_LIMIT]
        if not name:
            raise tornado.web.HTTPError(400)
        number = max(self.api.phones, default=0) + 1
        self.api.add_phone(number, name)
        self.write({"id": number})


class Attachment(Guarded):
    """A picture or a document of a message."""

    async def get(self, user_id: str, message_id: str) -> None:
        """Send the bytes; 404 when the message has none."""
        try:
            message = self.api.phones[int(user_id)].message(int(message_id))
        except (KeyError, ValueError):
            raise tornado.web.HTTPError(404) from None
        if message.document is not None and message.kind is not Kind.AUDIO:
            self.set_header("Content-Disposition", "attachment")
        self.set_header("Content-Type", _type_of(message))
        self.write(message.photo or message.document or b"")


class Clock(TakesJson):
    """Moves the clock on to what comes next."""

    def initialize(
        self, api: LocalApi, hosts: set[str], skip: Callable[[], Awaitable[str]] | None = None
    ) -> None:
        """Take what all handlers share, and the way to move the clock."""
        super().initialize(api, hosts)
        self.skip = skip

    async def post(self) -> None:
        """Move it and answer with what it came to; 404 when the clock cannot be moved."""
        if self.skip is None:
            raise tornado.web.HTTPError(404)
        came_to = await self.skip()
        self.api.touch()
        self.write({"came_to": came_to})


def page_routes(shared: dict[str, Any], skip: Callable[[], Awaitable[str]] | None) -> list[Any]:
    """Return the routes of the page for tornado."""
    return [
        (r"/(page\.css|(?:page|lines|tools)\.js|)", Static, shared),
        (r"/phone/state", State, shared | {"can_skip": skip is not None}),
        (r"/phone/add", NewPhone, shared),
        (r"/phone/(\d+)/(type|tap|edit|send)", Act, shared),
        (r"/phone/(\d+)/attachment/(\d+)", Attachment, shared),
        (r"/clock/skip", Clock, shared | {"skip": skip}),
    ]


def _do(phone: Phone, act: str, given: dict[str, Any]) -> None:
    match act:
        case "type":
            phone.types(str(given["text"]), given.get("reply_to"))
        case "tap":
            phone.taps(int(given["message"]), str(given["data"]))
        case "edit":
            phone.edits(int(given["message"]), str(given["text"]))
        case "send":
            phone.sends(str(given["kind"]), b64decode(str(given.get("data", ""))))
        case _:
            raise ValueError(f"act: {act} is unknown")


def _phone(phone: Phone) -> dict[str, Any]:
    messages = [_message(message) for message in phone.history]
    return {
        "id": phone.user_id,
        "name": phone.name,
        "messages": messages,
        "notices": phone.notices,
        "keyboard": phone.keyboard,
    }


def _message(message: ChatMessage) -> dict[str, Any]:
    return {
        "id": message.id,
        "mine": message.mine,
        "kind": message.kind,
        "text": message.text,
        "day": message.at.strftime("%A %d %B"),
        "time": message.at.strftime("%H:%M"),
        "buttons": message.buttons,
        "document": message.document_name,
        "has_file": bool(message.document),
        "edited": message.edited is not None,
        "quiet": message.quiet,
    }


def _type_of(message: ChatMessage) -> str:
    picture = message.photo
    if picture is None:
        return "audio/wav" if message.kind is Kind.AUDIO else "application/octet-stream"
    return "image/png" if picture.startswith(b"\x89PNG") else "image/jpeg"
