"""`cuffline export DIR`: one CSV file a table and one tidy `sessions.csv`.

The files open right in a spreadsheet: UTF-8 with a byte order mark, and no cell that a spreadsheet would take for a
formula (https://owasp.org/www-community/attacks/CSV_Injection).
"""

import argparse
import csv
import os
from collections.abc import Iterable, Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

from bot.config import Wrong
from bot.terminal.opened import reading
from bot.terminal.progress import bar
from bot.terminal.tidy import COLUMNS, sets_of
from core.store import people, tables
from core.store.connection import Store

DANGEROUS = ("=", "+", "-", "@", "\t", "\r", "\n")  # how a formula may begin
SESSIONS = "sessions.csv"


def main(options: argparse.Namespace) -> int:
    """Write all files into the folder, which must be new or empty."""
    folder: Path = options.folder
    with reading(options.db) as engine:
        try:
            _empty(folder)
            _export(engine.store, folder)
        except OSError as problem:
            raise Wrong([f"{problem.filename or folder}: {problem.strerror}"]) from None
    print(f"{folder}: {len(list(folder.glob('*.csv')))} files; {SESSIONS} has one row a set")
    return 0


def _empty(folder: Path) -> None:
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)  # health data: for its owner only
    if any(folder.iterdir()):
        raise Wrong([f"{folder}: not empty; name a new folder"])


def _export(store: Store, folder: Path) -> None:
    names = tables.names(store)
    with bar("export") as tell:
        for number, name in enumerate(names):
            _write(folder / f"{name}.csv", tables.columns(store, name), tables.rows(store, name))
            tell(number + 1, len(names) + 1)
        _write(folder / SESSIONS, COLUMNS, _sets(store))
        tell(1, 1)


def _sets(store: Store) -> Iterator[dict[str, Any]]:
    for client in people.trained(store):
        yield from sets_of(store, client)


def _write(file: Path, columns: Iterable[str], rows: Iterable[dict[str, Any]]) -> None:
    handle = os.open(file, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
    with open(handle, "w", encoding="utf-8-sig", newline="") as out:
        lines = csv.DictWriter(out, list(columns))
        lines.writeheader()
        lines.writerows({name: harmless(value) for name, value in row.items()} for row in rows)


def harmless(value: Any) -> Any:
    """A cell that is shown as it is: an apostrophe before what would be a formula; times in ISO 8601."""
    if isinstance(value, datetime):
        return value.isoformat()
    return f"'{value}" if isinstance(value, str) and value.startswith(DANGEROUS) else value
