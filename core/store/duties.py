"""What must happen at a time whatever the dialogues do: bands on, alerts, planned talks."""

import json
from dataclasses import dataclass
from datetime import datetime
from sqlite3 import Row
from typing import Any

from core.safety.causes import Cause, Tier, tier_of
from core.store.connection import Store
from core.store.times import maybe_moment, maybe_ms, moment, ms

PROBE = 65_536  # bytes; own choice


@dataclass(frozen=True, slots=True)
class Watch:
    """Bands are on. `calls` counts how often the client was told to take them off."""

    id: int
    person: int
    session: str
    spell: str
    region: str
    on_at: datetime
    limit_s: int
    calls: int
    next_at: datetime


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


@dataclass(frozen=True, slots=True)
class Planned:
    """A dialogue to begin later."""

    id: int
    person: int
    dialogue: str
    about: dict[str, Any]
    due_at: datetime


# --- bands on ---
def watch(store: Store, entry: Watch) -> None:
    """Bands went on: watch them. A second "on" for the same spell changes nothing."""
    store.execute(
        "INSERT OR IGNORE INTO watch (person, session, spell, region, on_at, limit_s, calls, next_at)"
        " VALUES (?, ?, ?, ?, ?, ?, 0, ?)",
        [
            entry.person,
            entry.session,
            entry.spell,
            entry.region,
            ms(entry.on_at),
            entry.limit_s,
            ms(entry.next_at),
        ],
    )


def unwatch(store: Store, person: int, session: str, spell: str) -> None:
    """Bands came off."""
    store.execute(
        "DELETE FROM watch WHERE person = ? AND session = ? AND spell = ?", [person, session, spell]
    )


def called(store: Store, entry: Watch, next_at: datetime) -> None:
    """The client was told once more to take the bands off."""
    store.execute("UPDATE watch SET calls = calls + 1, next_at = ? WHERE id = ?", [ms(next_at), entry.id])


def limit_now(store: Store, entry: Watch, limit_s: int, next_at: datetime) -> None:
    """The client was told to take the bands off before their limit: that was the first call."""
    store.execute(
        "UPDATE watch SET limit_s = ?, calls = 1, next_at = ? WHERE id = ?", [limit_s, ms(next_at), entry.id]
    )


def watch_later(store: Store, entry: Watch, next_at: datetime) -> None:
    """Try this call again later; it does not count as given."""
    store.execute("UPDATE watch SET next_at = ? WHERE id = ?", [ms(next_at), entry.id])


def watches(store: Store, person: int) -> list[Watch]:
    """Bands that are on, for this person."""
    return [_watch(row) for row in store.rows("SELECT * FROM watch WHERE person = ? ORDER BY id", [person])]


def any_watch(store: Store) -> bool:
    """Whether anybody's bands are on."""
    return store.row("SELECT 1 FROM watch LIMIT 1") is not None


def watch_by_id(store: Store, watch_id: int) -> Watch | None:
    """One watch, None: the bands are off."""
    row = store.row("SELECT * FROM watch WHERE id = ?", [watch_id])
    return None if row is None else _watch(row)


def banded(store: Store) -> list[int]:
    """Everybody who has bands on."""
    return [row["person"] for row in store.rows("SELECT DISTINCT person FROM watch ORDER BY person")]


def due_watches(store: Store, now: datetime) -> list[Watch]:
    """Watches whose next call is due."""
    return [
        _watch(row) for row in store.rows("SELECT * FROM watch WHERE next_at <= ? ORDER BY id", [ms(now)])
    ]


def _watch(row: Row) -> Watch:
    return Watch(
        row["id"],
        row["person"],
        row["session"],
        row["spell"],
        row["region"],
        moment(row["on_at"]),
        row["limit_s"],
        row["calls"],
        moment(row["next_at"]),
    )


# --- alerts ---
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


# --- planned talks ---
def plan(
    store: Store, person: int, dialogue: str, about: dict[str, Any], due_at: datetime, now: datetime
) -> int:
    """Begin a dialogue at `due_at`."""
    return store.added(
        "INSERT INTO planned (person, dialogue, about, due_at, made_at, failures) VALUES (?, ?, ?, ?, ?, 0)",
        [person, dialogue, json.dumps(about), ms(due_at), ms(now)],
    )


def unplan(store: Store, person: int, dialogue: str) -> None:
    """Forget the person's planned talks of this kind."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL", [person, dialogue]
    )


def unplan_session(store: Store, person: int, dialogue: str, session: str) -> None:
    """Forget the person's planned talks of this kind about this session."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL"
        " AND json_extract(about, '$.session') = ?",
        [person, dialogue, session],
    )


def begun_days(store: Store, person: int, dialogue: str, session: str) -> set[str]:
    """Which talks of this kind about this session began already, by their `day`."""
    rows = store.rows(
        "SELECT json_extract(about, '$.day') AS day FROM planned WHERE person = ? AND dialogue = ?"
        " AND done_at IS NOT NULL AND json_extract(about, '$.session') = ?",
        [person, dialogue, session],
    )
    return {row["day"] for row in rows}


def unplan_due(store: Store, person: int, dialogue: str, now: datetime) -> None:
    """Forget those of the person's planned talks of this kind whose time has come."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL AND due_at <= ?",
        [person, dialogue, ms(now)],
    )


def due_talks(store: Store, now: datetime, most: int = 1000) -> list[Planned]:
    """Talks whose time has come, earliest first."""
    rows = store.rows(
        "SELECT * FROM planned WHERE done_at IS NULL AND due_at <= ? ORDER BY due_at, id LIMIT ?",
        [ms(now), most],
    )
    return [_planned(row) for row in rows]


def unplan_first(store: Store, person: int, dialogue: str) -> None:
    """Forget planned talks of this kind, but keep those that the person moved themselves ("again")."""
    store.execute(
        "DELETE FROM planned WHERE person = ? AND dialogue = ? AND done_at IS NULL"
        " AND json_extract(about, '$.again') IS NULL",
        [person, dialogue],
    )


def next_talk(store: Store, person: int, dialogue: str) -> Planned | None:
    """The person's next planned talk of this kind."""
    row = store.row(
        "SELECT * FROM planned WHERE done_at IS NULL AND person = ? AND dialogue = ? ORDER BY due_at LIMIT 1",
        [person, dialogue],
    )
    return None if row is None else _planned(row)


def planned(store: Store, person: int, dialogue: str) -> list[Planned]:
    """The person's planned talks of this kind, the next first."""
    rows = store.rows(
        "SELECT * FROM planned WHERE done_at IS NULL AND person = ? AND dialogue = ? ORDER BY due_at",
        [person, dialogue],
    )
    return [_planned(row) for row in rows]


def last_talk(store: Store, person: int, dialogue: str, now: datetime) -> Planned | None:
    """The person's latest planned talk of this kind that began and was due by `now`; None: there was none."""
    row = store.row(
        "SELECT * FROM planned WHERE done_at IS NOT NULL AND person = ? AND dialogue = ? AND due_at <= ?"
        " ORDER BY due_at DESC LIMIT 1",
        [person, dialogue, ms(now)],
    )
    return None if row is None else _planned(row)


def reminded_of(store: Store, person: int) -> set[str]:
    """The names of the sessions whose reminder began already."""
    rows = store.rows(
        "SELECT json_extract(about, '$.name') AS name FROM planned"
        " WHERE person = ? AND dialogue = 'reminding' AND done_at IS NOT NULL",
        [person],
    )
    return {row["name"] for row in rows if row["name"]}


def open_talk(store: Store, planned: int) -> Planned | None:
    """The talk of this number as it stands now; None: it is done, or forgotten.

    SQLite gives the number of a forgotten talk to the next one, so it may be another than it was.
    """
    row = store.row("SELECT * FROM planned WHERE id = ? AND done_at IS NULL", [planned])
    return None if row is None else _planned(row)


def talk_done(store: Store, planned: int, now: datetime) -> None:
    """The talk began (or was let go)."""
    store.execute("UPDATE planned SET done_at = ? WHERE id = ?", [ms(now), planned])


def talk_later(store: Store, planned: int, due_at: datetime) -> None:
    """Try again at `due_at`."""
    store.execute(
        "UPDATE planned SET failures = failures + 1, due_at = ? WHERE id = ?", [ms(due_at), planned]
    )


def _planned(row: Row) -> Planned:
    return Planned(row["id"], row["person"], row["dialogue"], json.loads(row["about"]), moment(row["due_at"]))


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


# --- settings of the program itself ---
def setting(store: Store, name: str) -> str | None:
    """A stored value."""
    row = store.row("SELECT value FROM setting WHERE name = ?", [name])
    return None if row is None else row["value"]


def set_setting(store: Store, name: str, value: str) -> None:
    """Store a value."""
    store.execute("INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)", [name, value])


def forget_setting(store: Store, name: str) -> None:
    """The value is not set any more."""
    store.execute("DELETE FROM setting WHERE name = ?", [name])


def try_to_write(store: Store) -> None:
    """Write as much as a few messages need, and take it away again. Raises sqlite3.Error when that cannot be."""
    with store.transaction():
        set_setting(store, "probe", "." * PROBE)
    with store.transaction():
        forget_setting(store, "probe")
