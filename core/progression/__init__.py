"""The next load of a movement, what to expect of it, and why."""

from core.progression.records import (
    Action,
    Advice,
    Because,
    Caution,
    Explanation,
    Question,
    Reading,
    Reason,
    Request,
    SessionRecord,
)

__all__ = [
    "Action",
    "Advice",
    "Because",
    "Caution",
    "Explanation",
    "Question",
    "Reading",
    "Reason",
    "Request",
    "SessionRecord",
    "advise",
]


def advise(request: Request) -> Advice:
    """The load for the next session. Raises ValueError naming the field for input that cannot be right."""
    from core.progression.simple import simple_advice

    return simple_advice(request)
