"""Writing and reading typed facts. The table of a class is its name in snake_case; columns are its fields."""

import json
from collections.abc import Callable, Collection, Iterable
from dataclasses import fields
from datetime import datetime
from enum import StrEnum
from functools import cache
from types import UnionType
from typing import Any, TypeVar, get_args, get_type_hints

from core.facts import Fact
from core.store.connection import Store
from core.store.in_order import not_before
from core.store.naming import snake
from core.store.times import moment, ms

F = TypeVar("F")
Kind = Any  # a fact class; mypy does not see that classes with slots are hashable


def table_of(kind: Kind) -> str:
    """SetDone -> "set_done"."""
    return snake(kind.__name__)


@cache
def columns_of(kind: Kind) -> tuple[str, ...]:
    """The field names of a fact class, in order."""
    return tuple(field.name for field in fields(kind))


def put(store: Store, person: int, fact: Fact, noted_at: datetime, message: int | None = None) -> int:
    """Add a fact about `person`; it replaces the current one with the same key. Returns the row's id."""
    assert not store.ahead, "what was read ahead would be old"
    fact = not_before(store, person, fact, noted_at)
    kind: Kind = type(fact)
    columns = columns_of(kind)
    values = [_stored(getattr(fact, name)) for name in columns]
    names = ", ".join(f'"{name}"' for name in ("person", "noted_at", "message", "replaces", *columns))
    marks = ", ".join("?" * (len(columns) + 4))
    replaces = _same_key(store, person, fact)
    return store.added(
        f"INSERT INTO {table_of(kind)} ({names}) VALUES ({marks})",
        [person, ms(noted_at), message, replaces, *values],
    )


def current(store: Store, kind: type[F], person: int, **where: Any) -> list[F]:
    """The person's facts of one kind that nothing replaced, oldest first, filtered by equal columns."""
    known = _known(store, kind, person, where)
    if known is not None:
        return known
    sql, values = _where(where)
    return [
        _fact(kind, row)
        for row in store.rows(
            f"{_select(kind)} WHERE person = ?{sql} ORDER BY {_time(where)}, id",
            [person, *values],
        )
    ]


def since(store: Store, kind: type[F], person: int, at: datetime, **where: Any) -> list[F]:
    """Those of `current` that happened at or after `at`."""
    known = _known(store, kind, person, where)
    if known is not None:
        return [one for one in known if ms(one.at) >= ms(at)]
    sql, values = _where(where)
    rows = store.rows(
        f"{_select(kind)} WHERE person = ? AND at >= ?{sql} ORDER BY at, id",
        [person, ms(at), *values],
    )
    return [_fact(kind, row) for row in rows]


def newest(store: Store, kind: type[F], person: int, most: int, **where: Any) -> list[F]:
    """The newest `most` of `current`, newest first."""
    known = _known(store, kind, person, where)
    if known is not None:
        return known[::-1][:most]
    sql, values = _where(where)
    rows = store.rows(
        f"{_select(kind)} WHERE person = ?{sql} ORDER BY {_time(where)} DESC, id DESC LIMIT ?",
        [person, *values, most],
    )
    return [_fact(kind, row) for row in rows]


def latest(store: Store, kind: type[F], person: int, **where: Any) -> F | None:
    """The newest of `current`, or None."""
    found = newest(store, kind, person, 1, **where)
    return found[0] if found else None


def of_persons(store: Store, kind: type[F], persons: Collection[int]) -> dict[int, list[F]]:
    """`current` of each of these persons, in one query."""
    found: dict[int, list[F]] = {person: [] for person in persons}
    rows = store.execute(
        f"{_select(kind, also=', person')} WHERE person IN (SELECT value FROM json_each(?)) ORDER BY at, id",
        [json.dumps([*found])],
    )
    for *values, person in rows:
        found[person].append(_fact(kind, values))
    return found


def sessions(store: Store, kind: type[F], person: int, **where: Any) -> set[str]:
    """The names of the sessions in which there are such facts."""
    sql, values = _where(where)
    rows = store.rows(
        f"SELECT DISTINCT session FROM current_{table_of(kind)} WHERE person = ?{sql}", [person, *values]
    )
    return {row["session"] for row in rows}


def last_sessions(store: Store, kind: type[F], person: int, most: int, **where: Any) -> list[str]:
    """The names of the newest `most` sessions with such facts, newest first. Reads no further back than that."""
    sql, values = _where(where)
    rows = store.execute(
        f"SELECT session FROM current_{table_of(kind)} WHERE person = ?{sql} ORDER BY at DESC",
        [person, *values],
    )
    found: dict[str, None] = {}
    for row in rows:
        found[row["session"]] = None
        if len(found) == most:
            break
    return list(found)


def of_sessions(store: Store, kind: type[F], person: int, names: Collection[str], **where: Any) -> list[F]:
    """Those of `current` in the named sessions."""
    sql, values = _where(where, by_session=True)
    rows = store.rows(
        f"{_select(kind)} WHERE person = ? AND session IN (SELECT value FROM json_each(?))"
        f"{sql} ORDER BY +at, id",
        [person, json.dumps([*names]), *values],
    )
    return [_fact(kind, row) for row in rows]


def distinct_since(
    store: Store, kind: type[F], persons: Collection[int], column: str, at: datetime, **where: Any
) -> int:
    """How many values of a column there are in each person's facts since then, all persons together."""
    sql, values = _where(where)
    row = store.row(
        f"SELECT count(*) AS n FROM (SELECT DISTINCT person, {column} FROM current_{table_of(kind)}"
        f" WHERE person IN (SELECT value FROM json_each(?)) AND at >= ?{sql})",
        [json.dumps([*persons]), ms(at), *values],
    )
    return 0 if row is None else row["n"]


def by_message(store: Store, kind: type[F], person: int, message: int) -> list[F]:
    """The current facts that one message of the client stated."""
    rows = store.rows(
        f"{_select(kind)} WHERE person = ? AND message = ? ORDER BY id",
        [person, message],
    )
    return [_fact(kind, row) for row in rows]


def said_by(store: Store, person: int, fact: Fact, column: str, message: int | None) -> int | None:
    """The message that stated `column`: of the fact it replaces while that stays the same, else `message`."""
    replaced = _same_key(store, person, fact)
    if replaced is None:
        return message
    row = store.row(f"SELECT message, {column} AS value FROM {table_of(type(fact))} WHERE id = ?", [replaced])
    return row["message"] if row is not None and row["value"] == getattr(fact, column) else message


def _known(store: Store, kind: Kind, person: int, where: dict[str, Any]) -> list[Any] | None:
    """`current` from what was read ahead; None: it was not."""
    found = store.ahead.get(kind, {}).get(person)
    if found is None:
        return None
    return [one for one in found if all(getattr(one, name) == value for name, value in where.items())]


def _where(where: dict[str, Any], by_session: bool = False) -> tuple[str, list[Any]]:
    """Conditions and their values. The signs leave SQLite one index where a session is named: the session's.

    Without statistics it would take the one by time or movement, and read all the years to find the session.
    """
    sign = "+" if by_session or "session" in where else ""
    sql = "".join(f' AND {"" if name == "session" else sign}"{name}" = ?' for name in where)
    return sql, [_stored(value) for value in where.values()]


def _time(where: dict[str, Any]) -> str:
    """What to sort by, for the same reason."""
    return "+at" if "session" in where else "at"


def _same_key(store: Store, person: int, fact: Fact) -> int | None:
    if not fact.key:
        return None
    kind: Kind = type(fact)
    sql, values = _where({name: getattr(fact, name) for name in fact.key})
    row = store.row(
        f"SELECT id FROM current_{table_of(kind)} WHERE person = ?{sql} ORDER BY id DESC LIMIT 1",
        [person, *values],
    )
    return None if row is None else row["id"]


def _stored(value: Any) -> Any:
    if isinstance(value, datetime):
        return ms(value)
    if isinstance(value, bool):
        return int(value)
    return value.value if isinstance(value, StrEnum) else value


def _select(kind: Kind, *, also: str = "") -> str:
    """The beginning of a query for current facts: the columns as the fields are ordered, then `also`."""
    return f"SELECT {_columns(kind)}{also} FROM current_{table_of(kind)}"


@cache
def _columns(kind: Kind) -> str:
    return ", ".join(f'"{name}"' for name in columns_of(kind))


def _fact(kind: Kind, row: Iterable[Any]) -> Any:
    """From the columns of `_select`. Called for each of the hundred facts that the load model reads."""
    values = list(row)
    for place, reader in _readers(kind):
        if values[place] is not None:
            values[place] = reader(values[place])
    return kind(*values)


@cache
def _readers(kind: Kind) -> tuple[tuple[int, Callable[[Any], Any]], ...]:
    """The columns that are not as stored (a STRICT table gives what it was given), with what makes a value of each."""
    hints = get_type_hints(kind)
    readers = [(place, _reader(hints[name])) for place, name in enumerate(columns_of(kind))]
    return tuple((place, reader) for place, reader in readers if reader not in (int, str))


def _reader(hint: Any) -> Callable[[Any], Any]:
    if isinstance(hint, UnionType):
        hint = next(kind for kind in get_args(hint) if kind is not type(None))
    if hint is datetime:
        return moment
    reader: Callable[[Any], Any] = hint
    return reader
