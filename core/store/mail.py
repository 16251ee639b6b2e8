"""What is to go out: a table that makes delivery survive a crash, as `core.store.inbox` does for what came in."""

import json
from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime
from enum import IntEnum
from sqlite3 import Row
from typing import Any

from core.store.connection import Store
from core.store.times import moment, ms

# A letter with a code in it, which is stored hashed and stands nowhere in plain words once the letter is out.
INVITATION = "invitation"


class Priority(IntEnum):
    """Lower goes first. Stored."""

    ALERT = 0
    SESSION = 1
    TALK = 2
    REMINDER = 3
    DIGEST = 4


@dataclass(frozen=True, slots=True)
class Letter:
    """One thing to send: `kind` "message", "photo", "document" or "answer"; `body` its parameters."""

    chat: int
    body: dict[str, Any]
    kind: str = "message"
    priority: Priority = Priority.TALK
    person: int | None = None
    thread: int | None = None
    question: str | None = None


@dataclass(frozen=True, slots=True)
class Waiting:
    """A letter that has not gone out yet."""

    id: int
    letter: Letter
    attempts: int
    created_at: datetime


_WAITS = "sent_at IS NULL AND dropped IS NULL"


def post(store: Store, letter: Letter, now: datetime) -> int:
    """Put a letter into the outbox; it goes out after the commit, and takes along what waits before it in its chat."""
    if Priority.ALERT < letter.priority < Priority.REMINDER:
        store.execute(
            f"UPDATE outbox INDEXED BY idx_outbox_waiting SET priority = ? WHERE chat = ? AND priority > ? AND {_WAITS}",
            [int(letter.priority), letter.chat, int(letter.priority)],
        )
    return store.added(
        "INSERT INTO outbox (person, chat, priority, kind, body, created_at, not_before,"
        " attempts, thread, question) VALUES (?, ?, ?, ?, ?, ?, ?, 0, ?, ?)",
        [
            letter.person,
            letter.chat,
            int(letter.priority),
            letter.kind,
            json.dumps(letter.body, ensure_ascii=False),
            ms(now),
            ms(now),
            letter.thread,
            letter.question,
        ],
    )


# The next letter of each chat: alerts overtake, the rest in order. INDEXED BY: without statistics SQLite takes
# the index over all letters ever sent to the chat.
_HEADS = (
    f"{_WAITS} AND id = coalesce("
    f" (SELECT min(id) FROM outbox INDEXED BY idx_outbox_waiting WHERE chat = o.chat AND priority = 0 AND {_WAITS}),"
    f" (SELECT min(id) FROM outbox INDEXED BY idx_outbox_next WHERE chat = o.chat AND {_WAITS}))"
)


def waiting(
    store: Store,
    now: datetime,
    limit: int = 1000,
    among: Collection[Priority] = tuple(Priority),
    besides: Collection[int] = (),
) -> list[Waiting]:
    """The next letter of each chat that may go now, by priority. `among`: neighbouring priorities.

    `besides`: letters that are on their way.
    """
    rows = store.rows(
        "SELECT * FROM outbox AS o INDEXED BY idx_outbox_order"
        f" WHERE priority BETWEEN ? AND ? AND {_HEADS} AND not_before <= ?"
        " AND id NOT IN (SELECT value FROM json_each(?)) ORDER BY priority, id LIMIT ?",
        [int(min(among)), int(max(among)), ms(now), json.dumps([*besides]), limit],
    )
    return [_waiting(row) for row in rows]


def next_letter_at(store: Store, after: datetime) -> datetime | None:
    """The next time after this at which a letter may be tried; what stands behind another does not count."""
    row = store.row(
        "SELECT min(not_before) AS at FROM outbox AS o INDEXED BY idx_outbox_order"
        f" WHERE not_before > ? AND {_HEADS}",
        [ms(after)],
    )
    return None if row is None or row["at"] is None else moment(row["at"])


def _waiting(row: Row) -> Waiting:
    letter = Letter(
        row["chat"],
        json.loads(row["body"]),
        row["kind"],
        Priority(row["priority"]),
        row["person"],
        row["thread"],
        row["question"],
    )
    return Waiting(row["id"], letter, row["attempts"], moment(row["created_at"]))


def may_be_out(store: Store) -> None:
    """At a start: what waits untried may have gone out in the last moment of a killed program, unrecorded.

    Behind a letter that failed before, nothing of the same chat was on its way.
    """
    failed = (
        "SELECT 1 FROM outbox AS e INDEXED BY idx_outbox_next"
        " WHERE e.chat = o.chat AND e.id < o.id AND e.attempts > 0 AND e.sent_at IS NULL AND e.dropped IS NULL"
    )
    store.execute(
        "UPDATE outbox SET maybe_out = 1 WHERE id IN (SELECT id FROM outbox AS o INDEXED BY idx_outbox_order"
        f" WHERE {_WAITS} AND question IS NOT NULL AND attempts = 0 AND NOT EXISTS ({failed}))"
    )


def waits(store: Store, chat: int, kind: str) -> bool:
    """Whether a letter of this kind has not gone out yet."""
    row = store.row(f"SELECT 1 FROM outbox WHERE chat = ? AND kind = ? AND {_WAITS} LIMIT 1", [chat, kind])
    return row is not None


def sent(store: Store, letter: int, message: int | None, now: datetime, secret: bool = False) -> None:
    """The letter is out, as message number `message`; the words of a `secret` one are kept no longer."""
    forgotten = ", body = NULL" if secret else ""
    store.execute(
        f"UPDATE outbox SET sent_at = ?, message = ?{forgotten} WHERE id = ?", [ms(now), message, letter]
    )


def later(store: Store, letter: int, not_before: datetime) -> None:
    """Try the letter again, not before this time."""
    store.execute(
        "UPDATE outbox SET attempts = attempts + 1, not_before = ? WHERE id = ?", [ms(not_before), letter]
    )


def as_ordered(store: Store, letter: int, not_before: datetime) -> None:
    """The server said when to try again: a wait, and no failed try."""
    store.execute("UPDATE outbox SET attempts = 0, not_before = ? WHERE id = ?", [ms(not_before), letter])


def alerts_now(store: Store, now: datetime) -> None:
    """Alerts that wait because a try failed may go at once; those that the server told to wait may not."""
    store.execute(
        "UPDATE outbox INDEXED BY idx_outbox_order SET attempts = 0, not_before = ?"
        f" WHERE priority = 0 AND attempts > 0 AND not_before > ? AND {_WAITS}",
        [ms(now), ms(now)],
    )


def drop(store: Store, letter: int, why: str) -> None:
    """The letter can never be sent."""
    store.execute("UPDATE outbox SET dropped = ? WHERE id = ?", [why, letter])


def newest_buttons(store: Store, chat: int, last_only: bool) -> tuple[int | None, list[tuple[str, str]]]:
    """(thread, (label, token) of each button) of the newest words with buttons; thread None: the engine's own.

    With `last_only` only if no words without buttons came after them.
    """
    some = "" if last_only else " AND json_array_length(body, '$.buttons') > 0"
    row = store.row(
        "SELECT thread, body FROM outbox WHERE chat = ? AND json_type(body, '$.buttons') = 'array'"
        f"{some} ORDER BY id DESC LIMIT 1",
        [chat],
    )
    if row is None:
        return None, []
    return row["thread"], [(label, token) for label, token in json.loads(row["body"])["buttons"]]


def question_of(store: Store, chat: int, message: int) -> tuple[int | None, str | None]:
    """(thread, question) of a message of ours that somebody replied to."""
    row = store.row("SELECT thread, question FROM outbox WHERE chat = ? AND message = ?", [chat, message])
    return (None, None) if row is None else (row["thread"], row["question"])


def question_sent_at(
    store: Store, chat: int, message: int | None, thread: int, question: str
) -> datetime | None:
    """When a question went out: the safe (early) bound for what the client did after it.

    By the message that was tapped; a copy whose number we never learned went out after the first was written.
    """
    row = store.row(
        "SELECT created_at, CASE WHEN message = ? THEN sent_at END AS sent_at FROM outbox"
        " WHERE chat = ? AND thread = ? AND question = ? ORDER BY message IS ? DESC, id LIMIT 1",
        [message, chat, thread, question, message],
    )
    return None if row is None else moment(row["sent_at"] or row["created_at"])


def unseen(store: Store, chat: int, thread: int, message: int) -> frozenset[str]:
    """Questions of the thread of which no copy came before message number `message`, or went out at all.

    One chat has one row of numbers for both sides, in the order in which the server got them; no clock is needed.
    A copy that may have gone out just before a kill counts as seen.
    """
    later = store.rows(
        "SELECT question FROM outbox WHERE chat = ? AND message > ? AND thread = ? UNION"
        f" SELECT question FROM outbox WHERE chat = ? AND thread = ? AND {_WAITS}",
        [chat, message, thread, chat, thread],
    )
    asked = {row["question"] for row in later if row["question"] is not None}
    earlier = "SELECT 1 FROM outbox WHERE thread = ? AND question = ? AND (message < ? OR maybe_out) LIMIT 1"
    return frozenset(
        question for question in asked if store.row(earlier, [thread, question, message]) is None
    )


def asked_later(store: Store, chat: int, thread: int, message: int) -> bool:
    """Whether the newest question of the thread is one that this message cannot answer (`unseen`)."""
    row = store.row(
        "SELECT question FROM outbox WHERE thread = ? AND question IS NOT NULL ORDER BY id DESC LIMIT 1",
        [thread],
    )
    return row is not None and row["question"] in unseen(store, chat, thread, message)
