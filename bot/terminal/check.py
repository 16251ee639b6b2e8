"""`cuffline check`: one line for each thing that must be right, with what to do where it is not."""

import argparse
import json
from collections.abc import Callable, Iterable
from dataclasses import asdict
from datetime import datetime

from bot.clocks.clock import Clock
from bot.terminal import looking
from bot.terminal.looking import Finding, Place

Look = Callable[[Place, datetime], Iterable[Finding]]


def main(options: argparse.Namespace) -> int:
    """Print the findings; 1 when something is wrong."""
    place = Place.named(options.db)
    looks: list[Look] = [*looking.HERE, *(() if options.offline else (looking.token,))]
    now = Clock().now()
    findings = [finding for look in looks for finding in _found(look, place, now)]
    if options.json:
        print(json.dumps([asdict(finding) for finding in findings], indent=2, ensure_ascii=False))
    else:
        print("\n".join(_line(finding) for finding in findings))
    return 0 if all(finding.ok for finding in findings) else 1


def _found(look: Look, place: Place, now: datetime) -> list[Finding]:
    """What it finds; a disk that does not answer is a finding, too."""
    try:
        return list(look(place, now))
    except OSError as problem:
        return [Finding("disk", False, f"{problem.filename or place.backups}: {problem.strerror or problem}")]


def _line(finding: Finding) -> str:
    return f"{'ok   ' if finding.ok else 'WRONG'}  {finding.what:9} {finding.says}"
