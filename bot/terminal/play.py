"""`cuffline play`: an invented practice through two weeks."""

import argparse
from pathlib import Path

from bot.config import Wrong


def check(picture: Path) -> None:
    """Raises `Wrong` for a picture that could not be written: said before two weeks are played for it."""
    if picture.suffix.lower() != ".png":
        raise Wrong([f"--picture: {picture} must end in .png"])
    if picture.is_dir() or not picture.parent.is_dir():
        raise Wrong([f"--picture: {picture} cannot be written; its folder must be there"])


def main(options: argparse.Namespace) -> int:
    """Play it."""
    from bot.play import play, play_alert

    check(options.picture)
    if options.scenario == "alert":
        return play_alert()
    return play(options.days, options.seed, options.quiet, options.picture)
