"""Updates as the server gives them, and what was answered to whom."""

from itertools import count
from typing import Any

from core.store import people
from tests.practice import COACH, START, Practice

NUMBERS = count(10**12)
GROUP = -100123


def comes(practice: Practice, **body: Any) -> None:
    """An update as the server gives it."""
    practice.stage.engine.receive([(next(NUMBERS), body)])
    practice.settle()


def message(sender: int, text: str, **more: Any) -> dict[str, Any]:
    at = int(START.timestamp())
    user = {"id": sender, "is_bot": False, "first_name": "X"}
    chat = {"id": sender, "type": "private"}
    return {"message_id": next(NUMBERS) % 10**9, "date": at, "chat": chat, "from": user, "text": text} | more


def letters(practice: Practice, chat: int) -> list[str]:
    rows = practice.stage.engine.store.rows(
        "SELECT json_extract(body, '$.text') AS t FROM outbox WHERE chat = ?", [chat]
    )
    return [row["t"] for row in rows]


def invitation(practice: Practice) -> str:
    store = practice.stage.engine.store
    coach = people.by_chat(store, COACH)
    assert coach is not None
    code = "ABCDEFGHIJKLMNOPQRSTUVWX23"
    people.invite(store, coach.id, "Milo", code, practice.stage.clock.now())
    return code
