"""Who is known: coaches by the settings, clients by invitation only."""

import hashlib
import json
from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from sqlite3 import Row

from core.store.connection import Store
from core.store.times import maybe_moment, moment, ms

INVITATION_HOURS = 72


class Role(StrEnum):
    """What a person is here. Stored."""

    CLIENT = "client"
    COACH = "coach"
    LEFT = "left"  # only the record that must be kept is still here


@dataclass(frozen=True, slots=True)
class Person:
    """A known person. `chat` is their number at the transport, `coach` the id of a client's coach."""

    id: int
    chat: int | None
    name: str
    role: Role
    coach: int | None
    zone: str
    unreachable_at: datetime | None
    joined: datetime


def _person(row: Row) -> Person:
    return Person(
        row["id"],
        row["chat"],
        row["name"],
        Role(row["role"]),
        row["coach"],
        row["zone"],
        maybe_moment(row["unreachable_at"]),
        moment(row["created_at"]),
    )


def by_chat(store: Store, chat: int) -> Person | None:
    """The person with this number, None: a stranger."""
    row = store.row("SELECT * FROM person WHERE chat = ?", [chat])
    return None if row is None else _person(row)


def find(store: Store, person: int) -> Person | None:
    """The person with this id; None: there is none (any more)."""
    row = store.row("SELECT * FROM person WHERE id = ?", [person])
    return None if row is None else _person(row)


def by_id(store: Store, person: int) -> Person:
    """A known person. Raises KeyError."""
    found = find(store, person)
    if found is None:
        raise KeyError(f"person {person}")
    return found


def names_of(store: Store, persons: Collection[int]) -> dict[int, str]:
    """The names of those of them who are still here, in one query."""
    rows = store.rows(
        "SELECT id, name FROM person WHERE role <> 'left' AND id IN (SELECT value FROM json_each(?))",
        [json.dumps([*persons])],
    )
    return {row["id"]: row["name"] for row in rows}


def clients_of(store: Store, coach: int) -> list[Person]:
    """The coach's clients, by name."""
    rows = store.rows("SELECT * FROM person WHERE coach = ? AND role = 'client' ORDER BY name, id", [coach])
    return [_person(row) for row in rows]


def stood_in_for(store: Store, coach: int, now: datetime) -> list[Person]:
    """The coaches whose clients this one looks after now."""
    rows = store.rows(
        "SELECT * FROM person WHERE id IN (SELECT person FROM current_stand_in"
        " WHERE stand_in = ? AND since <= ? AND until > ?) ORDER BY name, id",
        [coach, ms(now), ms(now)],
    )
    return [_person(row) for row in rows]


def stand_in_of(store: Store, coach: int, now: datetime) -> Person | None:
    """Who looks after this coach's clients now; None: the coach does."""
    row = store.row(
        "SELECT p.* FROM current_stand_in AS s JOIN person AS p ON p.id = s.stand_in"
        " WHERE s.person = ? AND s.since <= ? AND s.until > ? ORDER BY s.at DESC, s.id DESC LIMIT 1",
        [coach, ms(now), ms(now)],
    )
    return None if row is None else _person(row)


def hand_over(store: Store, client: int, coach: int) -> None:
    """The client is another coach's from now on."""
    store.execute("UPDATE person SET coach = ? WHERE id = ?", [coach, client])


def trained(store: Store) -> list[Person]:
    """Everybody who is or was a client, by name."""
    rows = store.rows("SELECT * FROM person WHERE role <> 'coach' ORDER BY name, id")
    return [_person(row) for row in rows]


def coaches(store: Store) -> list[Person]:
    """All coaches, in the order in which they were first known."""
    return [_person(row) for row in store.rows("SELECT * FROM person WHERE role = 'coach' ORDER BY id")]


def in_talk(store: Store) -> list[Person]:
    """Everybody with a conversation under way."""
    rows = store.rows("SELECT * FROM person WHERE id IN (SELECT person FROM thread WHERE state IS NOT NULL)")
    return [_person(row) for row in rows]


def add(
    store: Store, chat: int, name: str, role: Role, zone: str, now: datetime, coach: int | None = None
) -> int:
    """A new person's id."""
    return store.added(
        "INSERT INTO person (chat, name, role, coach, zone, created_at) VALUES (?, ?, ?, ?, ?, ?)",
        [chat, name, role.value, coach, zone, ms(now)],
    )


def rename(store: Store, person: int, name: str) -> None:
    """What the person is called from now on."""
    store.execute("UPDATE person SET name = ? WHERE id = ?", [name, person])


def move_zone(store: Store, person: int, zone: str) -> None:
    """The IANA zone the person lives in from now on."""
    store.execute("UPDATE person SET zone = ? WHERE id = ?", [zone, person])


def unreachable(store: Store, chat: int, at: datetime | None) -> None:
    """The person blocked the bot (or, with None, wrote again)."""
    store.execute(
        "UPDATE person SET unreachable_at = ? WHERE chat = ?", [None if at is None else ms(at), chat]
    )


def hashed(code: str) -> str:
    """Codes are stored hashed. 128 random bits need no salt."""
    return hashlib.sha256(code.strip().upper().encode()).hexdigest()


def invite(store: Store, coach: int, name: str, code: str, now: datetime) -> None:
    """An invitation that one person may use within 72 h."""
    expires = now + timedelta(hours=INVITATION_HOURS)
    store.execute(
        "INSERT INTO invitation (hash, coach, name, made_at, expires_at) VALUES (?, ?, ?, ?, ?)",
        [hashed(code), coach, name, ms(now), ms(expires)],
    )


def redeem(store: Store, code: str, now: datetime) -> tuple[int, int, str] | None:
    """(invitation id, coach id, client's name) of a valid code; None: unknown, used or expired."""
    row = store.row(
        "SELECT * FROM invitation WHERE hash = ? AND used_at IS NULL AND expires_at > ?",
        [hashed(code), ms(now)],
    )
    return None if row is None else (row["id"], row["coach"], row["name"])


def used(store: Store, invitation: int, person: int, now: datetime) -> None:
    """The invitation is spent."""
    store.execute(
        "UPDATE invitation SET used_by = ?, used_at = ? WHERE id = ?", [person, ms(now), invitation]
    )


def wrote(store: Store, person: int) -> bool:
    """Whether anything that this person wrote is still kept."""
    return store.row("SELECT 1 FROM inbox WHERE person = ? LIMIT 1", [person]) is not None
