"""One call as it arrived: parameters may be JSON values or, as over HTTP, strings holding JSON."""

import json
from dataclasses import dataclass, field
from typing import Any, Final

from bot.local.markup import Marked, read_html, utf16_units
from bot.local.refusals import bad

Button = tuple[str, str]
Buttons = tuple[tuple[Button, ...], ...]

# Limits of the Bot API: https://core.telegram.org/bots/api (sendMessage, sendPhoto, InlineKeyboardButton).
TEXT_LIMIT: Final = 4096  # UTF-16 units
CAPTION_LIMIT: Final = 1024  # UTF-16 units
DATA_LIMIT: Final = 64  # bytes of UTF-8
# Found by others, not written there: https://github.com/tginfo/Telegram-Limits/issues/228 and /187
BUTTONS_LIMIT: Final = 100
KEYBOARD_LIMIT: Final = 10_000  # bytes


@dataclass(frozen=True, slots=True)
class Request:
    """The parameters of a call and its uploads by field; an upload's name is the parameter `<field>.name`."""

    params: dict[str, Any]
    files: dict[str, bytes] = field(default_factory=dict)

    def whole(self, name: str, default: int | None = None) -> int:
        """Return a whole number, or refuse with 400."""
        value = self.params.get(name, default)
        try:
            return int(value)  # type: ignore[arg-type]  # None is refused below, like any other non-number
        except (TypeError, ValueError):
            raise bad(f"{name} must be a whole number") from None

    def flag(self, name: str) -> bool:
        """Return a yes or no; absent is no."""
        return str(self.params.get(name, "")).lower() in {"true", "1"}

    def structure(self, name: str) -> Any:
        """Return an object or list, or None when absent."""
        value = self.params.get(name)
        if not isinstance(value, str):
            return value
        try:
            return json.loads(value) if value else None
        except ValueError:
            raise _no_object(name) from None

    def mapping(self, name: str) -> dict[str, Any]:
        """Return an object; absent is empty."""
        value = self.structure(name) or {}
        if not isinstance(value, dict):
            raise _no_object(name)
        return value

    def text(self, name: str = "text") -> Marked:
        """Return message text, refused when empty or over the limit."""
        marked = self._marked(name)
        if not marked.text:
            raise bad("message text is empty")
        if utf16_units(marked.text) > TEXT_LIMIT:
            raise bad("message is too long")
        return marked

    def caption(self) -> Marked:
        """Return the caption of a picture or document; absent is empty."""
        marked = self._marked("caption")
        if utf16_units(marked.text) > CAPTION_LIMIT:
            raise bad("message caption is too long")
        return marked

    def _marked(self, name: str) -> Marked:
        words = str(self.params.get(name, ""))
        match str(self.params.get("parse_mode") or "").lower():
            case "":
                return Marked(words.strip())
            case "html":
                return read_html(words)
            case _:
                # The other ways are not read here; shown with their marks they would mislead.
                raise bad("unsupported parse_mode")

    def buttons(self) -> Buttons:
        """Return the rows of the inline keyboard; none is an empty tuple."""
        rows = self.mapping("reply_markup").get("inline_keyboard") or ()
        try:
            read = [tuple(_button(raw) for raw in row) for row in rows]
        except (TypeError, AttributeError):
            raise _no_object("reply_markup") from None
        if sum(len(row) for row in read) > BUTTONS_LIMIT or _size(rows) > KEYBOARD_LIMIT:
            raise bad("reply markup is too long")
        return tuple(row for row in read if row)

    def inline_only(self) -> Buttons:
        """Return the inline keyboard for an edit, which can carry no other."""
        if set(self.mapping("reply_markup")) - {"inline_keyboard"}:
            raise bad("inline keyboard expected")
        return self.buttons()

    def keyboard(self) -> tuple[str, ...] | None:
        """Return the labels of a keyboard under the writing line; empty takes it away, None leaves it alone."""
        markup = self.mapping("reply_markup")
        if markup.get("remove_keyboard"):
            return ()
        if "keyboard" not in markup:
            return None
        try:
            return tuple(_label(raw) for row in markup["keyboard"] for raw in row)
        except TypeError:
            raise _no_object("reply_markup") from None

    def upload(self, name: str) -> bytes | None:
        """Return the bytes uploaded as this field, directly or by attach://, or None."""
        value = str(self.params.get(name, ""))
        data = self.files.get(value.removeprefix("attach://")) if value else self.files.get(name)
        if data == b"":
            raise bad("file must be non-empty")
        return data


def _no_object(name: str) -> Exception:
    return bad(f"can't parse {name} JSON object")


def _size(rows: Any) -> int:
    """In bytes, as the server keeps it."""
    return len(json.dumps(rows, ensure_ascii=False, separators=(",", ":")).encode(errors="replace"))


def _label(raw: Any) -> str:
    label = raw.get("text") if isinstance(raw, dict) else raw
    if not isinstance(label, str) or not label:
        raise bad("can't parse keyboard button: field text must not be empty")
    return label


def _button(raw: dict[str, Any]) -> Button:
    label = str(raw.get("text", ""))
    if not label:
        raise bad("can't parse inline keyboard button: field text must not be empty")
    if "callback_data" not in raw:
        raise bad("can't parse inline keyboard button: Text buttons are unallowed in the inline keyboard")
    data = str(raw["callback_data"])
    if not 1 <= len(data.encode()) <= DATA_LIMIT:
        raise bad("BUTTON_DATA_INVALID")
    return label, data
