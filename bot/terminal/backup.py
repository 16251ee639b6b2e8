"""`cuffline backup FILE`: a copy while the bot goes on, opened and checked."""

import argparse
import shutil
import sqlite3
from pathlib import Path

from bot.config import Wrong, backups_in
from bot.database import backups, forgotten
from bot.database.sound import usable
from bot.terminal.progress import bar


def main(options: argparse.Namespace) -> int:
    """Write it; 2 when it cannot be written, or when what was written is not whole."""
    usable(options.db)
    file: Path = options.file
    if file.exists():
        raise Wrong([f"{file}: exists already; a backup never replaces a file"])
    try:
        with bar("backup") as tell:
            backups.write(options.db, file, tell)
        how = backups.verify(file)
        _who_was_erased(options.db, file.parent)
    except OSError as problem:
        raise Wrong([f"{file}: {problem.strerror}"]) from None
    except (sqlite3.Error, backups.Faulty) as problem:
        raise Wrong([f"no backup was made: {problem}"]) from None
    print(f"{file}: {file.stat().st_size} bytes, {how}")
    return 0


def _who_was_erased(db: Path, folder: Path) -> None:
    """The numbers of who was erased go along: a restore from there must not bring them back either."""
    known = forgotten.file_of(backups_in(db), db)
    if known.is_file() and known.parent.resolve() != folder.resolve():
        shutil.copy2(known, forgotten.file_of(folder, db))
