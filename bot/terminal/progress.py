"""A bar for long work, on standard error and only where somebody looks at it."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import click


@contextmanager
def bar(what: str) -> Iterator[Callable[[int, int], None]]:
    """Gives a function that is told how much is done, of how much."""
    if not sys.stderr.isatty():
        yield lambda done, total: None
        return
    with click.progressbar(length=1, label=what, file=sys.stderr) as shown:

        def tell(done: int, total: int) -> None:
            shown.length = max(total, 1)
            shown.update(done - shown.pos)

        yield tell
