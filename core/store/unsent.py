"""Letters of one commit that a later one of the same commit makes untrue: they do not go out."""

from core.store.connection import Store


def newest(store: Store) -> int:
    """The number of the newest letter; what has a higher one was written since, 0: there is none."""
    row = store.row("SELECT id FROM outbox WHERE id > 0 ORDER BY id DESC LIMIT 1")
    return 0 if row is None else int(row["id"])


def take_back(store: Store, chat: int, question: str, after: int) -> bool:
    """Drop this chat's letters of this name that came after letter `after`; True: there was one.

    Only what is not committed yet is surely not on its way.
    """
    cursor = store.execute(
        "UPDATE outbox SET dropped = 'replaced' WHERE id > ? AND chat = ? AND question = ? AND thread IS NULL"
        " AND sent_at IS NULL AND dropped IS NULL",
        [after, chat, question],
    )
    return cursor.rowcount > 0
