"""Prints what comes of phrases in each situation: python -m tests.conversations.stopwords.by_situation FILE...

A file has one phrase a line, `FLAG<TAB>phrase` for a sign of harm and `FINE<TAB>phrase` for what is none. Of signs it
counts what was not answered (SILENT is the danger), of the rest what was stopped or asked about for nothing.
"""

import sys
from collections import Counter
from pathlib import Path

from tests.conversations.stopwords.situations import SITUATIONS, Moment, Outcome

FLAG, FINE = "FLAG", "FINE"
Row = tuple[str, str]  # what the phrase is, and the phrase


def rows(path: Path) -> list[Row]:
    """The phrases of a file. Raises ValueError on a line that is neither FLAG nor FINE."""
    found: list[Row] = []
    for line in path.read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            what, tab, phrase = line.partition("\t")
            if what not in (FLAG, FINE) or not tab:
                raise ValueError(f"{path}: {line!r}")
            found.append((what, phrase))
    return found


def matrix(phrases: list[Row]) -> dict[str, Counter[tuple[str, Outcome]]]:
    """How often each outcome came, by situation."""
    return {name: _played(Moment(name), phrases) for name in SITUATIONS}


def _played(moment: Moment, phrases: list[Row]) -> Counter[tuple[str, Outcome]]:
    return Counter((what, moment.outcome(phrase)) for what, phrase in phrases)


def wrong(phrases: list[Row], name: str) -> list[tuple[Outcome, str]]:
    """The signs that were not answered in one situation, and what was answered as a sign although it is none."""
    moment = Moment(name)
    played = [(what, moment.outcome(phrase), phrase) for what, phrase in phrases]
    fine = {FLAG: (Outcome.ROUTED,), FINE: (Outcome.RELAYED, Outcome.SILENT)}
    return [(outcome, f"{what} {phrase}") for what, outcome, phrase in played if outcome not in fine[what]]


def table(counts: dict[str, Counter[tuple[str, Outcome]]]) -> str:
    """Rows: situations; columns: outcomes of signs, then of what is none."""
    heads = [f"{what} {outcome.value}" for what in (FLAG, FINE) for outcome in Outcome]
    lines = [" " * 24 + "".join(f"{head:>14}" for head in heads)]
    for name, count in counts.items():
        cells = [count[what, outcome] or "." for what in (FLAG, FINE) for outcome in Outcome]
        lines.append(f"{name:<24}" + "".join(f"{cell:>14}" for cell in cells))
    return "\n".join(lines)


def main(arguments: list[str]) -> None:
    """A table for each file; with `--show SITUATION` first, what went wrong there phrase by phrase."""
    show = arguments[1] if arguments[:1] == ["--show"] else ""
    for name in arguments[2:] if show else arguments:
        phrases = rows(Path(name))
        if show:
            print("\n".join(f"{outcome:<9} {phrase}" for outcome, phrase in wrong(phrases, show)))
        else:
            print(f"{name}\n{table(matrix(phrases))}")


if __name__ == "__main__":
    main(sys.argv[1:])
