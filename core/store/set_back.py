"""The clock ran ahead and was set back: what was put off by it is due as long from now as it was from then."""

from datetime import datetime, timedelta

from core.store.connection import Store
from core.store.times import ms

# No alert waits longer than this for its next round (see core.safety.escalation).
LONGEST_ROUND = timedelta(days=1)
LONG_AGO = timedelta(hours=1)  # a call so late says that we were away; own caution, no source


def pull_back(store: Store, now: datetime) -> None:
    """Planned talks, letters, alerts and timers. Timers wake at once: an early wake-up keeps its time."""
    here = ms(now)
    # The time at which a row was made is never changed; one that is due before that was pulled back already.
    store.execute(
        "UPDATE planned SET due_at = due_at - made_at + ? WHERE done_at IS NULL AND made_at > ? AND due_at >= made_at",
        [here, here],
    )
    store.execute(
        "UPDATE outbox SET not_before = ? WHERE sent_at IS NULL AND dropped IS NULL AND not_before > ?",
        [here, here],
    )
    latest = ms(now + LONGEST_ROUND)
    store.execute("UPDATE alert SET next_at = ? WHERE settled_at IS NULL AND next_at > ?", [latest, latest])
    store.execute("UPDATE thread SET wake_at = ? WHERE wake_at > ?", [here, here])


def overdue(store: Store, now: datetime) -> None:
    """Bands that were on when the machine went off, nobody knows for how long: their call comes now, as a late one."""
    store.execute("UPDATE watch SET next_at = min(next_at, ?)", [ms(now - LONG_AGO)])
