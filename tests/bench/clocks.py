"""Clocks that jump, machines that sleep and restart, over summer time in several zones.

    python -m tests.bench.clocks --jumps 10000

Each story is one practice of three clients who train every day; prints the seeds that fail, exits with 1 if any.
`--seed N` plays one again.
"""

import argparse
import logging
import sys
import time

from tests.simulation.clocks import Wrong, play


def main() -> int:
    logging.getLogger("cuffline").setLevel(logging.ERROR)
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--jumps", type=int, default=10_000)
    parser.add_argument("--seed", type=int)
    wanted = parser.parse_args()
    if wanted.seed is not None:
        print(f"seed {wanted.seed}: {play(wanted.seed)} jumps, all well")
        return 0
    began, seed, jumps, wrong = time.perf_counter(), 0, 0, 0
    while jumps < wanted.jumps:
        seed += 1
        try:
            jumps += play(seed)
        except Wrong as problem:
            wrong += 1
            jumps += 60
            print(problem)
    print(f"{jumps:,} jumps in {seed} practices, {wrong} wrong; {time.perf_counter() - began:.0f} s")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
