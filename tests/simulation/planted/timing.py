"""Timers and planned talks."""

import itertools
from typing import Any

from bot.engine import Engine, due, turns
from bot.engine.days import calendar
from conversations.protocol import Turn
from conversations.session import sets
from core.store import duties, threads
from tests.simulation.planted.planting import bug, nothing


@bug(Engine, "__init__")
def timer_only_in_memory(right: Any) -> Any:
    def init(self: Any, store: Any, *rest: Any) -> None:
        with store.transaction():
            store.execute("UPDATE thread SET wake_at = NULL")
        right(self, store, *rest)

    return init


@bug(threads, "keep")
def timer_forgotten(right: Any) -> Any:
    return lambda store, thread, state, wake_at: right(store, thread, state, None)


@bug(threads, "keep")
def state_not_kept_now_and_then(right: Any) -> Any:
    numbers = itertools.count(1)

    def keep(*args: Any) -> None:
        if next(numbers) % 25:
            right(*args)

    return keep


@bug(duties, "talk_done")
def talk_begun_and_not_ticked_off(right: Any) -> Any:
    return nothing


@bug(sets, "go")
def go_never_comes(right: Any) -> Any:
    return lambda state, at: Turn(state)


@bug(due, "wake")
def timer_that_wakes_nobody(right: Any) -> Any:
    return lambda engine, thread, now: threads.keep(engine.store, thread.id, thread.state, None)


@bug(turns, "training")
def two_sessions_at_once(right: Any) -> Any:
    return nothing


@bug(calendar, "remind_next")
def no_next_reminder(right: Any) -> Any:
    return nothing


@bug(duties, "plan")
def every_reminder_twice(right: Any) -> Any:
    def plan(store: Any, person: int, dialogue: str, *rest: Any) -> int:
        if dialogue == "reminding":
            right(store, person, dialogue, *rest)
        return int(right(store, person, dialogue, *rest))

    return plan
