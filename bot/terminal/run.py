"""`cuffline run`: the real thing."""

import argparse
import asyncio
import sys


def main(options: argparse.Namespace) -> int:
    """Run until stopped; 0, or 2 when the settings cannot work."""
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
