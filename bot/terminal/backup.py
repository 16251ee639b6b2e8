"""`cuffline backup FILE`: a copy while the bot goes on, opened and checked."""

import argparse
import sqlite3
from pathlib import Path

from bot import backups
from bot.config import Wrong
from bot.sound import usable
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
    except OSError as problem:
        raise Wrong([f"{file}: {problem.strerror}"]) from None
    except (sqlite3.Error, backups.Faulty) as problem:
        raise Wrong([f"no backup was made: {problem}"]) from None
    print(f"{file}: {file.stat().st_size} bytes, {how}")
    return 0
