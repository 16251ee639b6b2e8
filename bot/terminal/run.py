"""`cuffline run`: the real thing."""

import argparse
import asyncio
import logging
import sqlite3
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bot.app import Program

log = logging.getLogger("cuffline")


def main(options: argparse.Namespace) -> int:
    """Run until stopped; 0, or 2 when the settings cannot work. Without a coach it only tells numbers."""
    from telegram.error import InvalidToken

    from bot.app import serve
    from bot.clocks.clock import Clock
    from bot.config import Wrong, from_environment
    from bot.net.secrecy import quiet_logs
    from core.store import keys
    from core.store.connection import cannot_write

    config = from_environment(coach_needed=False)
    key = keys.held()
    quiet_logs(config.token, config.webhook_secret, config.ping_url, key.digits if key else "")
    try:
        asyncio.run(serve(config, Clock(), started))
    except InvalidToken:
        raise Wrong(["CUFFLINE_TOKEN: the server does not know this token"]) from None
    except sqlite3.Error as problem:
        if not cannot_write(problem):
            raise
        raise Wrong([f"{config.db}: {problem}; `cuffline check` says more"]) from None
    return 0


def started(program: "Program") -> None:
    """Says under which name it runs, and what should be known before the first client trains."""
    print(f"cuffline runs as @{program.bot.username}", flush=True)
    for line in program.engine.warnings():
        log.warning("%s", line)
