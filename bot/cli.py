"""The commands: run, try, play, advise, replay. One clear line for a mistake, no traceback."""

import argparse
import asyncio
import logging
import sys
import tempfile
import webbrowser
from pathlib import Path

from bot.config import Config, Wrong


def parser() -> argparse.ArgumentParser:
    """All commands and their options."""
    top = argparse.ArgumentParser(
        prog="cuffline", description="Training with bands from a distance, by chat."
    )
    top.add_argument("--verbose", action="store_true", help="say more in the log")
    commands = top.add_subparsers(dest="command", required=True)
    commands.add_parser("run", help="run the bot (settings: CUFFLINE_TOKEN, _COACH, _DB, _TZ, _API_URL)")
    attempt = commands.add_parser("try", help="play client and coach in one page, without token or network")
    attempt.add_argument("--port", type=int, default=8042, help="port on 127.0.0.1 (8042; 0: any free one)")
    attempt.add_argument("--open", action="store_true", help="open the page in the browser")
    attempt.add_argument("--db", type=Path, help="keep the data in this file (default: a temporary one)")
    play = commands.add_parser("play", help="watch an invented practice through two weeks")
    play.add_argument("--days", type=int, default=14)
    play.add_argument("--seed", type=int, default=1)
    play.add_argument("--quiet", action="store_true", help="only the digest at the end")
    play.add_argument(
        "--picture",
        type=Path,
        default=Path(tempfile.gettempdir()) / "cuffline-digest.png",
        help="where the digest's picture goes",
    )
    commands.add_parser("advise", help="next loads for JSON lines on standard input")
    replay = commands.add_parser("replay", help="handle failed messages once more")
    replay.add_argument("--db", type=Path, required=True)
    return top


def main(arguments: list[str] | None = None) -> int:
    """Run one command; its exit code: 0 good, 1 some input was wrong, 2 wrong use or settings."""
    options = parser().parse_args(arguments)
    level = logging.INFO if options.verbose else logging.WARNING
    logging.basicConfig(level=level, format="%(asctime)s %(levelname)s %(message)s")
    try:
        return _command(options)
    except Wrong as wrong:
        print("\n".join(wrong.lines), file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 0


def _command(options: argparse.Namespace) -> int:
    match options.command:
        case "run":
            return run()
        case "try":
            return attempt(options.port, options.open, options.db)
        case "play":
            from bot.play import play

            return play(options.days, options.seed, options.quiet, options.picture)
        case "advise":
            from bot.advise import main as advise

            return advise(sys.stdin.buffer, sys.stdout.buffer)
        case _:
            return replay(options.db)


def run() -> int:
    """The real thing."""
    from telegram.error import InvalidToken

    from bot.app import quiet_logs, serve
    from bot.clock import Clock
    from bot.config import from_environment

    config = from_environment()
    quiet_logs(config.token)
    try:
        asyncio.run(
            serve(
                config,
                Clock(),
                lambda program: print(f"cuffline runs as @{program.bot.username}", flush=True),
            )
        )
    except InvalidToken:
        print("CUFFLINE_TOKEN: the server does not know this token", file=sys.stderr)
        return 2
    return 0


def attempt(port: int, open_page: bool, db: Path | None) -> int:
    """Both chats in one page."""
    from bot.practice_room import practise

    def ready(url: str) -> None:
        print(f"cuffline: both chats are on {url}  (Ctrl-C ends it)", flush=True)
        if open_page:
            webbrowser.open(url)

    with tempfile.TemporaryDirectory(prefix="cuffline-") as folder:
        asyncio.run(practise(db or Path(folder) / "try.db", port, ready))
    return 0


def replay(db: Path) -> int:
    """Put failed messages back into the queue; the running bot (or the next start) handles them."""
    from bot.clock import Clock
    from bot.engine import Engine
    from core.store.connection import Store

    if not db.exists():
        print(f"--db: there is no file {db}", file=sys.stderr)
        return 2
    config = Config("0:none", "http://127.0.0.1", db, (0,), "UTC")
    count = Engine(Store(db), config, Clock().now).replay()
    print(f"{count} messages are handled again at the next start")
    return 0
