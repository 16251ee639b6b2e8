"""The heart: one event, one transaction, then send. Synchronous; everything with `await` is outside.

`core` keeps raw updates, handles each in its own savepoint and commits the batch. `routing` decides whom an
update is for, `turns` gives an event to a dialogue and keeps what comes of it, `stopping` reads stop words
before anything else, `duties` does what is due, `acts` what coaches ask for, `briefs` what dialogues need to
know, `letters` turns words into letters.
"""

from bot.engine.core import Engine

__all__ = ["Engine"]
