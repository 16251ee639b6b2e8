"""Are alerts worth reading? How many led to an action, and which causes never do."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from core.facts import CoachDid
from core.safety.causes import Cause, Tier

FEWEST_ALERTS = 3  # of one cause before "never" says anything; own caution, no source
ACTED_WITHIN = timedelta(hours=24)  # of the alert; own caution, no source
OWN_BUTTON = "alert_"  # an action by a button of the alert; its note is the alert's cause
# A tap that says "seen" and changes nothing for the client.
ONLY_READ = frozenset({"alert_take", "alert_settle"})
# "Clear to train" that answers a question: this client may train without a refill that can be seen.
DECIDES = frozenset({("alert_settle", Cause.UNSEEN_REFILL)})
# By these the coach answers what the calendar or the load model asked, or tidies up: no alert leads to them.
OF_ITS_OWN = frozenset(
    {
        "load_used",
        "load_kept",
        "loads_ask",
        "loads_auto",
        "gave_cue",
        "reviewed",
        "renamed",
        "handed_over",
        "travel",
        "pressure_estimate",
        "exported",
    }
)


@dataclass(frozen=True, slots=True)
class AlertSeen:
    """One alert: its cause and tier, whether somebody did more than read it, and `ripe`: had a day's time for it."""

    cause: Cause
    tier: Tier
    acted: bool
    ripe: bool = True


def led_to(cause: Cause, raised_at: datetime, last_at: datetime, did: Iterable[CoachDid]) -> bool:
    """Whether a coach (whoever) did something for the client because of an alert; `last_at`: said again.

    By a button of this alert, whenever; by anything else within a day of what was said first or last.
    """
    return any(raised_at <= one.at and _because_of(cause, raised_at, last_at, one) for one in did)


def _because_of(cause: Cause, raised_at: datetime, last_at: datetime, did: CoachDid) -> bool:
    if did.action.startswith(OWN_BUTTON):
        return did.note == cause and (did.action not in ONLY_READ or (did.action, cause) in DECIDES)
    if did.action in OF_ITS_OWN:
        return False
    return any(at <= did.at <= at + ACTED_WITHIN for at in (raised_at, last_at))


def by_tier(alerts: Iterable[AlertSeen], tier: Tier) -> tuple[int, int]:
    """(how many of this tier, how many of them led to an action)."""
    mine = [alert for alert in alerts if alert.tier == tier]
    return len(mine), sum(alert.acted for alert in mine)


def idle_causes(alerts: Iterable[AlertSeen]) -> list[Cause]:
    """Causes raised at least three times, a day ago or more, that never led to an action, the most frequent first."""
    known = list(alerts)
    useful = {alert.cause for alert in known if alert.acted}
    counts = Counter(alert.cause for alert in known if alert.cause not in useful and alert.ripe)
    idle = [(count, cause) for cause, count in counts.items() if count >= FEWEST_ALERTS]
    return [cause for _, cause in sorted(idle, key=lambda pair: (-pair[0], pair[1]))]
