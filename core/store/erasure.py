"""Forgetting a person: every row of theirs, what stands about them in a coach's rows, and the bytes on the disk.

`secure_delete` overwrites what is deleted; what is left in unused corners goes when the file is written anew
(`bot/database/wiping.py`, or `compact` where nobody waits). No table that grows is read whole for it: each statement goes by
an index, and each reference to a person or a thread has one.
"""

import json
import re
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from typing import Any

from core.store import tables
from core.store.connection import Store
from core.store.people import Role
from core.store.times import ms

TALK = ("button", "thread", "inbox", "outbox", "watch", "planned", "detail")  # no part of a training record
# In a raw update, also one that came from a group or was typed behind the bot's name in another chat.
SENDERS = (
    *("$.message.chat.id", "$.message.from.id", "$.edited_message.chat.id", "$.edited_message.from.id"),
    *("$.callback_query.from.id", "$.inline_query.from.id"),
)
# A message gets its person when it is handled; a stranger's never does, nor one from a group.
NOBODYS = (
    "idx_inbox_open WHERE handled_at IS NULL",
    "idx_inbox_of_nobody WHERE person IS NULL AND handled_at IS NOT NULL AND body IS NOT NULL",
)
COACHES = "SELECT id FROM person WHERE role = 'coach'"
CHATS = "SELECT chat FROM person WHERE role = 'coach'"
# Buttons with the number of an alert or a page.
NO_PERSON = ("menu:alert:*", "menu:clients:*", "menu:everybody:*")
TEXT = "json_extract(about, '$.text')"  # of a note that waits for the end of quiet hours
NOT_GONE = "sent_at IS NULL AND dropped IS NULL"
TO_WIPE = "compact"  # the setting that says since when something erased is to be wiped from the file
PERSONAL_SETTINGS = ("refused",)  # settings whose name ends in a chat's number
# A coach's: whom the next words are about, as a number at the beginning of the value.
SETTINGS_ABOUT = ("call_note", "on_the_table", "chart_seen")


def erase(store: Store, person: int) -> None:
    """All of it, in the caller's transaction."""
    # The order of the tables does not matter: references are checked at the commit.
    store.execute("PRAGMA defer_foreign_keys = ON")
    _elsewhere(store, person)
    for table in ("button", *tables.personal(store)):
        store.execute(f"DELETE FROM {table} WHERE person = ?", [person])
    store.execute("UPDATE person SET coach = NULL WHERE coach = ?", [person])
    store.execute("DELETE FROM person WHERE id = ?", [person])


def close(store: Store, person: int) -> None:
    """All but the training record: contacts, messages, conversations; nobody can write to them any more."""
    store.execute("PRAGMA defer_foreign_keys = ON")
    _elsewhere(store, person)
    for table in TALK:
        store.execute(f"DELETE FROM {table} WHERE person = ?", [person])
    store.execute("UPDATE alert SET next_at = NULL WHERE person = ?", [person])
    store.execute("UPDATE person SET chat = NULL, role = ? WHERE id = ?", [Role.LEFT.value, person])


def _elsewhere(store: Store, person: int) -> None:
    """What names the person in the rows of coaches and of the program itself."""
    about = [person]
    threads = f"SELECT id FROM thread WHERE person IN ({COACHES}) AND json_extract(brief, '$.client') = ?"
    store.execute(f"DELETE FROM button WHERE thread IN ({threads})", about)
    _buttons_about(store, person)
    store.execute(f"UPDATE outbox SET thread = NULL WHERE thread IN ({threads})", about)
    store.execute(f"DELETE FROM thread WHERE id IN ({threads})", about)
    store.execute(
        f"DELETE FROM planned WHERE person IN ({COACHES}) AND json_extract(about, '$.client') = ?", about
    )
    _invitations(store, person)
    for name in PERSONAL_SETTINGS:
        store.execute(
            "DELETE FROM setting WHERE name = ? || ':' || (SELECT chat FROM person WHERE id = ?)",
            [name, person],
        )
    for name in SETTINGS_ABOUT:
        store.execute(
            "DELETE FROM setting WHERE name GLOB ?1 || ':*' AND value || '|' GLOB ?2 || '[|:]*'",
            [name, person],
        )
    _without_a_name(store, person)
    _forget_words_of_coaches(store, person)


def _buttons_about(store: Store, person: int) -> None:
    """Coaches' buttons that name the person or an alert about them: SQLite gives both numbers to the next ones."""
    others = "".join(f" AND value NOT GLOB '{form}'" for form in NO_PERSON)
    store.execute(
        f"DELETE FROM button WHERE person IN ({COACHES})"
        f" AND (value GLOB 'menu:*:' || ?1 OR value GLOB 'menu:*:' || ?1 || '/*'){others}",
        [person],
    )
    # Words that a coach may still send, to whomever: they may name anybody.
    store.execute(f"DELETE FROM button WHERE person IN ({COACHES}) AND value GLOB 'menu:send_words:*'")
    # "alert:take:4+7" answers two at once.
    store.execute(
        f"DELETE FROM button WHERE person IN ({COACHES}) AND EXISTS (SELECT 1 FROM alert WHERE alert.person = ?"
        " AND (value GLOB 'alert:*' OR value GLOB 'menu:alert:*')"
        " AND instr(replace(value, '+', ':') || ':', ':' || alert.id || ':') > 0)",
        [person],
    )


def _invitations(store: Store, person: int) -> None:
    """The one that was used, and earlier ones by the same name that were not."""
    store.execute(
        "DELETE FROM invitation WHERE used_by = ?1 OR (used_by IS NULL AND EXISTS (SELECT 1 FROM person AS p"
        " WHERE p.id = ?1 AND p.name = invitation.name AND p.coach = invitation.coach"
        " AND p.created_at >= invitation.made_at))",
        [person],
    )


def _without_a_name(store: Store, person: int) -> None:
    """Rows of the chat that were written before it was known whose it is, and stops of buttons."""
    chat = "(SELECT chat FROM person WHERE id = ?)"
    store.execute(f"DELETE FROM outbox WHERE chat = {chat}", [person])
    said = ", ".join(f"json_extract(body, '{place}')" for place in SENDERS)
    for where in NOBODYS:
        found = f"SELECT update_id FROM inbox INDEXED BY {where} AND {chat} IN ({said})"
        store.execute(f"DELETE FROM inbox WHERE update_id IN ({found})", [person])


def _forget_words_of_coaches(store: Store, person: int) -> None:
    """What coaches wrote and read word for word names their clients; it is kept for two weeks only, now less.

    What has not gone out to a coach yet goes when it names the person.
    """
    store.execute(
        "UPDATE inbox SET body = NULL WHERE body IS NOT NULL AND handled_at IS NOT NULL"
        f" AND person IN ({COACHES})"
    )
    store.execute(
        f"UPDATE outbox SET body = NULL WHERE body IS NOT NULL AND NOT ({NOT_GONE}) AND chat IN ({CHATS})"
    )
    for letter in _letters_naming(store, person):
        store.execute("DELETE FROM outbox WHERE id = ?", [letter])
    store.execute(
        f"DELETE FROM planned WHERE done_at IS NOT NULL AND person IN ({COACHES}) AND {TEXT} IS NOT NULL"
    )
    for note in _notes_naming(store, person):
        store.execute("DELETE FROM planned WHERE id = ?", [note])


def _letters_naming(store: Store, person: int) -> list[int]:
    """Letters for coaches that have not gone out and name the person, in words or in a picture."""
    rows = store.rows(f"SELECT id, body FROM outbox WHERE {NOT_GONE} AND chat IN ({CHATS})")
    named = _naming(store, person)
    return [row["id"] for row in rows if any(map(named, _texts(json.loads(row["body"]))))]


def _notes_naming(store: Store, person: int) -> list[int]:
    rows = store.rows(
        f"SELECT id, {TEXT} AS text FROM planned WHERE done_at IS NULL AND person IN ({COACHES})"
        f" AND {TEXT} IS NOT NULL"
    )
    named = _naming(store, person)
    return [row["id"] for row in rows if named(row["text"])]


def _texts(value: Any) -> Iterator[str]:
    """Every text inside a letter's body: its words, its buttons' labels, the names in a picture."""
    if isinstance(value, str):
        yield value
    inside = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    for one in inside:
        yield from _texts(one)


def _naming(store: Store, person: int) -> Callable[[str], bool]:
    """Whether a text names the person: the whole name, and not as a part of somebody else's.

    An alert about Anastasia must not go because Ana leaves.
    """
    [row] = store.rows("SELECT name FROM person WHERE id = ?", [person])
    name = row["name"]
    others = [
        one["name"]
        for one in store.rows("SELECT DISTINCT name FROM person WHERE id <> ? AND name <> ?", [person, name])
    ]
    longer = sorted((one for one in others if name in one), key=len, reverse=True)
    whole = re.compile(rf"(?<!\w){re.escape(name)}(?!\w)")

    def named(text: str) -> bool:
        for other in longer:
            text = text.replace(other, " ")
        return whole.search(text) is not None

    return named


def letters_wait(store: Store, person: int) -> bool:
    """Whether something for the person, or about them for their coach, has not gone out yet."""
    letter = store.row(
        f"SELECT 1 FROM outbox WHERE {NOT_GONE} AND chat IN (SELECT chat FROM person"
        " WHERE id = ? OR id = (SELECT coach FROM person WHERE id = ?)) LIMIT 1",
        [person, person],
    )
    return letter is not None or bool(_notes_naming(store, person))


def known_before(store: Store, person: int, at: datetime) -> bool:
    """Whether there is a person of this number who joined before then."""
    return store.row("SELECT 1 FROM person WHERE id = ? AND created_at <= ?", [person, ms(at)]) is not None


def since(wanted: str) -> datetime:
    """Since when the file is to be wiped, by the setting; earlier versions did not say."""
    try:
        return datetime.fromisoformat(wanted)
    except ValueError:
        return datetime.min.replace(tzinfo=UTC)


def compact(store: Store) -> bool:
    """Rewrite the file without what was deleted, and empty its log. False: somebody reads, so try again later.

    Takes as long as the database is large, and must stand outside a transaction. Raises sqlite3.Error.
    """
    store.execute("VACUUM")
    row = store.row("PRAGMA wal_checkpoint(TRUNCATE)")
    return row is not None and row[0] == 0
