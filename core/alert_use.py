"""Are alerts worth reading? How many led to an action, and which causes never do."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from core.safety.causes import Cause, Tier

FEWEST_ALERTS = 3  # of one cause before "never" says anything; own caution, no source


@dataclass(frozen=True, slots=True)
class AlertSeen:
    """One alert: its cause and tier, and whether somebody did more than read it."""

    cause: Cause
    tier: Tier
    acted: bool


def by_tier(alerts: Iterable[AlertSeen], tier: Tier) -> tuple[int, int]:
    """(how many of this tier, how many of them led to an action)."""
    mine = [alert for alert in alerts if alert.tier == tier]
    return len(mine), sum(alert.acted for alert in mine)


def idle_causes(alerts: Iterable[AlertSeen]) -> list[Cause]:
    """Causes raised at least three times that never led to an action, the most frequent first."""
    known = list(alerts)
    useful = {alert.cause for alert in known if alert.acted}
    counts = Counter(alert.cause for alert in known if alert.cause not in useful)
    idle = [(count, cause) for cause, count in counts.items() if count >= FEWEST_ALERTS]
    return [cause for _, cause in sorted(idle, key=lambda pair: (-pair[0], pair[1]))]
