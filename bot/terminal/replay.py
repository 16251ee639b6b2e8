"""`cuffline replay`: failed messages go back into the queue."""

import argparse


def main(options: argparse.Namespace) -> int:
    """The running bot (or the next start) handles them."""
    from bot.database.opened import writing

    with writing(options.db) as engine:
        count = engine.replay()
    print(f"{count} messages are handled again at the next start")
    return 0
