"""Conversations under way and the buttons that lead back into them.

A person may have several threads; the latest one that wants it holds the floor and gets the typed words.
"""

import secrets
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from sqlite3 import Row

from core.store.connection import Store
from core.store.times import due_ms, maybe_moment, ms

# SQLite knows no better without statistics than to take the index over all threads, most of which are over.
_LIVE = "thread INDEXED BY idx_thread_live"


@dataclass(frozen=True, slots=True)
class Thread:
    """One dialogue with one person. `state` is the dialogue's own JSON, None: over."""

    id: int
    person: int
    dialogue: str
    state: str | None
    wake_at: datetime | None
    failures: int
    begun_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Button:
    """What a tap means. `thread` None: the engine's own button, with its act in `value`."""

    person: int
    thread: int | None
    question: str | None
    value: str


def _thread(row: Row) -> Thread:
    wake_at = maybe_moment(row["wake_at"])
    begun_at = maybe_moment(row["begun_at"])
    return Thread(row["id"], row["person"], row["dialogue"], row["state"], wake_at, row["failures"], begun_at)


def open_thread(store: Store, person: int, dialogue: str, brief: str, floor: bool, now: datetime) -> int:
    """A new thread's id. It has no state until its first turn is kept."""
    top = store.row("SELECT max(floor) AS top FROM thread WHERE person = ?", [person])
    place = ((top["top"] if top else None) or 0) + 1 if floor else 0
    return store.added(
        "INSERT INTO thread (person, dialogue, brief, floor, begun_at, failures) VALUES (?, ?, ?, ?, ?, 0)",
        [person, dialogue, brief, place, ms(now)],
    )


def keep(store: Store, thread: int, state: str | None, wake_at: datetime | None) -> None:
    """The outcome of a turn."""
    store.execute(
        "UPDATE thread SET state = ?, wake_at = ?, failures = 0 WHERE id = ?",
        [state, due_ms(wake_at) if state is not None else None, thread],
    )


def failed(store: Store, thread: int, again_at: datetime) -> None:
    """A timer of this thread failed; it is tried again later, with a growing gap."""
    store.execute(
        "UPDATE thread SET failures = failures + 1, wake_at = ? WHERE id = ?", [ms(again_at), thread]
    )


def by_id(store: Store, thread: int) -> Thread | None:
    """A thread, live or over."""
    row = store.row("SELECT * FROM thread WHERE id = ?", [thread])
    return None if row is None else _thread(row)


def last_brief(store: Store, person: int, dialogue: str) -> str | None:
    """What the person's newest thread of this dialogue, live or over, began with; None: there was none."""
    row = store.row(
        "SELECT brief FROM thread WHERE person = ? AND dialogue = ? ORDER BY id DESC LIMIT 1",
        [person, dialogue],
    )
    return None if row is None else row["brief"]


def live(store: Store, person: int) -> list[Thread]:
    """The person's threads that are not over; the one with the floor first."""
    rows = store.rows(
        f"SELECT * FROM {_LIVE} WHERE person = ? AND state IS NOT NULL ORDER BY floor DESC, id DESC", [person]
    )
    return [_thread(row) for row in rows]


def any_live(store: Store, dialogues: Sequence[str]) -> bool:
    """Whether anybody is in one of these dialogues."""
    marks = ", ".join("?" * len(dialogues))
    row = store.row(
        f"SELECT 1 FROM {_LIVE} WHERE state IS NOT NULL AND dialogue IN ({marks}) LIMIT 1", list(dialogues)
    )
    return row is not None


def live_in(store: Store, person: int, dialogue: str) -> Thread | None:
    """The person's live thread of this dialogue, None: there is none."""
    return next((thread for thread in live(store, person) if thread.dialogue == dialogue), None)


def floor(store: Store, person: int) -> Thread | None:
    """The thread that gets typed words."""
    row = store.row(
        f"SELECT * FROM {_LIVE} WHERE person = ? AND state IS NOT NULL AND floor > 0"
        " ORDER BY floor DESC LIMIT 1",
        [person],
    )
    return None if row is None else _thread(row)


def due(store: Store, now: datetime) -> list[Thread]:
    """Threads whose time has come, earliest first."""
    rows = store.rows("SELECT * FROM thread WHERE wake_at <= ? ORDER BY wake_at, id", [ms(now)])
    return [_thread(row) for row in rows]


def add_buttons(store: Store, buttons: Sequence[Button], now: datetime) -> list[str]:
    """A new opaque token (128 random bits) for what goes into each button."""
    if not buttons:
        return []
    tokens, at = [secrets.token_urlsafe(16) for _ in buttons], ms(now)
    rows = (
        (token, b.person, b.thread, b.question, b.value, at) for token, b in zip(tokens, buttons, strict=True)
    )
    store.execute(
        "INSERT INTO button (token, person, thread, question, value, made_at) VALUES"
        + ", ".join(["(?, ?, ?, ?, ?, ?)"] * len(buttons)),
        [value for row in rows for value in row],
    )
    return tokens


def change_buttons(store: Store, person: int, value: str, to: str) -> None:
    """Every button of this person that holds `value` holds `to` from now on."""
    store.execute("UPDATE button SET value = ? WHERE person = ? AND value = ?", [to, person, value])


def button(store: Store, token: str, person: int) -> Button | None:
    """What a tapped token means for this person; None: not issued, or issued to somebody else."""
    row = store.row("SELECT * FROM button WHERE token = ? AND person = ?", [token, person])
    return None if row is None else Button(row["person"], row["thread"], row["question"], row["value"])
