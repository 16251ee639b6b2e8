"""Wall time that does not jump while bands are on: counted by the boot-time clock from an anchor.

A wall clock can be set (by a time server, by hand, after a suspend). Rests and the time under bands must not
follow it. So `now` is an anchor's wall time plus what the boot-time clock has counted since; the anchor is laid
afresh whenever nothing short runs, and it is kept, so that a restart on the same boot goes on with it.
"""

import json
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

BOOT_ID = Path("/proc/sys/kernel/random/boot_id")
A_JUMP = timedelta(seconds=1)


def wall_time() -> datetime:
    """The wall clock, UTC."""
    return datetime.now(UTC)


def since_boot() -> float:
    """Seconds since the machine started, also while it slept; where there is no such clock, the monotonic one."""
    clock = getattr(time, "CLOCK_BOOTTIME", None)
    return time.monotonic() if clock is None else time.clock_gettime(clock)


def this_boot() -> str:
    """An id of this start of the machine, "" where there is none: then a restart lays a fresh anchor."""
    return BOOT_ID.read_text().strip() if BOOT_ID.exists() else ""


@dataclass(slots=True)
class Steady:
    """Counts time from an anchor. `wall`, `counted` and `boot` are the machine's; tests bring their own."""

    wall: Callable[[], datetime] = wall_time
    counted: Callable[[], float] = since_boot
    boot: str = ""
    anchor: datetime | None = None
    anchor_counted: float = 0.0

    def __post_init__(self) -> None:
        self.settle()

    def settle(self) -> timedelta:
        """Lay the anchor at the wall clock's time; how far that jumped (0: less than a second)."""
        jump = timedelta(0) if self.anchor is None else self.wall() - self.now()
        if self.anchor is not None and abs(jump) < A_JUMP:
            return timedelta(0)
        self.anchor, self.anchor_counted = self.wall(), self.counted()
        return jump

    def now(self) -> datetime:
        """The anchor's time plus what was counted since."""
        assert self.anchor is not None, "the anchor is laid at the beginning"
        return self.anchor + timedelta(seconds=self.counted() - self.anchor_counted)

    def kept(self) -> str:
        """The anchor as stored."""
        assert self.anchor is not None, "the anchor is laid at the beginning"
        return json.dumps([self.boot, self.anchor.isoformat(), self.anchor_counted])

    def take_up(self, kept: str) -> bool:
        """Go on with a stored anchor; False: it is of another start of the machine, and means nothing."""
        boot, at, counted = json.loads(kept)
        if not self.boot or boot != self.boot or counted > self.counted():
            return False
        self.anchor, self.anchor_counted = datetime.fromisoformat(at), counted
        return True

    def go_on_from(self, last: datetime) -> bool:
        """Count from `last`, a time that has been, when the wall clock shows an earlier one; False: it does not."""
        if last - self.now() < A_JUMP:
            return False
        self.anchor, self.anchor_counted = last, self.counted()
        return True
