"""The next load of a movement, what to expect of it, and why. The theory is in `core.progression.prior`."""

from core.progression.advising import advise
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
