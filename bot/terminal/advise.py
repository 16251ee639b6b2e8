"""`cuffline advise`: next loads for JSON lines."""

import argparse
import sys


def main(options: argparse.Namespace) -> int:
    """Answer every line; 1 when one was wrong."""
    from bot.advise import main as advise

    return advise(sys.stdin.buffer, sys.stdout.buffer)
