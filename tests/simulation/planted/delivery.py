"""What comes in, commits, and what goes out."""

import contextlib
import itertools
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from typing import Any

from bot.engine import gate, routing
from bot.net import intake, outbox
from core.store import connection, forgetting, inbox, mail, people
from tests.simulation.planted.planting import bug, nothing


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


@bug(inbox, "receive")
def dedupe_by_maximum(right: Any) -> Any:
    def receive(store: Any, update_id: int, body: Any, now: Any) -> bool:
        top = store.row("SELECT max(update_id) AS top FROM inbox")["top"] or 0
        return bool(update_id > top and right(store, update_id, body, now))

    return receive


@bug(inbox, "receive")
def no_dedupe(right: Any) -> Any:
    def receive(store: Any, update_id: int, body: Any, now: Any) -> bool:
        store.execute("DELETE FROM inbox WHERE update_id = ?", [update_id])
        return bool(right(store, update_id, body, now))

    return receive


@bug(inbox, "unhandled")
def newest_update_first(right: Any) -> Any:
    return lambda store, limit=200: list(reversed(right(store, limit)))


@bug(inbox, "unhandled")
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
