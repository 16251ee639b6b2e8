"""`python -m tests.bench.outage [--seeds 1000]`: how late alerts are after an hour without a network."""

import argparse
import statistics
from concurrent.futures import ProcessPoolExecutor

from tests.simulation.outage import late

WANTED_S = 35.0


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", type=int, default=1000)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=1, help="processes")
    wanted = parser.parse_args()
    with ProcessPoolExecutor(wanted.jobs) as pool:
        found = list(pool.map(late, range(wanted.first, wanted.first + wanted.seeds)))
    freely = [one.seconds for one in found if not one.told_to_wait]
    p99 = _shown("outages of an hour", [one.seconds for one in found])
    _shown("of them without a wait that the server asked for (429)", freely)
    return int(p99 > WANTED_S)


def _shown(what: str, late_s: list[float]) -> float:
    """One line; the p99."""
    p99 = statistics.quantiles(late_s, n=100)[98]
    print(
        f"{len(late_s)} {what}: the last alert out after {statistics.median(late_s):.1f} s (median),"
        f" {p99:.1f} s (p99, wanted {WANTED_S:.0f}), {max(late_s):.1f} s (at most)"
    )
    return p99


if __name__ == "__main__":
    raise SystemExit(main())
