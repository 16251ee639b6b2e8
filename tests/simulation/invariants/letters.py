"""Letters: they leave, in order, and whoever cannot be reached is known."""

import itertools
from collections import defaultdict
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from core.store.times import moment, ms
from tests.simulation.invariants.looking import Looker
from tests.simulation.world import COACH, Violation

if TYPE_CHECKING:
    from tests.simulation.world import World


SLOW_LINE = timedelta(minutes=3)  # until a letter is out, with refusals and time-outs
FORGOTTEN_BLOCK = (
    "SELECT name FROM person AS p WHERE unreachable_at IS NULL AND EXISTS (SELECT 1 FROM outbox WHERE person = p.id"
    " AND dropped = 'blocked' AND created_at > (SELECT coalesce(max(received_at), 0) FROM inbox WHERE person = p.id))"
)


class Letters(Looker):
    """The outbox, and what phones got of it."""

    def __init__(self, world: "World", posted: dict[int, datetime]) -> None:
        """`posted`: letters that overtake others, and when they were first seen."""
        super().__init__(world)
        self.posted = posted
        # How often the coach heard that a client blocked the bot.
        self.told: dict[str, int] = defaultdict(int)

    def coach_knows_who_blocked(self) -> None:
        """Somebody who blocked the bot: the coach was told, once."""
        for row in self._new("told", f"SELECT id, body FROM outbox WHERE id > ? AND chat = {COACH}"):
            for client in self.world.everybody:
                self.told[client.name] += f"{client.name} can't be reached" in row["body"]
        for client in self.world.everybody:
            if self.told[client.name] > client.blocks:
                heard = self.told[client.name]
                raise Violation(f"the coach heard {heard} times that {client.name} blocked the bot")
        for row in self.rows("SELECT * FROM person WHERE role = 'client' AND unreachable_at IS NOT NULL"):
            told = "SELECT 1 FROM outbox WHERE chat = ? AND created_at >= ? AND body LIKE ?"
            if not self.rows(told, COACH, row["unreachable_at"], f"%{row['name']} can't be reached%"):
                raise Violation(f"{row['name']} blocked the bot and the coach does not know")

    def letters_leave(self) -> None:
        """With the network up nothing waits for long."""
        if self._disturbed():
            return
        waiting = "SELECT * FROM outbox WHERE sent_at IS NULL AND dropped IS NULL AND created_at <= ?"
        for row in self.rows(waiting, ms(self.now - SLOW_LINE)):
            if self._calm_for(moment(row["created_at"]), SLOW_LINE):
                raise Violation(f"a letter waits since {moment(row['created_at'])}: {row['body']}")

    def at_the_end(self, erased: bool = False) -> None:
        """Calm again: nothing waits, nothing is lost. `erased`: somebody's words are gone as they wished."""
        waiting = self.rows("SELECT * FROM outbox WHERE sent_at IS NULL AND dropped IS NULL")
        if waiting:
            raise Violation(f"{len(waiting)} letters never left: {waiting[0]['body']}")
        kept = self.rows(
            "SELECT count(*) AS n, sum(handled_at IS NULL) AS open, count(failed) AS bad FROM inbox"
        )[0]
        made = len(self.world.line.numbers)
        if (kept["n"] != made and not erased) or kept["open"] or kept["bad"]:
            raise Violation(
                f"{made} updates were made, {kept['n']} kept, {kept['open']} not dealt with, {kept['bad']} failed"
            )
        self._in_order()
        self._delivered()
        for row in self.rows(FORGOTTEN_BLOCK):
            raise Violation(
                f"{row['name']} has blocked the bot, has not written since, and nobody knows any more"
            )

    def _delivered(self) -> None:
        """A letter that is called sent is on the phone; one that was dropped had a reason that never passes."""
        phones = self.world.line.phones
        shown = {chat: {message.id for message in phone.history} for chat, phone in phones.items()}
        for row in self.rows("SELECT * FROM outbox WHERE kind != 'answer'"):
            phone = phones[row["chat"]]
            if row["dropped"] not in (None, "blocked"):
                raise Violation(f"a letter was dropped ({row['dropped']}): {row['body']}")
            if row["dropped"] is None and row["message"] not in shown[row["chat"]]:
                raise Violation(
                    f"a letter counts as sent and is not on the phone of {phone.name}: {row['body']}"
                )

    def _in_order(self) -> None:
        rows = self.rows(
            "SELECT chat, id, message FROM outbox WHERE priority > 0 AND message IS NOT NULL ORDER BY chat, id"
        )
        for earlier, later in itertools.pairwise(rows):
            if earlier["chat"] == later["chat"] and earlier["message"] > later["message"]:
                raise Violation(f"letters of {later['chat']} out of order: {earlier['id']}, {later['id']}")
        overtaken = self.rows(
            "SELECT a.id AS alert, n.id AS other, n.sent_at AS at FROM outbox AS a JOIN outbox AS n USING (chat)"
            " WHERE a.priority = 0 AND n.priority > 0 AND n.message < a.message AND n.sent_at > a.created_at"
        )
        # A letter bears the time of what was said, so that it may look older than it is.
        for row in overtaken:
            if row["at"] > ms(self.posted[row["alert"]]) and not self.world.clock.was_set:
                raise Violation(f"letter {row['other']} overtook the alert {row['alert']}")
