"""`cuffline play`: an invented practice through two weeks."""

import argparse


def main(options: argparse.Namespace) -> int:
    """Play it."""
    from bot.play import play, play_alert

    if options.scenario == "alert":
        return play_alert()
    return play(options.days, options.seed, options.quiet, options.picture)
