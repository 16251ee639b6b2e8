"""The same opening of many tests, played once in a process: then a stage is put where that play led.

Only a stage that nothing was done to yet is put there, and only where a test puts nothing in the code's place
(`conftest.py`). Everybody else plays it. What a stage holds is in its store, but for what `_holders` names;
`tests/bot/test_played_once.py` fails when
that is not all.
"""

import pickle
import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from bot.play.stage import Stage


@dataclass(frozen=True, slots=True)
class Mark:
    """A stage at a moment, to see later whether anything was done to it."""

    changes: int  # of the store
    given: tuple[object, ...]
    memory: bytes


@dataclass(frozen=True, slots=True)
class Moment:
    """Where a play led: its store, and what was in memory."""

    store: sqlite3.Connection
    memory: bytes


moments: dict[str, Moment] = {}
patched = False  # whether the test that runs puts something in the code's place; set before each test


def once(opening: str, stage: Stage, mark: Mark, play: Callable[[], None]) -> None:
    """Play the opening of this name, or put the stage where it led before; `mark` was made when nothing was done yet."""
    if patched or not _untouched(stage, mark):
        play()
    elif opening in moments:
        _put(stage, moments[opening])
    else:
        play()
        moments[opening] = _moment(stage)


def mark(stage: Stage) -> Mark:
    """The stage as it is now."""
    return Mark(stage.engine.store.connection.total_changes, _given(stage), _memory(stage))


def _untouched(stage: Stage, since: Mark) -> bool:
    connection = stage.engine.store.connection
    if type(connection) is not sqlite3.Connection or connection.total_changes != since.changes:
        return False  # encrypted, watched, or written to
    return _given(stage) == since.given and _values(stage) == pickle.loads(since.memory)


def _given(stage: Stage) -> tuple[object, ...]:
    """What a test may have given the stage to do its work with."""
    outbox = stage.outbox
    return outbox.sender, outbox.sender.draw, stage.engine.make_week, stage.watch, dict(stage.minds)


def _moment(stage: Stage) -> Moment:
    copy = sqlite3.connect(":memory:")
    stage.engine.store.connection.backup(copy)
    return Moment(copy, _memory(stage))


def _put(stage: Stage, moment: Moment) -> None:
    moment.store.backup(stage.engine.store.connection)
    for (holder, name), value in zip(_held(stage), pickle.loads(moment.memory), strict=True):
        setattr(holder, name, value)


def _memory(stage: Stage) -> bytes:
    return pickle.dumps(_values(stage))


def _values(stage: Stage) -> list[Any]:
    return [getattr(holder, name) for holder, name in _held(stage)]


def _held(stage: Stage) -> list[tuple[Any, str]]:
    return [(holder, name) for holder, names in _holders(stage) for name in names.split()]


def _holders(stage: Stage) -> Iterator[tuple[Any, str]]:
    """What holds something that a play changes, and the names of that."""
    exchange, engine, outbox = stage.api._exchange, stage.engine, stage.outbox
    yield stage, "deeds count offset seen letters_at"
    yield stage.clock, "_now"
    yield stage.api._faults, "_planned"
    yield stage.api.upkeep, "webhook secret commands"
    yield exchange, "files paths open_queries version _next_message_id _next_query_id _next_file"
    yield exchange.mailbox, "_next_id _pending _latest_poll allowed"
    for chat in exchange.chats.values():
        yield chat, "blocked messages notices keyboard"
    yield engine, "countdowns letters_before"
    yield engine.limits, "buckets"
    yield engine.store, "ahead"
    yield outbox, "paused_until last_pause silent_since back problem landed flying"
    yield outbox.pace, "at left"
    yield outbox.sender, "known"
    yield outbox.pace, "left at"
