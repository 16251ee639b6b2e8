"""Does the simulation notice a planted bug?"""

from collections.abc import Iterable
from contextlib import nullcontext

from tests.simulation import scene
from tests.simulation.planted import PLANTED


def caught(name: str | None, seeds: Iterable[int], days: float = 1, clients: int = 4) -> str | None:
    """With this bug planted (None: with none): the first violation in these seeds' stories, None: all is well."""
    for seed in seeds:
        with PLANTED[name]() if name else nullcontext():
            try:
                scene.story(seed, days, clients)
            except Exception as problem:
                return f"seed {seed}: {type(problem).__name__}: {problem}"
    return None
