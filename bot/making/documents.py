"""The bytes of a letter's document: what it carries itself, or a person's records as they are when it goes out."""

import base64
import json
from collections.abc import Callable
from datetime import datetime
from typing import Any

from conversations.words.records import readable
from core.store import people, tables
from core.store.connection import Store
from core.store.mail import Letter


def content(store: Store, letter: Letter, now: datetime) -> bytes:
    """What to upload. Raises KeyError for a letter without content."""
    form = letter.body.get("records")
    if form is None:
        return base64.b64decode(letter.body["data"])
    assert letter.person is not None, "records belong to somebody"
    return RECORDS[form](store, letter.person, now)


def everything(store: Store, person: int) -> dict[str, list[dict[str, Any]]]:
    """All rows about a person by table; buttons are left out, they are only random tokens."""
    found = {"person": list(tables.rows(store, "person", person))}
    own = {name: list(tables.rows(store, name, person)) for name in tables.personal(store)}
    return found | own | tables.elsewhere(store, person)


def _as_text(store: Store, person: int, now: datetime) -> bytes:
    coaches = {coach.id: coach.name for coach in people.coaches(store)}
    zone = people.by_id(store, person).zone
    return readable(everything(store, person), coaches, zone, now).encode()


def _as_json(store: Store, person: int, now: datetime) -> bytes:
    # "thread" holds what its dialogue has noted so far, as JSON in text.
    found = everything(store, person)
    return json.dumps(found, indent=2, ensure_ascii=False, default=lambda at: at.isoformat()).encode()


RECORDS: dict[str, Callable[[Store, int, datetime], bytes]] = {"text": _as_text, "json": _as_json}
