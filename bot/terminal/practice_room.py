"""`cuffline try`: both chats in one page."""

import argparse
import asyncio
import tempfile
import webbrowser
from pathlib import Path


def main(options: argparse.Namespace) -> int:
    """Serve the page until interrupted."""
    from bot.practice_room import practise

    def ready(url: str) -> None:
        print(f"cuffline: both chats are on {url}  (Ctrl-C ends it)", flush=True)
        if options.open:
            webbrowser.open(url)

    with tempfile.TemporaryDirectory(prefix="cuffline-") as folder:
        asyncio.run(practise(options.db or Path(folder) / "try.db", options.port, ready))
    return 0
