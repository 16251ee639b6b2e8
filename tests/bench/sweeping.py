"""Long sweeps, seed by seed, in some processes: what fails is printed with the command that plays it again.

`--kept FILE` writes every result down as it comes; the same command again goes on where the file ends, and the
summary is about all of them.
"""

import argparse
import gc
import json
import multiprocessing
import os
import time
import traceback
from collections.abc import Callable, Iterable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

SAYS_EVERY_S = 60.0
TOLD = 2000  # characters of a failure's last lines


@dataclass
class Swept:
    """Results by seed, and of the seeds that failed what they said."""

    right: dict[int, Any] = field(default_factory=dict)
    wrong: dict[int, str] = field(default_factory=dict)

    def add(self, seed: int, right: Any, wrong: str | None) -> None:
        """What one seed found."""
        if wrong is None:
            self.right[seed] = right
        else:
            self.wrong[seed] = wrong


def options(parser: argparse.ArgumentParser, seeds: int) -> None:
    """The options that all sweeps have."""
    parser.add_argument("--seeds", type=int, default=seeds)
    parser.add_argument("--from", dest="first", type=int, default=1, metavar="SEED", help="the first seed")
    parser.add_argument("--jobs", type=int, default=1, help="processes")
    parser.add_argument("--kept", type=Path, metavar="FILE", help="results so far; goes on where it ends")


def sweep(one: Callable[[int], Any], seeds: Iterable[int], wanted: argparse.Namespace, again: str) -> Swept:
    """`one` of every seed that is not kept already; its result must go into JSON. `again`: how a seed is replayed."""
    found = _kept(wanted.kept)
    left = [seed for seed in seeds if seed not in found.right and seed not in found.wrong]
    began = said = time.perf_counter()
    with ProcessPoolExecutor(wanted.jobs, multiprocessing.get_context("fork"), _many_objects) as pool:
        for done, (seed, right, wrong) in enumerate(pool.map(_Tried(one), left), 1):
            found.add(seed, right, wrong)
            _keep(wanted.kept, seed, right, wrong)
            if wrong is not None:
                print(f"seed {seed}: {wrong[-TOLD:]}\nagain: {again.format(seed=seed)}", flush=True)
            if time.perf_counter() - said > SAYS_EVERY_S:
                said = time.perf_counter()
                print(f"{done} of {len(left)}, up to {seed}; {said - began:.0f} s", flush=True)
    return found


def _many_objects() -> None:
    """A world makes many objects and no rings of them: looking for rings less often saves a tenth of the time."""
    gc.freeze()
    gc.set_threshold(100_000)


@dataclass(frozen=True)
class _Tried:
    """Runs in a process of its own, which must be able to hand back what went wrong."""

    one: Callable[[int], Any]

    def __call__(self, seed: int) -> tuple[int, Any, str | None]:
        try:
            return seed, self.one(seed), None
        except Exception as problem:
            told = isinstance(problem, AssertionError)
            return seed, None, str(problem) if told else "".join(traceback.format_exception(problem))


def _kept(file: Path | None) -> Swept:
    found = Swept()
    if file is not None and file.exists():
        for line in file.read_text(encoding="utf-8").splitlines():
            found.add(*json.loads(line))
    return found


def _keep(file: Path | None, seed: int, right: Any, wrong: str | None) -> None:
    if file is not None:
        with file.open("a", encoding="utf-8") as kept:
            kept.write(json.dumps([seed, right, wrong]) + os.linesep)
