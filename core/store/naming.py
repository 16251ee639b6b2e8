"""The names of tables."""

import re
from functools import cache


@cache
def snake(name: str) -> str:
    """SetDone -> "set_done"."""
    return re.sub(r"(?<!^)(?=[A-Z])", "_", name).lower()
