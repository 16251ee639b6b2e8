"""One way to write down what a reader makes of a text: a value, or the name of what was unclear."""

from collections.abc import Callable
from typing import Any

from conversations.answers import Unclear


def outcome(read: Callable[..., Any], text: str, *args: Any, **kwargs: Any) -> Any:
    """The value read, or the `Why` of the refusal."""
    try:
        return read(text, *args, **kwargs)
    except Unclear as problem:
        return problem.reason
