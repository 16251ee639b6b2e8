"""Sides in words, where each side works by itself."""

from conversations.answers import Count, Sided, Unclear, side_numbers
from conversations.correcting import without_preface
from conversations.session.state import State

MOST_REPS = 200


def side_named(state: State, text: str) -> int | None:
    """The place, in the plan's order, of the only side that words name; None: none or both."""
    if len(state.doing.sides) != 2:
        return None
    try:
        sided = side_numbers(without_preface(text), 0, MOST_REPS)
    except Unclear:
        return None
    said = {"left": sided.left, "right": sided.right}
    named = [no for no, side in enumerate(state.doing.sides) if said[side] is not None]
    return named[0] if len(named) == 1 else None


def in_plan_order(state: State, sided: Sided) -> tuple[Count, ...]:
    """The counts of these sides, the plan's first side first."""
    by_side = {"left": sided.left, "right": sided.right}
    return tuple(count for side in state.doing.sides if (count := by_side[side]) is not None)
