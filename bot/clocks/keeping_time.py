"""Which clock holds: the wall clock, but while training runs the boot-time clock, across restarts too."""

import logging
import sqlite3
from contextlib import suppress
from datetime import datetime

from bot.clocks.steady import Steady
from bot.engine import Engine
from core.store import duties, set_back, settings, threads
from core.store.connection import Store

log = logging.getLogger("cuffline")

ANCHOR = "steady"  # the setting that keeps the clock's anchor
SHORT = ("session", "still_numb")  # dialogues that count minutes


def training(store: Store) -> bool:
    """Whether bands are on, or minutes are counted between them."""
    return duties.any_watch(store) or threads.any_live(store, SHORT)


def take_up(store: Store, steady: Steady) -> None:
    """At the start: training that goes on, goes on by the same clock, and never back in time.

    A machine without a clock of its own shows an earlier time after a power cut, until it has asked the network. How
    long it was off nobody knows, so whoever has bands on is called at once.
    """
    if not training(store):
        return
    kept, last = settings.get(store, ANCHOR), settings.get(store, "awake_at")
    if kept is not None and steady.take_up(kept):
        return
    if last is not None and steady.go_on_from(datetime.fromisoformat(last)):
        with store.transaction():
            set_back.overdue(store, steady.now())


def keep(engine: Engine, steady: Steady) -> None:
    """Follow the wall clock only while nobody trains; else keep the anchor for a restart."""
    store = engine.store
    if not training(store):
        jump = steady.settle()
        if jump:
            log.warning("the wall clock was set by %s; followed", jump)
            engine.clock_was_set()
    elif settings.get(store, ANCHOR) != steady.kept():
        # On a full disk only a restart would miss it; what matters is said by whoever writes next.
        with suppress(sqlite3.OperationalError), store.transaction():
            settings.put(store, ANCHOR, steady.kept())
