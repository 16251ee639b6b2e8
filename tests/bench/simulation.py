"""Sweeps of the simulation, and one seed again.

`python -m tests.bench.simulation --seed 7 --journal` plays one seed aloud, `--seeds 200` many; `--planted`
plants every bug in turn (`--seeds`: stories to notice it in); `--crashes` kills the scripted session at every
commit and write (`--seeds`: shuffled histories); `--power --seeds 10000` cuts the power at recorded writes.
"""

import argparse
import random
import tempfile
import time
import traceback
from pathlib import Path

from tests.simulation import catching, power, scene, scripted
from tests.simulation.planted import PLANTED


def planted(names: list[str], most: int) -> int:
    """Break the code in one place after the other; how many bugs nobody noticed."""
    unnoticed = 0
    wrong = catching.caught(None, range(1, most + 1))
    print(f"without a bug: {wrong or 'all well'}", flush=True)
    for name in names or list(PLANTED):
        began, found = time.perf_counter(), catching.caught(name, range(1, most + 1))
        unnoticed += found is None
        took = f"{time.perf_counter() - began:5.1f} s"
        print(f"{name:40} {took}  {'NOT CAUGHT' if found is None else found[:150]}", flush=True)
    print(f"{unnoticed} of {len(names or PLANTED)} planted bugs not caught")
    return unnoticed


def crashes(orders: int) -> int:
    """Every commit and write of the scripted session killed, the disk full at each write, updates shuffled."""
    commits, writes, as_always = scripted.undisturbed()
    bad = 0
    for name, numbers in (
        ("kill_before", commits),
        ("kill_after", commits),
        ("kill_writes", writes),
        ("full_writes", writes),
    ):
        wrong = [no for no in numbers if _struck(name, no) != as_always]
        print(f"{name}: {len(numbers)} points, {len(wrong)} end otherwise {wrong[:5]}", flush=True)
        bad += len(wrong)
    wrong = [no for no in range(orders) if scripted.after(lambda fate: None, mischief=no) != as_always]
    print(f"orders: {orders} shuffled histories, {len(wrong)} end otherwise {wrong[:5]}")
    return bad + len(wrong)


def _struck(name: str, number: int) -> scripted.Outcome:
    return scripted.after(lambda fate: getattr(fate, name).add(number))


def power_cuts(most: int) -> int:
    """Cuts at recorded writes, as the store writes and (the control) with fewer syncs."""
    lost = {}
    for synchronous in ("FULL", "NORMAL"):
        with tempfile.TemporaryDirectory() as folder:
            recorded = power.record(synchronous, Path(folder))
        dice = random.Random(1)
        cuts = dice.choices(range(len(recorded.events)), k=most)
        lost[synchronous] = power.lost_at_cuts(recorded, cuts, dice)
        print(f"{synchronous}: {most} cuts, lost a confirmed commit, broken file: {lost[synchronous]}")
    return sum(lost["FULL"]) + (lost["NORMAL"][0] == 0)


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seed", type=int)
    parser.add_argument("--seeds", type=int, default=20)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--days", type=float, default=1)
    parser.add_argument("--clients", type=int, default=5)
    parser.add_argument("--journal", action="store_true")
    parser.add_argument("--planted", nargs="*", metavar="NAME")
    parser.add_argument("--crashes", action="store_true")
    parser.add_argument("--power", action="store_true")
    wanted = parser.parse_args()
    if wanted.crashes:
        return min(1, crashes(wanted.seeds))
    if wanted.power:
        return min(1, power_cuts(wanted.seeds))
    if wanted.planted is not None:
        return min(1, planted(wanted.planted, wanted.seeds))
    seeds = [wanted.seed] if wanted.seed is not None else range(wanted.first, wanted.first + wanted.seeds)
    bad = 0
    began = time.perf_counter()
    for seed in seeds:
        try:
            scene.story(seed, wanted.days, wanted.clients, wanted.journal)
        except Exception as problem:
            bad += 1
            print(f"seed {seed}: {type(problem).__name__}: {problem}")
            if not isinstance(problem, AssertionError) or wanted.seed is not None:
                traceback.print_exc()
    print(f"{len(seeds)} worlds, {bad} bad, {time.perf_counter() - began:.1f} s")
    return 1 if bad else 0


if __name__ == "__main__":
    raise SystemExit(main())
