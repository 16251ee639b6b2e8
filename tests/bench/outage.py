"""How late alerts are after an hour without a network.

`python -m tests.bench.outage --seeds 1000 --jobs 2 --kept FILE`; stopped half way, the same again goes on.
"""

import argparse
import statistics

from tests.bench import sweeping
from tests.simulation.outage import Late, late

WANTED_S = 35.0


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    sweeping.options(parser, 1000)
    wanted = parser.parse_args()
    seeds = range(wanted.first, wanted.first + wanted.seeds)
    again = "python -m tests.bench.outage --from {seed} --seeds 1"
    swept = sweeping.sweep(_one, seeds, wanted, again)
    found = [Late(*one) for one in swept.right.values()]
    print(f"{len(swept.wrong)} seeds without an alert, or with one that is not out: {sorted(swept.wrong)}")
    p99 = _shown("outages of an hour", [one.seconds for one in found])
    _shown("of them without a wait that the server asked for (429)", _freely(found))
    return int(p99 > WANTED_S or bool(swept.wrong))


def _one(seed: int) -> tuple[float, bool]:
    found = late(seed)
    return found.seconds, found.told_to_wait


def _freely(found: list[Late]) -> list[float]:
    return [one.seconds for one in found if not one.told_to_wait]


def _shown(what: str, late_s: list[float]) -> float:
    """One line; the p99."""
    if len(late_s) < 2:
        print(f"{what}: {late_s}")
        return max(late_s, default=0.0)
    p99 = statistics.quantiles(late_s, n=100)[98]
    print(
        f"{len(late_s)} {what}: the last alert out after {statistics.median(late_s):.1f} s (median),"
        f" {p99:.1f} s (p99, wanted {WANTED_S:.0f}), {max(late_s):.1f} s (at most)"
    )
    return p99


if __name__ == "__main__":
    raise SystemExit(main())
