"""Time that passes only when told to, and a wall clock that somebody may set wrong."""

from datetime import datetime, timedelta

from bot.clocks.clock import Clock


class TwoClocks(Clock):
    """`true` is what happens in the world; `now()` is what the computer's wall clock says."""

    def __init__(self, start: datetime) -> None:
        super().__init__()
        self.true = start
        self.wrong_by = timedelta(0)

    @property
    def was_set(self) -> bool:
        """Whether anybody ever set the wall clock."""
        return bool(self.wrong_by)

    def now(self) -> datetime:
        """The wall clock."""
        return self.true + self.wrong_by

    def truly(self, wall: datetime) -> datetime:
        """The true time at which the wall clock will say so."""
        return wall - self.wrong_by
