"""How fast somebody may write: a bucket of tokens each. Words about stopping are never limited.

In memory on purpose: a restart gives everybody a full bucket, which harms nobody. Time is the messages' own, so
that what waited during an outage does not count as a flood.
"""

from collections import OrderedDict
from dataclasses import dataclass
from datetime import datetime
from typing import Final


@dataclass(frozen=True, slots=True)
class Rate:
    """At most `burst` at once, and `per_s` a second in the long run."""

    burst: float
    per_s: float


# Own choices, no source. A client in a hurry taps once a second; nobody types a code ten times by mistake.
CLIENT: Final = Rate(burst=120, per_s=1.0)
STRANGER: Final = Rate(burst=10, per_s=0.1)
# Refusals of what is forwarded: several pictures forwarded together come as so many messages.
FORWARDED: Final = Rate(burst=1, per_s=0.1)
# Chats; the one that was quiet longest is forgotten first, and so has a full bucket.
REMEMBERED: Final = 10_000


@dataclass(slots=True)
class Bucket:
    """What is left, and since when. `told`: that the limit was met was said already."""

    left: float
    at: datetime
    told: bool = False


class Limits:
    """One bucket for each chat, and another one once it is known."""

    def __init__(self) -> None:
        self.buckets: OrderedDict[tuple[int, Rate], Bucket] = OrderedDict()

    def allow(self, chat: int, rate: Rate, at: datetime) -> bool:
        """Take a token; False: there is none."""
        bucket = self.buckets.pop((chat, rate), None) or Bucket(rate.burst, at)
        self.buckets[chat, rate] = bucket  # the newest is last
        if len(self.buckets) > REMEMBERED:
            self.buckets.popitem(last=False)
        passed = max(0.0, (at - bucket.at).total_seconds())
        bucket.left = min(rate.burst, bucket.left + passed * rate.per_s)
        bucket.at = max(bucket.at, at)
        if bucket.left < 1:
            return False
        bucket.left -= 1
        bucket.told = False
        return True

    def first_refusal(self, chat: int, rate: Rate) -> bool:
        """Whether this flood has not been answered yet; from now on it has."""
        bucket = self.buckets[chat, rate]
        first, bucket.told = not bucket.told, True
        return first
