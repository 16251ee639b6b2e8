"""Dialogues to begin later: reminders, the questions after a session, digests."""

import json
from dataclasses import dataclass
from datetime import datetime
from sqlite3 import Row
from typing import Any

from core.store.connection import Store
from core.store.times import moment, ms


@dataclass(frozen=True, slots=True)
class Planned:
    """A dialogue to begin later."""

    id: int
    person: int
    dialogue: str
    about: dict[str, Any]
    due_at: datetime


def plan(
    store: Store, person: int, dialogue: str, about: dict[str, Any], due_at: datetime, now: datetime
) -> int:
    """Begin a dialogue at `due_at`."""
    return store.added(
        "INSERT INTO planned (person, dialogue, about, due_at, made_at, failures) VALUES (?, ?, ?, ?, ?, 0)",
        [person, dialogue, json.dumps(about), ms(due_at), ms(now)],
    )


def unplan(store: Store, person: int, dialogue: str) -> None:
    """Forget the person's planned talks of this kind."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL", [person, dialogue]
    )


def unplan_session(store: Store, person: int, dialogue: str, session: str) -> None:
    """Forget the person's planned talks of this kind about this session."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL"
        " AND json_extract(about, '$.session') = ?",
        [person, dialogue, session],
    )


def begun_days(store: Store, person: int, dialogue: str, session: str) -> set[str]:
    """Which talks of this kind about this session began already, by their `day`."""
    rows = store.rows(
        "SELECT json_extract(about, '$.day') AS day FROM planned WHERE person = ? AND dialogue = ?"
        " AND done_at IS NOT NULL AND json_extract(about, '$.session') = ?",
        [person, dialogue, session],
    )
    return {row["day"] for row in rows}


def unplan_due(store: Store, person: int, dialogue: str, now: datetime) -> None:
    """Forget those of the person's planned talks of this kind whose time has come."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL AND due_at <= ?",
        [person, dialogue, ms(now)],
    )


def due_talks(store: Store, now: datetime, most: int = 1000) -> list[Planned]:
    """Talks whose time has come, earliest first."""
    rows = store.rows(
        "SELECT * FROM planned WHERE done_at IS NULL AND due_at <= ? ORDER BY due_at, id LIMIT ?",
        [ms(now), most],
    )
    return [_planned(row) for row in rows]


def unplan_first(store: Store, person: int, dialogue: str) -> None:
    """Forget planned talks of this kind, but keep those that the person moved themselves ("again")."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL"
        " AND json_extract(about, '$.again') IS NULL",
        [person, dialogue],
    )


def next_talk(store: Store, person: int, dialogue: str) -> Planned | None:
    """The person's next planned talk of this kind."""
    row = store.row(
        "SELECT * FROM planned WHERE done_at IS NULL AND person = ? AND dialogue = ? ORDER BY due_at LIMIT 1",
        [person, dialogue],
    )
    return None if row is None else _planned(row)


def planned(store: Store, person: int, dialogue: str) -> list[Planned]:
    """The person's planned talks of this kind, the next first."""
    rows = store.rows(
        "SELECT * FROM planned WHERE done_at IS NULL AND person = ? AND dialogue = ? ORDER BY due_at",
        [person, dialogue],
    )
    return [_planned(row) for row in rows]


def noted(store: Store, person: int, name: str) -> bool:
    """Whether the person has got, or will get, the note of this name."""
    found = "dialogue = 'note' AND person = ? AND json_extract(about, '$.name') = ?"
    row = store.row(
        f"SELECT 1 FROM planned WHERE done_at IS NULL AND {found}"
        f" UNION ALL SELECT 1 FROM planned WHERE done_at IS NOT NULL AND {found} LIMIT 1",
        [person, name, person, name],
    )
    return row is not None


def last_talk(store: Store, person: int, dialogue: str, now: datetime) -> Planned | None:
    """The person's latest planned talk of this kind that began and was due by `now`; None: there was none."""
    row = store.row(
        "SELECT * FROM planned WHERE done_at IS NOT NULL AND person = ? AND dialogue = ? AND due_at <= ?"
        " ORDER BY due_at DESC LIMIT 1",
        [person, dialogue, ms(now)],
    )
    return None if row is None else _planned(row)


def reminded_of(store: Store, person: int) -> set[str]:
    """The names of the sessions whose reminder began already."""
    rows = store.rows(
        "SELECT json_extract(about, '$.name') AS name FROM planned"
        " WHERE person = ? AND dialogue = 'reminding' AND done_at IS NOT NULL",
        [person],
    )
    return {row["name"] for row in rows if row["name"]}


def open_talk(store: Store, planned: int) -> Planned | None:
    """The talk of this number as it stands now; None: it is done, or forgotten.

    SQLite gives the number of a forgotten talk to the next one, so it may be another than it was.
    """
    row = store.row("SELECT * FROM planned WHERE id = ? AND done_at IS NULL", [planned])
    return None if row is None else _planned(row)


def talk_done(store: Store, planned: int, now: datetime) -> None:
    """The talk began (or was let go)."""
    store.execute("UPDATE planned SET done_at = ? WHERE id = ?", [ms(now), planned])


def talk_later(store: Store, planned: int, due_at: datetime) -> None:
    """Try again at `due_at`."""
    store.execute(
        "UPDATE planned SET failures = failures + 1, due_at = ? WHERE id = ?", [ms(due_at), planned]
    )


def _planned(row: Row) -> Planned:
    return Planned(row["id"], row["person"], row["dialogue"], json.loads(row["about"]), moment(row["due_at"]))
