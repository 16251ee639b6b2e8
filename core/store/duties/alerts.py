"""What the coach must know: a row for every cause, until somebody settled it."""

from dataclasses import dataclass
from datetime import datetime
from sqlite3 import Row

from core.safety.causes import Cause, Tier, tier_of
from core.store.connection import Store
from core.store.times import maybe_moment, maybe_ms, moment, ms


@dataclass(frozen=True, slots=True)
class OpenAlert:
    """Something the coach must know. `calls` counts how often it went out; `next_at` the next time.

    `said` at `raised_at`; said again `count` times in all, the last time as `newest` at `last_at` ("": as before).
    """

    id: int
    person: int
    cause: Cause
    tier: Tier
    said: str
    told: str
    newest: str
    raised_at: datetime
    last_at: datetime
    count: int
    calls: int
    next_at: datetime | None
    taken_by: int | None
    settled_at: datetime | None


def raise_alert(
    store: Store,
    person: int,
    cause: Cause,
    said: str,
    told: str,
    at: datetime,
    next_at: datetime | None,
) -> int:
    """A new alert's id."""
    return store.added(
        "INSERT INTO alert (person, cause, tier, said, told, raised_at, last_at, count, calls, next_at)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, 1, 0, ?)",
        [person, cause.value, tier_of(cause).value, said, told, ms(at), ms(at), maybe_ms(next_at)],
    )


def same_alert(store: Store, person: int, cause: Cause) -> OpenAlert | None:
    """The newest open alert of the same cause; None: there is none."""
    row = store.row(
        "SELECT * FROM alert WHERE person = ? AND cause = ? AND settled_at IS NULL ORDER BY id DESC LIMIT 1",
        [person, cause.value],
    )
    return None if row is None else _alert(row)


def again(store: Store, alert: int, at: datetime, said: str = "") -> None:
    """The same cause was raised once more, in these words; without words only that it goes on."""
    if said:
        store.execute("UPDATE alert SET count = count + 1, newest = ? WHERE id = ?", [said, alert])
    store.execute("UPDATE alert SET last_at = ? WHERE id = ?", [ms(at), alert])


def alert_by_id(store: Store, alert: int) -> OpenAlert | None:
    """One alert."""
    row = store.row("SELECT * FROM alert WHERE id = ?", [alert])
    return None if row is None else _alert(row)


def open_alerts(store: Store, person: int) -> list[OpenAlert]:
    """The person's alerts that nobody has settled, oldest first."""
    rows = store.rows("SELECT * FROM alert WHERE person = ? AND settled_at IS NULL ORDER BY id", [person])
    return [_alert(row) for row in rows]


def alerts_since(store: Store, person: int, since: datetime) -> list[OpenAlert]:
    """All alerts about the person since then."""
    rows = store.rows(
        "SELECT * FROM alert WHERE person = ? AND raised_at >= ? ORDER BY id", [person, ms(since)]
    )
    return [_alert(row) for row in rows]


def due_alerts(store: Store, now: datetime) -> list[OpenAlert]:
    """Alerts to be sent again."""
    # The sign keeps SQLite from reading every alert there ever was in the order of its ids.
    return [
        _alert(row) for row in store.rows("SELECT * FROM alert WHERE next_at <= ? ORDER BY +id", [ms(now)])
    ]


def alert_sent(store: Store, alert: int, next_at: datetime | None) -> None:
    """The alert went out once more."""
    store.execute("UPDATE alert SET calls = calls + 1, next_at = ? WHERE id = ?", [maybe_ms(next_at), alert])


def not_arrived(store: Store, coach: int, now: datetime) -> None:
    """This coach's chat took no message: alerts that went there once begin again now, with whoever is next.

    Whose they are is told by the buttons under them.
    """
    store.execute(
        "UPDATE alert SET calls = 0, next_at = ?1 WHERE tier = ?2 AND calls = 1"
        " AND settled_at IS NULL AND taken_by IS NULL"
        " AND EXISTS (SELECT 1 FROM button WHERE person = ?3 AND value = 'alert:hold:' || alert.id)",
        [ms(now), Tier.NOW.value, coach],
    )


def ask_alert_at(store: Store, alert: int, at: datetime) -> None:
    """Whoever took it is asked at `at` whether it is settled, and not before."""
    store.execute("UPDATE alert SET next_at = ? WHERE id = ? AND settled_at IS NULL", [ms(at), alert])


def take_alert(store: Store, alert: int, by: int, at: datetime, ask_at: datetime) -> None:
    """A coach is on it: no more repeats, but the question at `ask_at` whether it is settled."""
    store.execute(
        "UPDATE alert SET taken_by = ?, taken_at = ?, next_at = ? WHERE id = ? AND settled_at IS NULL",
        [by, ms(at), ms(ask_at), alert],
    )


def settle_alert(store: Store, alert: int, how: str, at: datetime) -> None:
    """Dealt with."""
    store.execute(
        "UPDATE alert SET settled_at = ?, settled_how = ?, next_at = NULL WHERE id = ?", [ms(at), how, alert]
    )


def _alert(row: Row) -> OpenAlert:
    return OpenAlert(
        row["id"],
        row["person"],
        Cause(row["cause"]),
        Tier(row["tier"]),
        row["said"],
        row["told"],
        row["newest"],
        moment(row["raised_at"]),
        moment(row["last_at"]),
        row["count"],
        row["calls"],
        maybe_moment(row["next_at"]),
        row["taken_by"],
        maybe_moment(row["settled_at"]),
    )
