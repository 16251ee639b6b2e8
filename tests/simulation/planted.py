"""Bugs on purpose: each breaks the real code in one place, and the simulation has to notice.

`PLANTED` maps a name to a function that makes a context: inside it the code is broken. A check that no planted
bug ever fails is no check; `python -m tests.bench.simulation --planted` plays all of them.
"""

import contextlib
import itertools
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import replace
from datetime import timedelta
from typing import Any

from bot.engine import Engine, buttons, due, gate, routing, turns
from bot.engine.days import calendar
from bot.engine.joining import clearances
from bot.engine.safety import alerts, stopping
from bot.engine.training import edited_counts
from bot.net import intake, outbox
from conversations.protocol import Turn
from conversations.session import counting, deciding, machine, sets, tally, which_set
from core.cuffs import Decision, Step
from core.cuffs.limbs import ALL
from core.facts import BandsOff, SetDone
from core.plans import Side
from core.safety import escalation
from core.store import connection, duties, facts, forgetting, mail, people, threads

# Seldom met: the bench plays more stories until these are noticed.
RARE = frozenset(
    "dedupe_by_maximum newest_update_first second_copy_counts_as_new old_button_obeyed who_blocked_is_forgotten"
    " tried_again_without_a_pause counted_into_a_settled_alert late_edit_changes_another_set"
    " correction_said_and_not_made second_contact_never_told every_reminder_twice gap_without_an_end"
    " alerts_stand_in_line newest_letter_first second_call_hours_later bands_too_long_and_no_alert".split()
)
Broken = Callable[[], AbstractContextManager[None]]
PLANTED: dict[str, Broken] = {}


def bug(owner: Any, name: str) -> Callable[[Callable[[Any], Any]], Callable[[Any], Any]]:
    """Registers a bug: `make` gets what stands at `owner.name` and returns what stands there instead."""

    def register(make: Callable[[Any], Any]) -> Callable[[Any], Any]:
        @contextmanager
        def broken() -> Iterator[None]:
            right, wrong = getattr(owner, name), make(getattr(owner, name))
            assert wrong != right, f"{make.__name__} changes nothing: the code moved"
            setattr(owner, name, wrong)
            try:
                yield
            finally:
                setattr(owner, name, right)

        PLANTED[make.__name__] = broken
        return make

    return register


def nothing(*args: Any, **named: Any) -> None:
    """Forgotten."""


# --- commits and the inbox ---
@bug(connection.Store, "transaction")
def dropped_commit(right: Any) -> Any:
    numbers = itertools.count(1)

    @contextmanager
    def transaction(self: Any) -> Iterator[None]:
        with right(self):
            yield
            if next(numbers) % 40 == 0:
                self.connection.real.execute("ROLLBACK")
                self.connection.real.execute("BEGIN")

    return transaction


@bug(connection.Store, "transaction")
def each_statement_by_itself(right: Any) -> Any:
    @contextmanager
    def transaction(self: Any) -> Iterator[None]:
        self.savepoint = contextlib.nullcontext
        yield

    return transaction


@bug(intake, "poll")
def confirmed_before_the_commit(right: Any) -> Any:
    async def poll(bot: Any, receive: Any) -> None:
        offset = None
        while True:
            updates = await intake.fetch(bot, offset)
            kept = [one for one in map(intake.numbered, updates) if one is not None]
            offset = max(number for number, _ in kept) + 1
            try:
                updates = await intake.fetch(bot, offset)  # which confirms
            finally:
                receive(kept)

    return poll


@bug(mail, "receive")
def dedupe_by_maximum(right: Any) -> Any:
    def receive(store: Any, update_id: int, body: Any, now: Any) -> bool:
        top = store.row("SELECT max(update_id) AS top FROM inbox")["top"] or 0
        return bool(update_id > top and right(store, update_id, body, now))

    return receive


@bug(mail, "receive")
def no_dedupe(right: Any) -> Any:
    def receive(store: Any, update_id: int, body: Any, now: Any) -> bool:
        store.execute("DELETE FROM inbox WHERE update_id = ?", [update_id])
        return bool(right(store, update_id, body, now))

    return receive


@bug(mail, "unhandled")
def newest_update_first(right: Any) -> Any:
    return lambda store, limit=200: list(reversed(right(store, limit)))


@bug(mail, "unhandled")
def only_the_last_of_a_batch(right: Any) -> Any:
    def unhandled(store: Any, limit: int = 200) -> Any:
        found = right(store, limit)
        store.execute("UPDATE inbox SET handled_at = 1 WHERE handled_at IS NULL")
        return found[-1:]

    return unhandled


@bug(forgetting, "step")
def pruned_at_once(right: Any) -> Any:
    def step(store: Any, now: Any, most: int) -> bool:
        store.execute("DELETE FROM inbox WHERE handled_at IS NOT NULL")
        return False

    return step


@bug(routing, "media")
def a_picture_breaks_it(right: Any) -> Any:
    def media(*args: Any) -> None:
        raise KeyError("photo")

    return media


# --- timers ---
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


# --- clearance ---
@bug(clearances, "now")
def clearance_never_read(right: Any) -> Any:
    return lambda engine, client: replace(right(engine, client), limbs=ALL, why=None)


# --- bands ---
@bug(duties, "watch")
def watch_not_written(right: Any) -> Any:
    return nothing


@bug(duties, "unwatch")
def watch_never_ended(right: Any) -> Any:
    return nothing


@bug(duties, "called")
def watch_ends_with_the_first_call(right: Any) -> Any:
    return lambda store, entry, next_at: duties.unwatch(store, entry.person, entry.session, entry.spell)


@bug(duties, "called")
def second_call_hours_later(right: Any) -> Any:
    return lambda store, entry, next_at: right(store, entry, next_at + timedelta(hours=3))


@bug(due, "_kind")
def bands_too_long_and_no_alert(right: Any) -> Any:
    def kind(*args: Any) -> Any:
        return due.CallKind.FIRST

    return kind


@bug(buttons, "safe_bound")
def bands_counted_from_processing(right: Any) -> Any:
    return lambda engine, button, incoming, now: now


@bug(turns, "record")
def bands_off_not_stored(right: Any) -> Any:
    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if isinstance(fact, BandsOff):
            duties.unwatch(engine.store, person, fact.session, fact.spell)
        else:
            right(engine, person, fact, message)

    return record


# --- alerts ---
@bug(duties, "alert_sent")
def escalation_stops_after_the_first(right: Any) -> Any:
    return lambda store, alert, next_at: right(store, alert, None)


@bug(escalation, "_whom")
def second_contact_never_told(right: Any) -> Any:
    return lambda rounds: (escalation.Who.COACH,)


@bug(alerts, "send")
def alert_in_a_later_commit(right: Any) -> Any:
    def send(engine: Any, alert_id: int) -> None:
        alert = duties.alert_by_id(engine.store, alert_id)
        if alert is not None and alert.calls == 0 and engine.clock() <= alert.raised_at:
            duties.alert_sent(engine.store, alert_id, engine.clock() + timedelta(seconds=30))
            return
        right(engine, alert_id)

    return send


@bug(alerts, "raise_alert")
def counted_into_a_settled_alert(right: Any) -> Any:
    def raise_alert(engine: Any, person: int, *rest: Any) -> None:
        row = engine.store.row("SELECT id FROM alert WHERE person = ? ORDER BY id DESC LIMIT 1", [person])
        if row is None:
            right(engine, person, *rest)
        else:
            duties.again(engine.store, row["id"], engine.clock())

    return raise_alert


@bug(alerts, "raise_alert")
def alert_forgotten(right: Any) -> Any:
    return nothing


@bug(stopping, "stopped")
def stop_words_unread(right: Any) -> Any:
    return lambda *args: False


@bug(turns, "barred")
def gate_skipped(right: Any) -> Any:
    return lambda *args, **named: None


@bug(threads, "button")
def anybodys_button(right: Any) -> Any:
    def button(store: Any, token: str, person: int) -> Any:
        row = store.row("SELECT * FROM button WHERE token = ?", [token])
        return row and threads.Button(person, row["thread"], row["question"], row["value"])

    return button


# --- sets ---
@bug(turns, "record")
def swapped_sides(right: Any) -> Any:
    other = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT, Side.BOTH: Side.BOTH}

    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if isinstance(fact, SetDone):
            fact = replace(fact, side=other[fact.side])
        right(engine, person, fact, message)

    return record


@bug(turns, "record")
def confirmed_and_not_stored(right: Any) -> Any:
    numbers = itertools.count(1)

    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if not isinstance(fact, SetDone) or next(numbers) % 6:
            right(engine, person, fact, message)

    return record


@bug(turns, "record")
def filed_under_the_next_set(right: Any) -> Any:
    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if isinstance(fact, SetDone):
            fact = replace(fact, set_no=fact.set_no + 1)
        right(engine, person, fact, message)

    return record


@bug(facts, "_same_key")
def correction_beside_the_first(right: Any) -> Any:
    return lambda store, person, fact: None


@bug(tally, "amend")
def correction_said_and_not_made(right: Any) -> Any:
    return lambda *args: replace(right(*args), effects=())


@bug(edited_counts, "amend")
def late_edit_changes_another_set(right: Any) -> Any:
    def amend(engine: Any, person: Any, text: str, message: int, at: Any) -> None:
        row = engine.store.row("SELECT min(message) AS first FROM set_done WHERE person = ?", [person.id])
        right(engine, person, text, row["first"] or message, at)

    return amend


@bug(which_set, "said_again")
def second_copy_counts_as_new(right: Any) -> Any:
    return nothing


@bug(machine, "_is_open")
def old_button_obeyed(right: Any) -> Any:
    return lambda state, question: True


@bug(deciding, "decide")
def check_always_passes(right: Any) -> Any:
    return lambda checks, so_far: Decision(Step.GO, (), 0)


@bug(counting, "typed")
def silent_on_what_it_cannot_read(right: Any) -> Any:
    def typed(state: Any, event: Any) -> Any:
        made = right(state, event)
        return made if made.effects else replace(made, replies=())

    return typed


# --- talks ---
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


# --- the outbox ---
@bug(outbox.Outbox, "_one")
def sent_before_it_is_sent(right: Any) -> Any:
    async def one(self: Any, letter: Any) -> Any:
        with self.store.transaction():
            mail.sent(self.store, letter.id, None, self.now())
        await self._send(letter)
        return nothing

    return one


@bug(outbox.Outbox, "_again")
def dropped_after_a_time_out(right: Any) -> Any:
    return lambda self, one, why: self._drop(one, why)


@bug(mail, "later")
def tried_again_without_a_pause(right: Any) -> Any:
    return lambda store, letter, not_before: None


@bug(outbox, "LONGEST_GAP_S")
def gap_without_an_end(right: Any) -> Any:
    return dict.fromkeys(right, 10_000.0)


@bug(outbox.Outbox, "_slow_down")
def waits_a_day_when_told_to_slow_down(right: Any) -> Any:
    def slow(self: Any, one: Any, wait: Any) -> Any:
        return lambda: mail.later(self.store, one.id, self.now() + timedelta(days=1))

    return slow


@bug(mail, "_HEADS")
def alerts_stand_in_line(right: Any) -> Any:
    return right.replace("priority = 0 AND", "priority = 99 AND")


@bug(mail, "_HEADS")
def newest_letter_first(right: Any) -> Any:
    return right.replace("min(id)", "max(id)")


@bug(people, "unreachable")
def who_blocked_is_forgotten(right: Any) -> Any:
    return nothing


@bug(gate, "allows")
def nobody_may_take_an_alert(right: Any) -> Any:
    return lambda *args: False
