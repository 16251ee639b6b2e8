"""`cuffline play`: an invented practice through two weeks."""

import argparse


def main(options: argparse.Namespace) -> int:
    """Play it."""
    from bot.play import play

    return play(options.days, options.seed, options.quiet, options.picture)
