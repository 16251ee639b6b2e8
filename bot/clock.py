"""The one clock. Tests, `play` and the page of `try` shift it; `run` must not."""

import asyncio
import time
from datetime import UTC, datetime, timedelta


class Clock:
    """Wall time that may be shifted forward, and waiting on it.

    `sleep_until` counts by the monotonic clock, so a wall clock that is set while we wait does not matter;
    the sweep of the engine catches what a jump leaves due.
    """

    def __init__(self) -> None:
        self.shift = timedelta(0)
        self._moved = asyncio.Event()

    def now(self) -> datetime:
        """The time, UTC."""
        return datetime.now(UTC) + self.shift

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
        try:
            await asyncio.wait_for(self._moved.wait(), wait)
        except TimeoutError:
            return


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
