"""Words of a dialogue into letters of the outbox: buttons get opaque tokens here."""

import base64
import re
from datetime import datetime

from conversations.protocol import Choice, Say
from core.store import mail, threads
from core.store.connection import Store
from core.store.mail import Letter, Priority
from core.store.people import Person
from core.store.threads import Button

# UTF-16 units: https://core.telegram.org/bots/api#sendmessage and #sendphoto
LONGEST = 4096
LONGEST_CAPTION = 1024
LONGEST_SIGN = 64  # characters looked at behind the cut, to see whether a sign goes on there; own choice

OF_THE_ENGINE = "menu:"  # how the values of the engine's own buttons begin


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
    parts = split(say.text, LONGEST if say.picture is None else LONGEST_CAPTION)
    for part in parts[:-1]:
        mail.post(store, Letter(person.chat, {"text": part}, "message", priority, person.id), now)
    tokens = threads.add_buttons(store, [_button(person, choice, say, thread) for choice in say.choices], now)
    rows = [[choice.label, token] for choice, token in zip(say.choices, tokens, strict=True)]
    body = {"text": parts[-1], "buttons": rows, "quiet": say.quiet}
    if say.picture is not None:
        body["picture"] = say.picture
    if say.clip is not None:
        body["clip"] = say.clip
    kind = "photo" if say.picture is not None else "clip" if say.clip is not None else "message"
    mail.post(store, Letter(person.chat, body, kind, priority, person.id, thread, say.asks), now)


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
