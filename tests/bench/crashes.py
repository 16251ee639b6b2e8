"""The process killed at every commit and write of the played stories: nothing lost, nothing doubled.

`python -m tests.bench.crashes` kills each story at all of its points; `--twice` kills it once more while it recovers,
`--encrypted` plays on a database under a key, `--every 5` takes each fifth point. `--kept FILE` writes every point
down; the same command again goes on where the file ends. `--aloud NAME` shows a story that nothing befalls.
"""

import argparse
import contextlib
import json
import time
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from pathlib import Path

from core.store import keys
from core.store.keys import Key
from tests.simulation import crashing
from tests.simulation.stories import STORIES
from tests.simulation.world import World

KEY = "0123456789abcdef" * 4
TOLD = 1500  # characters of what is wrong


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--story", action="append", choices=STORIES, help="only this one; may be repeated")
    parser.add_argument("--point", type=int, help="only this one")
    parser.add_argument("--every", type=int, default=1, metavar="N", help="each Nth point")
    parser.add_argument("--twice", action="store_true", help="and once more during the recovery")
    parser.add_argument("--encrypted", action="store_true", help="needs SQLCipher")
    parser.add_argument("--jobs", type=int, default=1, help="processes")
    parser.add_argument("--kept", type=Path, metavar="FILE", help="points so far; goes on where it ends")
    parser.add_argument("--aloud", choices=STORIES, metavar="NAME", help="show this story")
    wanted = parser.parse_args()
    if wanted.aloud:
        return _show(wanted.aloud)
    began = time.perf_counter()
    with ProcessPoolExecutor(wanted.jobs) as pool:
        names = wanted.story or list(STORIES)
        found = list(pool.map(_Killed(wanted), names))
    points, wrong = sum(one[0] for one in found), sum(one[1] for one in found)
    print(
        f"{points} crash points of {len(names)} stories, {wrong} end otherwise; {time.perf_counter() - began:.0f} s"
    )
    return min(1, wrong)


class _Killed:
    """One story, in a process of its own; how many points are done, with those before, and how many are wrong."""

    def __init__(self, wanted: argparse.Namespace) -> None:
        self.wanted = wanted

    def __call__(self, name: str) -> tuple[int, int]:
        key = Key(KEY) if self.wanted.encrypted else None
        with keys.using(key) if key else contextlib.nullcontext():
            return self._played(name)

    def _played(self, name: str) -> tuple[int, int]:
        wanted, before = self.wanted, _kept(self.wanted, name)
        as_always = crashing.whole(STORIES[name])
        points = [wanted.point] if wanted.point else range(1, as_always.points + 1, wanted.every)
        wrong = [point for point, said in before.items() if said]

        def told(point: int, said: str) -> None:
            before[point] = said
            _keep(wanted, name, point, said)
            if said:
                wrong.append(point)
                print(f"{name} at {point}: {said[:TOLD]}\nagain: {_again(wanted, name, point)}", flush=True)

        left = set(points) - set(before)
        if left:
            crashing.crashed(STORIES[name], left, as_always, told, wanted.twice)
        print(f"{name}: {len(before)} of {as_always.points} points, {len(wrong)} end otherwise", flush=True)
        return len(before), len(wrong)


def _again(wanted: argparse.Namespace, name: str, point: int) -> str:
    how = " --twice" * wanted.twice + " --encrypted" * wanted.encrypted
    return f"python -m tests.bench.crashes --story {name} --point {point}{how}"


def _kept(wanted: argparse.Namespace, name: str) -> dict[int, str]:
    if wanted.kept is None or not wanted.kept.exists():
        return {}
    lines = map(json.loads, wanted.kept.read_text(encoding="utf-8").splitlines())
    mine = [name, wanted.twice, wanted.encrypted]
    return {line["point"]: line["wrong"] for line in lines if line["of"] == mine}


def _keep(wanted: argparse.Namespace, name: str, point: int, said: str) -> None:
    if wanted.kept is not None:
        line = {"of": [name, wanted.twice, wanted.encrypted], "point": point, "wrong": said}
        with wanted.kept.open("a", encoding="utf-8") as kept:
            kept.write(json.dumps(line) + "\n")


def _show(name: str) -> int:
    def begin() -> World:
        world = STORIES[name].begin()
        world.aloud = True
        return world

    found = crashing.whole(replace(STORIES[name], begin=begin))
    print(f"{found.points} points, {sum(found.rows.values())} rows, {len(found.letters)} letters")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
