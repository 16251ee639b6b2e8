"""Quiet hours: what can wait, waits until they are over."""

from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta

from core.calendar.zones import instant, local


@dataclass(frozen=True, slots=True)
class QuietHours:
    """From `start` up to, not including, `end`, local; over midnight when `end` is earlier. Equal: none."""

    start: time = time(21)  # own caution, no source
    end: time = time(7)  # own caution, no source

    def __contains__(self, at: time) -> bool:
        if self.start <= self.end:
            return self.start <= at < self.end
        return at >= self.start or at < self.end


def defer(at: datetime, quiet: QuietHours, zone: str) -> datetime:
    """`at`, or (in UTC) the end of the quiet hours that it falls into. Never earlier than `at`.

    Alerts do not come here: they are sent at once.
    """
    here = local(at, zone)
    if here.time() not in quiet:
        return at
    day = here.date() if here.time() < quiet.end else here.date() + timedelta(days=1)
    end = instant(day, quiet.end, zone)
    # When the clocks go back, the end may come twice; after the first of them the second one counts.
    return end if end >= at.astimezone(UTC) else instant(day, quiet.end, zone, second=True)
