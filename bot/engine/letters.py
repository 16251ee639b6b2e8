"""Words of a dialogue into letters of the outbox: buttons get opaque tokens here."""

import base64
import re
from collections.abc import Sequence
from datetime import datetime

from conversations.protocol import Choice, Say
from conversations.words import engine as words
from core.store import mail, threads
from core.store.connection import Store
from core.store.mail import Letter, Priority
from core.store.people import Person
from core.store.threads import Button

# UTF-16 units: https://core.telegram.org/bots/api#sendmessage and #sendphoto
LONGEST = 4096
LONGEST_CAPTION = 1024
LONGEST_SIGN = 64  # characters looked at behind the cut, to see whether a sign goes on there; own choice

# 100 buttons and about 10 kB are the server's, which its documentation does not say:
# https://github.com/tginfo/Telegram-Limits/issues/228 and /187
MOST_BUTTONS = 100
KEYBOARD_BYTES = 9000
# around a label and a token: {"text":"","callback_data":""} in a row of its own
BUTTON_BYTES = 35

OF_THE_ENGINE = "menu:"  # how the values of the engine's own buttons begin

Row = tuple[str, str]  # a label and its token


def post(
    store: Store,
    person: Person,
    say: Say,
    now: datetime,
    priority: Priority = Priority.TALK,
    thread: int | None = None,
) -> None:
    """Put one message for a known person into the outbox; nothing for a person without a chat."""
    if person.chat is None:
        return
    captioned = say.picture is not None or say.clip is not None
    parts = split(say.text, LONGEST_CAPTION if captioned else LONGEST)
    for part in parts[:-1]:
        mail.post(store, Letter(person.chat, {"text": part}, "message", priority, person.id), now)
    tokens = threads.add_buttons(store, [_button(person, choice, say, thread) for choice in say.choices], now)
    rows = [(choice.label, token) for choice, token in zip(say.choices, tokens, strict=True)]
    first, *more = keyboards(rows)
    body = {"text": parts[-1], "buttons": first, "quiet": say.quiet}
    if say.picture is not None:
        body["picture"] = say.picture
    if say.clip is not None:
        body["clip"] = say.clip
    kind = "photo" if say.picture is not None else "clip" if say.clip is not None else "message"
    mail.post(store, Letter(person.chat, body, kind, priority, person.id, thread, say.asks), now)
    for keyboard in more:
        body = {"text": words.MORE_BUTTONS, "buttons": keyboard, "quiet": True}
        mail.post(store, Letter(person.chat, body, "message", priority, person.id, thread, say.asks), now)


def post_document(
    store: Store, person: Person, name: str, data: bytes, text: str, now: datetime, priority: Priority
) -> None:
    """Put a file into the outbox, with a line under it; nothing for a person without a chat."""
    if person.chat is None:
        return
    body = {"text": text, "name": name, "data": base64.b64encode(data).decode()}
    mail.post(store, Letter(person.chat, body, "document", priority, person.id), now)


def _button(person: Person, choice: Choice, say: Say, thread: int | None) -> Button:
    if choice.value.startswith(OF_THE_ENGINE):  # it outlives the dialogue that offers it
        return Button(person.id, None, None, choice.value)
    return Button(person.id, thread, say.asks, choice.value)


def keyboards(rows: Sequence[Row]) -> list[list[Row]]:
    """The buttons in as few keyboards as the transport takes; [[]] for none."""
    found: list[list[Row]] = [[]]
    left = KEYBOARD_BYTES
    for row in rows:
        size = sum(len(part.encode()) for part in row) + BUTTON_BYTES
        if len(found[-1]) == MOST_BUTTONS or (found[-1] and size > left):
            found.append([])
            left = KEYBOARD_BYTES
        found[-1].append(row)
        left -= size
    return found


def split(text: str, longest: int = LONGEST) -> list[str]:
    """The text in pieces of at most `longest` UTF-16 units: cut at line ends, else at spaces, else between signs.

    Nothing but the white space at a cut is lost, and no sign that is made of several characters is torn.
    """
    pieces = []
    while units(text) > longest:
        cut = _cut(text, longest)
        pieces.append(text[:cut].rstrip())
        text = text[cut:].lstrip()
    return [piece for piece in (*pieces, text) if piece] or [text]


def units(text: str) -> int:
    """Length as the transport counts it."""
    return len(text.encode("utf-16-le")) // 2


def _cut(text: str, longest: int) -> int:
    """Where the first piece ends, in characters."""
    fitting = _fitting(text, longest)
    room = text[: fitting + 1]  # a space right behind the last character that fits is as good
    half = fitting // 2  # what has no end in the second half is no line, and no word
    line_end = room.rfind("\n", half)
    if line_end > 0:
        return line_end
    spaces = [match.start() for match in re.finditer(r"\s", room[half:])]
    return half + spaces[-1] if spaces and half + spaces[-1] > 0 else _between_signs(text, fitting)


def _fitting(text: str, longest: int) -> int:
    """How many characters fit: at least half as many as units, at most as many."""
    low, high = longest // 2, min(longest, len(text))
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if units(text[:middle]) <= longest else (low, middle - 1)
    return low


def _between_signs(text: str, fitting: int) -> int:
    """The last place between two signs (an emoji of several characters is one); a giant sign is cut anyway."""
    import regex  # only where a word is longer than a message

    signs = regex.finditer(r"\X", text[: fitting + LONGEST_SIGN])
    return max((sign.end() for sign in signs if sign.end() <= fitting), default=fitting)
