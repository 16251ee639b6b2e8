"""One call as it arrived: parameters may be JSON values or, as over HTTP, strings holding JSON."""

import json
from dataclasses import dataclass, field
from typing import Any, Final

from bot.loopback.refusals import bad

Button = tuple[str, str]
Buttons = tuple[tuple[Button, ...], ...]

# Limits of the Bot API: https://core.telegram.org/bots/api (sendMessage, sendPhoto, InlineKeyboardButton).
TEXT_LIMIT: Final = 4096  # UTF-16 units
CAPTION_LIMIT: Final = 1024  # UTF-16 units
DATA_LIMIT: Final = 64  # bytes of UTF-8


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
            raise bad(f"can't parse {name} JSON object") from None

    def text(self, name: str = "text") -> str:
        """Return message text, refused when empty or over the limit."""
        text = self._plain(name)
        if not text:
            raise bad("message text is empty")
        if utf16_units(text) > TEXT_LIMIT:
            raise bad("message is too long")
        return text

    def caption(self) -> str:
        """Return the caption of a picture or document; absent is empty."""
        caption = self._plain("caption")
        if utf16_units(caption) > CAPTION_LIMIT:
            raise bad("message caption is too long")
        return caption

    def _plain(self, name: str) -> str:
        # Marked-up text would be shown with its marks here and without them elsewhere: better refused.
        if self.params.get("parse_mode"):
            raise bad("unsupported parse_mode")
        return str(self.params.get(name, "")).strip()

    def buttons(self) -> Buttons:
        """Return the rows of the inline keyboard; none is an empty tuple."""
        markup = self.structure("reply_markup")
        if not markup:
            return ()
        if not isinstance(markup, dict) or set(markup) != {"inline_keyboard"}:
            raise bad("only an inline keyboard can be sent here")
        rows = (tuple(map(_button, row)) for row in markup["inline_keyboard"])
        return tuple(row for row in rows if row)

    def upload(self, name: str) -> bytes | None:
        """Return the bytes uploaded as this field, directly or by attach://, or None."""
        value = str(self.params.get(name, ""))
        data = self.files.get(value.removeprefix("attach://")) if value else self.files.get(name)
        if data == b"":
            raise bad("file must be non-empty")
        return data


def utf16_units(text: str) -> int:
    """Return the length as the API counts it: a sign outside the basic plane counts two."""
    return len(text.encode("utf-16-le")) // 2


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
