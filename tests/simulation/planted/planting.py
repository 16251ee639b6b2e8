"""How a bug is put into the real code and taken out again."""

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from typing import Any

Broken = Callable[[], AbstractContextManager[None]]
PLANTED: dict[str, Broken] = {}


def bug(owner: Any, name: str) -> Callable[[Callable[[Any], Any]], Callable[[Any], Any]]:
    """Registers a bug: `make` gets what stands at `owner.name` and returns what stands there instead."""

    def register(make: Callable[[Any], Any]) -> Callable[[Any], Any]:
        @contextmanager
        def broken() -> Iterator[None]:
            right, wrong = getattr(owner, name), make(getattr(owner, name))
            assert wrong != right, f"{make.__name__} changes nothing: the code moved"
            setattr(owner, name, wrong)
            try:
                yield
            finally:
                setattr(owner, name, right)

        PLANTED[make.__name__] = broken
        return make

    return register


def nothing(*args: Any, **named: Any) -> None:
    """Forgotten."""
