"""How many letters that can wait may begin now.

The official server takes about 30 messages a second from a bot and has it wait when there are more, sessions and
alerts included. So what can wait goes out in 20 a second at most, which leaves 10 for whoever trains.
"""

from datetime import datetime, timedelta

A_SECOND = 20.0  # reminders, weeks, reports; own choice
AT_ONCE = 5  # after a pause; own choice


class Pace:
    """Room for so many a second, and for a few at once."""

    def __init__(self, a_second: float = A_SECOND, at_once: int = AT_ONCE) -> None:
        self.a_second, self.at_once = a_second, at_once
        self.left = float(at_once)
        self.at: datetime | None = None

    def room(self, now: datetime) -> int:
        """How many may begin now. A clock set back gives none and takes none."""
        passed = max(0.0, (now - (self.at or now)).total_seconds())
        self.left, self.at = min(self.at_once, self.left + passed * self.a_second), now
        return int(self.left)

    def took(self, count: int) -> None:
        """So many have begun."""
        self.left -= count

    def next_at(self, now: datetime) -> datetime:
        """When there is room for one more."""
        return now + timedelta(seconds=max(0.0, 1 - self.left) / self.a_second)
