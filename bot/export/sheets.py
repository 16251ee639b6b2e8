"""The tables of an export, and how one is written so that a spreadsheet opens it right.

UTF-8 with a byte order mark, a decimal point, and no cell that a spreadsheet would take for a formula
(https://owasp.org/www-community/attacks/CSV_Injection).
"""

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import chain
from typing import Any, TextIO

from bot.export.tidy import COLUMNS, sets_of
from core.store import people, tables
from core.store.connection import Store
from core.store.people import Person

ENCODING = "utf-8-sig"  # with the mark that spreadsheets look for
DANGEROUS = ("=", "+", "-", "@", "\t", "\r", "\n")  # how a formula may begin
SESSIONS = "sessions"


@dataclass(frozen=True, slots=True)
class Sheet:
    """One file: its name without the ending, its columns, and its rows, read while it is written."""

    name: str
    columns: Sequence[str]
    rows: Iterator[dict[str, Any]]


def of_practice(store: Store) -> list[Sheet]:
    """One row a set, and all that is on record."""
    names = (*tables.OF_CLIENTS, *tables.OF_COACHES)
    made = [Sheet(name, tables.columns(store, name), tables.rows(store, name)) for name in names]
    return [_sessions(store, people.trained(store)), *made]


def of_clients(store: Store, clients: Sequence[Person]) -> list[Sheet]:
    """One row a set, and what is on record, of these people and of nobody else."""
    made = [
        Sheet(name, tables.columns(store, name), _rows(store, name, clients)) for name in tables.OF_CLIENTS
    ]
    return [_sessions(store, clients), *made]


def _rows(store: Store, table: str, clients: Sequence[Person]) -> Iterator[dict[str, Any]]:
    return chain.from_iterable(tables.rows(store, table, client.id) for client in clients)


def _sessions(store: Store, clients: Sequence[Person]) -> Sheet:
    return Sheet(SESSIONS, COLUMNS, chain.from_iterable(sets_of(store, client) for client in clients))


def write(sheet: Sheet, out: TextIO) -> None:
    """A line with the names, then a line a row. `out` is opened with our `ENCODING` and newline=""."""
    lines = csv.DictWriter(out, sheet.columns)
    lines.writeheader()
    lines.writerows({name: harmless(value) for name, value in row.items()} for row in sheet.rows)


def harmless(value: Any) -> Any:
    """A cell that is shown as it is: an apostrophe before what would be a formula; times in ISO 8601."""
    if isinstance(value, datetime):
        return value.isoformat()
    return f"'{value}" if isinstance(value, str) and value.startswith(DANGEROUS) else value
