"""Parsing and dispatch; each command is a module of `bot.terminal`. One clear line for a mistake, no traceback."""

import argparse
import logging
import os
import sys
import tempfile
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from typing import Any, NoReturn

from bot.config import Wrong, stored_in
from bot.database.keyed import key_in
from core.store import keys

Commands = Any  # argparse keeps the type of its subparsers to itself
MOST_DAYS = 366  # of an invented practice; a day takes about a second
HIGHEST_SEED = 2**32 - 1


class Parser(argparse.ArgumentParser):
    """Wrong use is one line and exit code 2; how it is used is a --help away."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong."""
        self.exit(2, f"{self.prog}: {message} (--help says more)\n")


def _whole(low: int, high: int) -> Callable[[str], int]:
    """A whole number within these bounds, in plain figures."""

    def read(text: str) -> int:
        if text.isascii() and text.isdigit() and len(text) <= len(str(high)) and low <= int(text) <= high:
            return int(text)
        raise argparse.ArgumentTypeError(f"{text!r} is no whole number from {low} to {high}")

    return read


def _path(text: str) -> Path:
    """A file or folder; "" would be the folder one stands in."""
    if not text.strip() or "\0" in text:
        raise argparse.ArgumentTypeError(f"{text!r} names nothing")
    return Path(text)


def _name(text: str) -> str:
    """Somebody's name or number; "" would fit everybody."""
    if not text.strip():
        raise argparse.ArgumentTypeError(f"{text!r} names nobody")
    return text.strip()


WITHOUT_DATA = ("play", "advise")  # they open no practice, so they ask for no key


def parser() -> Parser:
    """All commands and their options."""
    top = Parser(prog="cuffline", description="Training with bands from a distance, by chat.", epilog=EXITS)
    top.add_argument("--verbose", action="store_true", help="say more in the log")
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for add in COMMANDS:
        add(commands)
    return top


EXITS = "Exit codes: 0 good, 1 something is wrong, 2 wrong use or settings."


def main(arguments: list[str] | None = None) -> int:
    """Run one command; its exit code: 0 good, 1 something is wrong, 2 wrong use or settings."""
    os.umask(0o077)  # health data: what is made here is for its owner only
    options = parser().parse_args(arguments)
    level = logging.INFO if options.verbose else logging.WARNING
    logging.basicConfig(level=level, format="%(asctime)s %(levelname)s %(message)s")
    try:
        with keys.using(key_in() if options.keyed else None):
            code: int = import_module(options.module).main(options)
        return code
    except Wrong as wrong:
        print("\n".join(wrong.lines), file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 0
    except BrokenPipeError:  # `cuffline clients | head`: whoever read has enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0


def _command(commands: Commands, name: str, module: str, does: str) -> Parser:
    made: Parser = commands.add_parser(
        name, help=does, description=f"{does[0].upper()}{does[1:]}.", epilog=EXITS
    )
    made.set_defaults(module=f"bot.terminal.{module}", keyed=name not in WITHOUT_DATA)
    return made


def _on_data(command: Parser) -> Parser:
    """The one way to say which practice is meant."""
    command.add_argument(
        "--db", type=_path, default=stored_in(), metavar="FILE", help="the database (default: CUFFLINE_DB)"
    )
    return command


def _as_json(command: Parser) -> Parser:
    command.add_argument("--json", action="store_true", help="JSON on standard output, for scripts")
    return command


# --- the program ---
def _run(commands: Commands) -> None:
    _command(commands, "run", "run", "run the bot (settings: the environment, see README)")


def _try(commands: Commands) -> None:
    attempt = _command(
        commands, "try", "practice_room", "play client and coach in one page, without token or network"
    )
    attempt.add_argument("--port", type=int, default=8042, help="port on 127.0.0.1 (8042; 0: any free one)")
    attempt.add_argument("--open", action="store_true", help="open the page in the browser")
    attempt.add_argument(
        "--db", type=_path, metavar="FILE", help="keep the data in this file (default: a temporary one)"
    )


def _play(commands: Commands) -> None:
    play = _command(commands, "play", "play", "watch an invented practice through two weeks")
    play.add_argument(
        "--scenario",
        choices=("practice", "alert"),
        default="practice",
        help="practice: two weeks of three clients; alert: one alert until somebody has dealt with it",
    )
    play.add_argument("--days", type=_whole(1, MOST_DAYS), default=14, metavar="N", help="how many (14)")
    play.add_argument(
        "--seed", type=_whole(0, HIGHEST_SEED), default=1, metavar="N", help="other people's luck (1)"
    )
    play.add_argument("--quiet", action="store_true", help="only the digest at the end")
    picture = Path(tempfile.gettempdir()) / "cuffline-digest.png"
    play.add_argument(
        "--picture", type=_path, default=picture, metavar="FILE.png", help="where the digest's picture goes"
    )


def _advise(commands: Commands) -> None:
    _command(commands, "advise", "advise", "next loads for JSON lines on standard input")


# --- what is stored ---
def _clients(commands: Commands) -> None:
    _as_json(_on_data(_command(commands, "clients", "clients", "list the clients and what they wait for")))


def _check(commands: Commands) -> None:
    check = _as_json(_on_data(_command(commands, "check", "check", "look for what is wrong, one line each")))
    check.add_argument("--offline", action="store_true", help="do not ask the server about the token")


def _report(commands: Commands) -> None:
    report = _as_json(_on_data(_command(commands, "report", "report", "write one client's report as a page")))
    report.add_argument(
        "name", type=_name, metavar="NAME", help="the client, by name, a part of it, or #number"
    )
    report.add_argument(
        "-o",
        "--output",
        type=_path,
        metavar="FILE.pdf",
        help="the page (.pdf or .png; default: its sentences)",
    )


def _digest(commands: Commands) -> None:
    digest = _as_json(_on_data(_command(commands, "digest", "digest", "print a coach's week")))
    digest.add_argument("--week", metavar="2026-W05", help="an ISO week (default: the last whole one)")
    digest.add_argument("--coach", type=_name, metavar="NAME", help="this coach only, by name or number")
    digest.add_argument("-o", "--output", type=_path, metavar="FILE.png", help="draw the picture instead")


def _export(commands: Commands) -> None:
    export = _command(
        commands,
        "export",
        "export",
        "write the records, a CSV file a table, and sessions.csv, into a new folder",
    )
    _on_data(export).add_argument("folder", type=_path, metavar="DIR")


def _backup(commands: Commands) -> None:
    backup = _on_data(
        _command(commands, "backup", "backup", "copy the database to FILE while the bot goes on")
    )
    backup.add_argument("file", type=_path, metavar="FILE", help="a new file")


def _restore(commands: Commands) -> None:
    restore = _command(
        commands, "restore", "restore", "put a backup in the database's place, keep the old one"
    )
    _on_data(restore).add_argument("file", type=_path, metavar="FILE", help="the backup")


def _encrypt(commands: Commands) -> None:
    _on_data(_command(commands, "encrypt", "encrypt", "encrypt the database and its backups with the key"))


def _decrypt(commands: Commands) -> None:
    _on_data(_command(commands, "decrypt", "encrypt", "make database and backups plain files again"))


def _replay(commands: Commands) -> None:
    _on_data(_command(commands, "replay", "replay", "handle failed messages once more"))


COMMANDS = (
    _run,
    _try,
    _play,
    _advise,
    _check,
    _clients,
    _report,
    _digest,
    _export,
    _backup,
    _restore,
    _encrypt,
    _decrypt,
    _replay,
)
