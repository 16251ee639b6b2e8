"""Counts of several sets in words."""

from collections.abc import Iterable

from core.plans import Side


def counts_text(counts: Iterable[tuple[Side, int]]) -> str:
    """ "31, 16, 8", or where one side works at a time "left 28, 15, 8 / right 31, 16, 9"; sets in order."""
    by_side: dict[Side, list[str]] = {}
    for side, reps in counts:
        by_side.setdefault(side, []).append(str(reps))
    return " / ".join(_side(side, ", ".join(reps)) for side, reps in by_side.items())


def _side(side: Side, reps: str) -> str:
    return reps if side is Side.BOTH else f"{side} {reps}"
