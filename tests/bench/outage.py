"""`python -m tests.bench.outage [--seeds 1000]`: how late alerts are after an hour without a network."""

import argparse
import statistics

from tests.simulation.outage import late_s


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", type=int, default=1000)
    parser.add_argument("--first", type=int, default=1)
    wanted = parser.parse_args()
    found = [late_s(seed) for seed in range(wanted.first, wanted.first + wanted.seeds)]
    p99 = statistics.quantiles(found, n=100)[98]
    print(
        f"{len(found)} outages of an hour: alerts out after {statistics.median(found):.1f} s (median),"
        f" {p99:.1f} s (p99, wanted 35), {max(found):.1f} s (at most)"
    )
    return int(p99 > 35)


if __name__ == "__main__":
    raise SystemExit(main())
