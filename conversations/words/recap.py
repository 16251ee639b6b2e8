"""What was done, what comes next time and why."""

from collections.abc import Sequence

SameOrNot = tuple[str, str, str, str]  # movement, was, use, why


def recap(
    sets: Sequence[tuple[str, Sequence[int], str]], moves: Sequence[SameOrNot], walks: Sequence[float] = ()
) -> str:
    """One line for what was done and one for what comes, per movement."""
    lines = [
        f"{name}{f' {doing}' if doing else ''}: {', '.join(map(str, reps))}." for name, reps, doing in sets
    ]
    lines += [f"Walk: {minutes:g} min." for minutes in walks]
    lines += [f"Next time, {name.lower()}: {why}" for name, _, _, why in moves]
    return "\n".join([*(lines or ["Nothing to note today."]), "I'll ask how you are tomorrow morning."])
