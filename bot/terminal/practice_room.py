"""`cuffline try`: both chats in one page."""

import argparse
import asyncio
import tempfile
import webbrowser
from contextlib import suppress
from pathlib import Path

from bot.config import HIGHEST_PORT, Wrong
from core.store import copies


def check(options: argparse.Namespace) -> None:
    """Raises `Wrong` with a line for each option that cannot work."""
    wrong = []
    if not 0 <= options.port <= HIGHEST_PORT:
        wrong.append(
            f"--port {options.port}: a port is a number from 0 to {HIGHEST_PORT}; 0 takes any free one"
        )
    if options.db is not None and not options.db.parent.is_dir():
        wrong.append(f"--db {options.db}: the folder {options.db.parent} does not exist")
    if options.db is not None and options.db.is_file() and _is_real(options.db):
        wrong.append(
            f"--db {options.db}: that is a real practice, whose messages would go nowhere; name a new file"
        )
    if wrong:
        raise Wrong(wrong)


def _is_real(db: Path) -> bool:
    """Whether the file has coaches of its own. What cannot be read is said at the start."""
    from bot.practice_room import COACH

    with suppress(*copies.UNREADABLE):
        return bool(copies.coaches(db) - {COACH})
    return False


def main(options: argparse.Namespace) -> int:
    """Serve the page until interrupted. Raises `Wrong` for a port or a file that cannot be."""
    from bot.practice_room import practise

    check(options)

    def ready(url: str) -> None:
        print(f"cuffline: both chats are on {url}  (Ctrl-C ends it)", flush=True)
        if options.open:
            webbrowser.open(url)

    with tempfile.TemporaryDirectory(prefix="cuffline-") as folder:
        asyncio.run(practise(options.db or Path(folder) / "try.db", options.port, ready))
    return 0
