"""Forgetting what was said word for word, and then that something was said: a few rows at a time.

All of a large practice's day at once would hold up whoever is in a session for seconds.
"""

from datetime import datetime, timedelta

from core.store.connection import Store
from core.store.times import ms

BODIES_KEPT = timedelta(days=14)
IDS_KEPT = timedelta(days=30)

# What a step of forgetting does, each on the oldest rows, found by an index of only those rows. Words go before
# ids: a row comes into the index of ids when its words are gone.
# A letter is out, or was dropped after its last try.
_GONE_AT = "coalesce(sent_at, not_before)"
_GONE = "(sent_at IS NOT NULL OR dropped IS NOT NULL)"
_OLD_WORDS = (
    "UPDATE inbox SET body = NULL WHERE update_id IN (SELECT update_id FROM inbox"
    " WHERE body IS NOT NULL AND handled_at < ? ORDER BY handled_at LIMIT ?)",
    "UPDATE outbox SET body = NULL WHERE id IN (SELECT id FROM outbox"
    f" WHERE body IS NOT NULL AND {_GONE} AND {_GONE_AT} < ? ORDER BY {_GONE_AT} LIMIT ?)",
)
_OLD_IDS = (
    "DELETE FROM inbox WHERE update_id IN (SELECT update_id FROM inbox"
    " WHERE body IS NULL AND handled_at < ? ORDER BY handled_at LIMIT ?)",
    "DELETE FROM outbox WHERE id IN (SELECT id FROM outbox"
    f" WHERE body IS NULL AND {_GONE} AND {_GONE_AT} < ? ORDER BY {_GONE_AT} LIMIT ?)",
    "DELETE FROM button WHERE token IN (SELECT token FROM button WHERE made_at < ? ORDER BY made_at LIMIT ?)",
)
# The name of somebody who never came; few rows, so without an index.
_OLD_INVITATIONS = (
    "DELETE FROM invitation WHERE id IN (SELECT id FROM invitation"
    " WHERE used_by IS NULL AND expires_at < ? ORDER BY id LIMIT ?)"
)
# When a stranger was refused last, by their number; a group's, which is told once for ever, is nobody's.
_OLD_STRANGERS = (
    "DELETE FROM setting WHERE name IN (SELECT name FROM setting"
    " WHERE name GLOB 'refused:[0-9]*' AND value < ? LIMIT ?)"
)


def step(store: Store, now: datetime, most: int) -> bool:
    """Forget what was said word for word after 14 days, and ids, buttons and strangers after 30; facts stay.

    An invitation that nobody used goes when it has run out. At most so many rows of each kind at once; True: there
    may be more. What waits is never forgotten.
    """
    said, known = ms(now - BODIES_KEPT), ms(now - IDS_KEPT)
    steps: list[tuple[str, int | str]] = [(sql, said) for sql in _OLD_WORDS]
    steps += [(sql, known) for sql in _OLD_IDS]
    steps += [(_OLD_INVITATIONS, ms(now)), (_OLD_STRANGERS, (now - IDS_KEPT).isoformat())]
    return any([store.execute(sql, [before, most]).rowcount == most for sql, before in steps])
