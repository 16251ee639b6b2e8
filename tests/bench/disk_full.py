"""Every write of a played session fails once, as on a full disk: what is lost, what is doubled.

`python -m tests.bench.disk_full` prints one line; exit code 1 when anything differs.
"""

import sys

from tests.bot.database.test_disk_full import session_with_a_full_disk_at


def main() -> int:
    """Sweep."""
    expected, writes = session_with_a_full_disk_at(0)
    differing = [at for at in range(1, writes + 1) if session_with_a_full_disk_at(at)[0] != expected]
    print(f"{writes} writes, each failed once: {len(differing)} sessions differ {differing[:5]}")
    return 1 if differing else 0


if __name__ == "__main__":
    sys.exit(main())
