"""What must happen at a time whatever the dialogues do: bands on, alerts, planned talks."""

from datetime import datetime

from core.store.connection import Store
from core.store.duties.alerts import (
    OpenAlert,
    again,
    alert_by_id,
    alert_sent,
    alerts_since,
    ask_alert_at,
    due_alerts,
    not_arrived,
    open_alerts,
    raise_alert,
    same_alert,
    settle_alert,
    take_alert,
)
from core.store.duties.bands import (
    Watch,
    any_watch,
    banded,
    called,
    due_watches,
    limit_now,
    unwatch,
    watch,
    watch_by_id,
    watch_later,
    watches,
)
from core.store.duties.talks import (
    Planned,
    begun_days,
    due_talks,
    last_talk,
    next_talk,
    noted,
    open_talk,
    plan,
    planned,
    reminded_of,
    talk_done,
    talk_later,
    unplan,
    unplan_due,
    unplan_first,
    unplan_session,
)
from core.store.times import moment

__all__ = [
    "OpenAlert",
    "Planned",
    "Watch",
    "again",
    "alert_by_id",
    "alert_sent",
    "alerts_since",
    "any_watch",
    "ask_alert_at",
    "banded",
    "begun_days",
    "called",
    "due_alerts",
    "due_talks",
    "due_watches",
    "last_talk",
    "limit_now",
    "next_due",
    "next_talk",
    "not_arrived",
    "noted",
    "open_alerts",
    "open_talk",
    "plan",
    "planned",
    "raise_alert",
    "reminded_of",
    "same_alert",
    "settle_alert",
    "take_alert",
    "talk_done",
    "talk_later",
    "unplan",
    "unplan_due",
    "unplan_first",
    "unplan_session",
    "unwatch",
    "watch",
    "watch_by_id",
    "watch_later",
    "watches",
]


def next_due(store: Store) -> datetime | None:
    """The earliest of all due times; None: nothing is due ever."""
    row = store.row(
        "SELECT min(at) AS at FROM ("
        " SELECT min(wake_at) AS at FROM thread WHERE wake_at IS NOT NULL"
        " UNION ALL SELECT min(next_at) FROM watch"
        " UNION ALL SELECT min(next_at) FROM alert WHERE next_at IS NOT NULL"
        " UNION ALL SELECT min(due_at) FROM planned WHERE done_at IS NULL)"
    )
    return None if row is None or row["at"] is None else moment(row["at"])
