"""Histories of three clients at once in any order: each must end in the same facts.

`python -m tests.bench.orders --seeds 10000 --jobs 2`; `--from` and `--kept FILE` as in the other sweeps.
"""

import argparse
import functools
import logging

from tests import schema
from tests.bench import sweeping
from tests.simulation.orders import Outcome, outcome


@functools.cache
def _as_always() -> Outcome:
    """In the process that plays the others, too: a loop with threads does not outlive a fork."""
    return outcome(None)


def _played(seed: int) -> int:
    found, as_always = outcome(seed), _as_always()
    assert found == as_always, [pair for pair in zip(found, as_always, strict=True) if pair[0] != pair[1]]
    return 1


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    sweeping.options(parser, 100)
    wanted = parser.parse_args()
    schema.copied()
    logging.getLogger("cuffline").setLevel(logging.ERROR)  # each tap given again is refused, which is no news
    seeds = range(wanted.first, wanted.first + wanted.seeds)
    again = "python -m tests.bench.orders --seeds 1 --from {seed}"
    swept = sweeping.sweep(_played, seeds, wanted, again)
    print(f"{len(swept.right)} histories end the same, {len(swept.wrong)} otherwise: {sorted(swept.wrong)}")
    return min(1, len(swept.wrong))


if __name__ == "__main__":
    raise SystemExit(main())
