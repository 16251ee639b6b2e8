"""`cuffline export DIR`: one CSV file for each table of records and one tidy `sessions.csv`."""

import argparse
import os
from pathlib import Path

from bot.config import Wrong
from bot.database.opened import reading
from bot.export import sheets
from bot.export.sheets import Sheet
from bot.terminal.progress import bar
from core.store.connection import Store


def main(options: argparse.Namespace) -> int:
    """Write all files into the folder, which must be new or empty."""
    folder: Path = options.folder
    with reading(options.db) as engine:
        try:
            _empty(folder)
            _export(engine.store, folder)
        except OSError as problem:
            raise Wrong([f"{problem.filename or folder}: {problem.strerror}"]) from None
    print(f"{folder}: {len(list(folder.glob('*.csv')))} files; {sheets.SESSIONS}.csv has one row a set")
    return 0


def _empty(folder: Path) -> None:
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)  # health data: for its owner only
    if any(folder.iterdir()):
        raise Wrong([f"{folder}: not empty; name a new folder"])


def _export(store: Store, folder: Path) -> None:
    made = sheets.of_practice(store)
    with bar("export") as tell:
        for number, sheet in enumerate(made, start=1):
            _write(folder, sheet)
            tell(number, len(made))


def _write(folder: Path, sheet: Sheet) -> None:
    handle = os.open(folder / f"{sheet.name}.csv", os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
    with open(handle, "w", encoding=sheets.ENCODING, newline="") as out:
        sheets.write(sheet, out)
