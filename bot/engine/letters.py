"""Words of a dialogue into letters of the outbox: buttons get opaque tokens here."""

import base64
from datetime import datetime

from conversations.protocol import Choice, Say
from core.store import mail, threads
from core.store.connection import Store
from core.store.mail import Letter, Priority
from core.store.people import Person
from core.store.threads import Button

LONGEST = 4000  # characters; the transport's own limit is 4096 UTF-16 units

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
    parts = split(say.text)
    for part in parts[:-1]:
        mail.post(store, Letter(person.chat, {"text": part}, "message", priority, person.id), now)
    rows = [[choice.label, _token(store, person, choice, say, thread, now)] for choice in say.choices]
    body = {"text": parts[-1], "buttons": rows, "quiet": say.quiet}
    if say.picture is not None:
        body["picture"] = say.picture
    kind = "photo" if say.picture is not None else "message"
    mail.post(store, Letter(person.chat, body, kind, priority, person.id, thread, say.asks), now)


def post_document(
    store: Store, person: Person, name: str, data: bytes, text: str, now: datetime, priority: Priority
) -> None:
    """Put a file into the outbox, with a line under it; nothing for a person without a chat."""
    if person.chat is None:
        return
    body = {"text": text, "name": name, "data": base64.b64encode(data).decode()}
    mail.post(store, Letter(person.chat, body, "document", priority, person.id), now)


def _token(store: Store, person: Person, choice: Choice, say: Say, thread: int | None, now: datetime) -> str:
    if choice.value.startswith(OF_THE_ENGINE):  # it outlives the dialogue that offers it
        return threads.add_button(store, Button(person.id, None, None, choice.value), now)
    return threads.add_button(store, Button(person.id, thread, say.asks, choice.value), now)


def split(text: str) -> list[str]:
    """The text in pieces that can be sent, cut at line ends, else at spaces, else between characters."""
    pieces = []
    while len(text.encode("utf-16-le")) // 2 > LONGEST:
        cut = max(text.rfind("\n", 0, LONGEST // 2), text.rfind(" ", 0, LONGEST // 2))
        cut = cut if cut > 0 else LONGEST // 2
        pieces.append(text[:cut])
        text = text[cut:].lstrip()
    return [*pieces, text]
