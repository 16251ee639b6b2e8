"""All tables as they stand, for exports and for a person's own records: nothing new is forgotten here.

A practice's export holds its records. What only makes the program run stays out of it: tokens and codes open doors,
and words as they were typed are kept for two weeks only, which a file on somebody's disk would outlive. A person's
own records ("my data") hold all that is kept about them, but for tokens.
"""

from collections.abc import Iterator
from datetime import datetime
from sqlite3 import Row
from typing import Any, get_args

from core.facts import Fact
from core.store.connection import Store
from core.store.facts import table_of
from core.store.times import moment, ms

LEFT_OUT = {"button"}  # random tokens that open a chat's buttons
# Every table stands in one of these three; a test fails for one that does not.
OF_CLIENTS = (
    *("person", "agreed", "detail", "screening_answer", "screening_done", "cleared"),
    *("plan_given", "plan_ended", "paused", "travelling", "calendar_changed", "load_moved"),
    *("session_started", "answered", "bands_on", "cuff_checked", "set_done", "walk_done", "bands_off"),
    *("session_ended", "rated", "noticed", "alert", "measured", "band_owned", "coach_did"),
)
OF_COACHES = ("stand_in", "template_saved")  # a coach's own, about no client
PLUMBING = {
    "button": "tokens of buttons: whoever has one can tap",
    "inbox": "messages word for word, for two weeks; what they said is in the facts",
    "invitation": "codes, hashed, that open the door",
    "outbox": "letters word for word, for two weeks, with the tokens of their buttons",
    "planned": "what comes next and when: made from the plan, and words that wait for the morning",
    "setting": "the program's own notes to itself",
    "thread": "conversations half way; what was answered in them is in the facts",
    "watch": "bands that are on at this moment; `bands_on` and `bands_off` keep them for good",
}

TIMES = {"at", "until", "not_before"}  # columns of milliseconds that do not end in _at


def names(store: Store) -> list[str]:
    """The tables with something of the practice in them, by name."""
    found = store.rows(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~'"
        " AND name NOT LIKE '~_%' ESCAPE '~' ORDER BY name"
    )
    return [row["name"] for row in found if row["name"] not in LEFT_OUT]


def personal(store: Store) -> list[str]:
    """The tables whose rows belong to a person."""
    return [name for name in names(store) if "person" in columns(store, name)]


def columns(store: Store, table: str) -> list[str]:
    """The names of a table's columns, in order."""
    return [row["name"] for row in store.rows(f"PRAGMA table_info({table})")]


def rows(store: Store, table: str, person: int | None = None) -> Iterator[dict[str, Any]]:
    """All rows, or a person's, oldest first; times as aware datetimes in UTC."""
    key = "id" if table == "person" else "person"
    only, values = ("", []) if person is None else (f" WHERE {key} = ?", [person])
    for row in store.execute(f"SELECT * FROM {table}{only} ORDER BY rowid", values):
        yield _row(row)


def elsewhere(store: Store, person: int) -> dict[str, list[dict[str, Any]]]:
    """What is kept about a client in rows of others: the invitation they used, without its code, and what coaches are
    in the middle of about them, or are to be asked later.
    """
    coaches = "person IN (SELECT id FROM person WHERE role = 'coach')"
    found = {
        "invitation": "SELECT name, coach, made_at, expires_at, used_at FROM invitation WHERE used_by = ?",
        "coach_thread": "SELECT person AS coach, dialogue, begun_at, brief, state FROM thread"
        f" WHERE {coaches} AND state IS NOT NULL AND json_extract(brief, '$.client') = ?",
        "coach_planned": "SELECT person AS coach, dialogue, due_at, about FROM planned"
        f" WHERE {coaches} AND done_at IS NULL AND json_extract(about, '$.client') = ?",
    }
    return {name: [_row(row) for row in store.execute(sql, [person])] for name, sql in found.items()}


def _row(row: Row) -> dict[str, Any]:
    return {name: _shown(name, row[name]) for name in row.keys()}  # noqa: SIM118 - a Row iterates its values


def _shown(name: str, value: Any) -> Any:
    is_time = isinstance(value, int) and (name in TIMES or name.endswith("_at"))
    return moment(value) if is_time else value


def rewind(store: Store, at: datetime) -> None:
    """Make this copy what the database was at that time, as far as the week's digest looks. Never on the original."""
    then = ms(at)
    for kind in get_args(Fact):
        store.execute(f"DELETE FROM {table_of(kind)} WHERE noted_at > ?", [then])
    store.execute("DELETE FROM alert WHERE raised_at > ?", [then])
    store.execute("UPDATE alert SET settled_at = NULL, settled_how = NULL WHERE settled_at > ?", [then])
    store.execute("DELETE FROM inbox WHERE received_at > ?", [then])
    store.execute("DELETE FROM planned WHERE made_at > ?", [then])
    store.execute("UPDATE planned SET done_at = NULL WHERE done_at > ?", [then])
