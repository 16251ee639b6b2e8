"""Facts of many people read at once, where each would be asked for several times a person."""

from collections.abc import Collection, Iterator
from contextlib import contextmanager
from typing import Any

from core.store import facts
from core.store.connection import Store


@contextmanager
def read_ahead(store: Store, kinds: Collection[Any], persons: Collection[int]) -> Iterator[None]:
    """Inside, `current`, `since`, `newest` and `latest` know all facts of these kinds about these persons.

    They are all held in memory, so only kinds with few facts a person; and no fact may be put meanwhile.
    """
    store.ahead = {kind: facts.of_persons(store, kind, persons) for kind in kinds}
    try:
        yield
    finally:
        store.ahead = {}
