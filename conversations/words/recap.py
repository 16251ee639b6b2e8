"""What was done, what comes next time and why."""

from collections.abc import Iterable, Sequence

from conversations.words.counts import counts_text
from core.plans import Side

Counts = Iterable[tuple[Side, int]]
Done = tuple[str, Counts, str]  # movement as the client calls it, side and reps of each set, load or rung
Move = tuple[str, str, str, str]  # movement, load or rung before, next, why (one sentence)

NOTHING = "No sets on record today, so the loads stay as they are."
TOMORROW = "I'll ask how you are, tomorrow morning at the latest."


def recap(
    sets: Sequence[Done], moves: Sequence[Move], walks: Sequence[float] = (), read: Sequence[str] = ()
) -> str:
    """One line for what was done and one for what comes next, per movement; `walks` in minutes with bands.

    `read`: what the numbers look like.
    """
    lines = [_done(*one) for one in sets]
    lines += [f"Walk with bands: {minutes:.0f} min." for minutes in walks]
    lines = lines or [NOTHING]
    return "\n".join([*lines, *read, *(_next(*move) for move in moves), TOMORROW])


def _done(name: str, counts: Counts, doing: str) -> str:
    return f"{name}{f', {doing}' if doing else ''}: {counts_text(counts)} reps."


def _next(name: str, was: str, use: str, why: str) -> str:
    """ "Next time, goblet squat: 12 kg to 13 kg. Your reps are climbing, ..."; unchanged loads are in the why."""
    change = f"{was} to {use}. " if was and use and was != use else ""
    if not change and use and use not in why:
        change = f"{use} again. "
    told = f"{change}{why}" if change else f"{why[:1].lower()}{why[1:]}"  # a sentence goes on after the colon
    return f"Next time, {name.lower()}: {told}"
