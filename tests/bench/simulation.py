"""Sweeps of the simulation, and one seed again.

`python -m tests.bench.simulation --seed 7 --journal` plays one seed aloud, `--seeds 200` many, `--month --seeds 1000`
months with a bad line; `--planted` plants every bug in turn (`--seeds`: stories to notice it in); `--crashes` kills
one session at every commit and write and fills its disk (`--seeds`: its updates given again; more in
`tests.bench.crashes`, other orders in `tests.bench.orders`); `--power --seeds 10000` cuts the power at recorded
writes. `--kept FILE`: stopped half way, the same again goes on.
"""

import argparse
import random
import tempfile
import time
from functools import partial
from pathlib import Path

from tests.bench import sweeping
from tests.simulation import catching, power, scene, scripted
from tests.simulation.planted import PLANTED

MONTH = 28  # days, two clients
NAMES = list(PLANTED)


def planted(wanted: argparse.Namespace) -> int:
    """Break the code in one place after the other; how many bugs nobody noticed."""
    names = wanted.planted or NAMES
    seeds = range(wanted.first, wanted.first + wanted.seeds)
    print(f"without a bug: {catching.caught(None, seeds) or 'all well'}", flush=True)
    numbers = [NAMES.index(name) for name in names]
    swept = sweeping.sweep(partial(_noticed, seeds), numbers, wanted, "(see the name)")
    unnoticed = [NAMES[number] for number in numbers if not swept.right.get(number)]
    for number in numbers:
        print(f"{NAMES[number]:40} {(swept.right.get(number) or 'NOT CAUGHT')[:150]}")
    print(f"{len(unnoticed)} of {len(names)} planted bugs not caught {unnoticed}")
    return len(unnoticed)


def _noticed(seeds: range, number: int) -> str | None:
    began, found = time.perf_counter(), catching.caught(NAMES[number], seeds)
    said = (found or "NOT CAUGHT").partition("\n")[0]
    print(f"{NAMES[number]:40} {time.perf_counter() - began:5.1f} s  {said[:150]}", flush=True)
    return found


def crashes(orders: int) -> int:
    """Every commit and write of the scripted session killed, the disk full at each write, updates given again."""
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
    print(f"given again: {orders} histories, {len(wrong)} end otherwise {wrong[:5]}")
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


def many(wanted: argparse.Namespace) -> int:
    """Practices, a seed each; how many went wrong."""
    seeds = range(wanted.first, wanted.first + wanted.seeds)
    again = f"python -m tests.bench.simulation --seed {{seed}} {_how(wanted)} --journal"
    began = time.perf_counter()
    swept = sweeping.sweep(partial(_lived, wanted), seeds, wanted, again)
    letters, updates = (sum(one[no] for one in swept.right.values()) for no in (0, 1))
    took = f"{time.perf_counter() - began:.1f} s"
    print(f"{len(swept.right)} worlds without anything lost, {letters} letters, {updates} updates; {took}")
    print(f"{len(swept.wrong)} bad: {sorted(swept.wrong)}")
    return len(swept.wrong)


def _how(wanted: argparse.Namespace) -> str:
    return f"{'--month' if wanted.month else f'--days {wanted.days}'} --clients {_clients(wanted)}"


def _clients(wanted: argparse.Namespace) -> int:
    return wanted.clients or (2 if wanted.month else 5)


def _lived(wanted: argparse.Namespace, seed: int) -> tuple[int, int]:
    """Messages that reached a phone, and updates that came from one."""
    days = MONTH if wanted.month else wanted.days
    world = scene.story(seed, days, _clients(wanted), wanted.journal, wanted.month)
    told = sum(not one.mine for phone in world.line.phones.values() for one in phone.history)
    return told, len(world.line.numbers)


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    sweeping.options(parser, 20)
    parser.add_argument("--seed", type=int)
    parser.add_argument("--days", type=float, default=1)
    parser.add_argument("--clients", type=int)
    parser.add_argument("--month", action="store_true")
    parser.add_argument("--journal", action="store_true")
    parser.add_argument("--planted", nargs="*", metavar="NAME", choices=NAMES)
    parser.add_argument("--crashes", action="store_true")
    parser.add_argument("--power", action="store_true")
    wanted = parser.parse_args()
    if wanted.seed is not None:
        wanted.first, wanted.seeds = wanted.seed, 1
    if wanted.crashes:
        return min(1, crashes(wanted.seeds))
    if wanted.power:
        return min(1, power_cuts(wanted.seeds))
    if wanted.planted is not None:
        return min(1, planted(wanted))
    return min(1, many(wanted))


if __name__ == "__main__":
    raise SystemExit(main())
