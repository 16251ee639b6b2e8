"""The one clock. Tests, `play` and the page of `try` shift it; `run` must not."""

import asyncio
import contextlib
import time
from datetime import datetime, timedelta

from bot.clocks.steady import Steady, this_boot, wall_time


class Clock:
    """Steady wall time that may be shifted forward, and waiting on it.

    `sleep_until` counts by the monotonic clock and `now` by the boot-time clock, so a wall clock that is set
    while we wait does not matter.
    """

    def __init__(self, steady: Steady | None = None) -> None:
        self.shift = timedelta(0)
        self.steady = steady or Steady(boot=this_boot())
        self._moved = asyncio.Event()

    def now(self) -> datetime:
        """The time, UTC."""
        return self.steady.now() + self.shift

    def on_the_wall(self, moment: datetime) -> datetime:
        """What the machine's wall clock will show at `moment`."""
        return moment - self.now() + wall_time()

    def elapsed(self) -> float:
        """Seconds of the monotonic clock, for measuring."""
        return time.monotonic()

    def skip_to(self, moment: datetime) -> None:
        """Move forward to `moment`; never back. Whoever sleeps wakes up and looks again."""
        self.shift += max(timedelta(0), moment - self.now())
        self._moved.set()
        self._moved = asyncio.Event()

    async def sleep_until(self, moment: datetime) -> None:
        """Return at `moment`, or when the clock was shifted, whichever is first."""
        wait = (moment - self.now()).total_seconds()
        if wait <= 0:
            return
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(wait):
                await self._moved.wait()


class SetClock(Clock):
    """A clock that only moves when told to: for tests and `play`."""

    def __init__(self, start: datetime) -> None:
        super().__init__()
        self._now = start

    def now(self) -> datetime:
        """The time it was set to."""
        return self._now

    def skip_to(self, moment: datetime) -> None:
        """Move forward to `moment`; never back."""
        self._now = max(self._now, moment)
