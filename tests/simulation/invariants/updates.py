"""Updates: none is lost, none counts twice, each has an answer."""

import json
from sqlite3 import Row
from typing import TYPE_CHECKING

from tests.simulation.invariants.looking import Looker
from tests.simulation.world import Violation

if TYPE_CHECKING:
    from tests.simulation.world import World


NOT_YOURS = "That button isn't for this chat."


class Updates(Looker):
    """What phones sent, and what became of it."""

    def __init__(self, world: "World") -> None:
        super().__init__(world)
        self.unanswered: set[int] = set()  # updates that the phones made and nobody has dealt with
        self.acknowledged: set[str] = set()

    def updates_are_handled(self) -> None:
        """No update breaks a dialogue; each known person's words and taps get an answer."""
        numbers = self.world.line.numbers
        self.unanswered.update(numbers[self.marks["made"] :])
        self.marks["made"] = len(numbers)
        handled = "SELECT * FROM inbox WHERE update_id IN (SELECT value FROM json_each(?)) AND handled_at IS NOT NULL"
        for row in self.rows(handled, json.dumps([*self.unanswered])):
            self.unanswered.discard(row["update_id"])
            if row["failed"] is not None:
                raise Violation(f"update {row['update_id']} failed:\n{self.world.tracebacks.last}")
            if row["person"] is not None:
                self._answered(row)
        self.marks["letters"] = self.rows("SELECT max(id) AS id FROM outbox")[0]["id"] or 0

    def _answered(self, row: Row) -> None:
        body = json.loads(row["body"])
        if "edited_message" in body:
            return
        chat = (body.get("message") or body["callback_query"])["from"]["id"]
        found = self.rows(
            "SELECT body FROM outbox WHERE chat = ? AND id > ? AND kind != 'answer'",
            chat,
            self.marks["letters"],
        )
        if "chat_instance" in str(body) and "message" not in body["callback_query"]:
            self._refused(found, chat)
        if not found:
            said = body.get("message", {}).get("text") or body.get("callback_query", {}).get("data")
            raise Violation(f"no answer to {said!r} of {chat}")

    def _refused(self, letters: list[Row], chat: int) -> None:
        if not any(NOT_YOURS in row["body"] for row in letters):
            raise Violation(f"a forged button of {chat} was obeyed: {[row['body'] for row in letters]}")

    def one_effect_for_one_update(self) -> None:
        """An update that came twice was dealt with once, and in its turn: so each tap is acknowledged."""
        rows = self._new("acknowledged", "SELECT * FROM outbox WHERE id > ? AND kind = 'answer' ORDER BY id")
        for row in rows:
            query = json.loads(row["body"])["query"]
            if query in self.acknowledged:
                raise Violation(f"tap {query} of {row['chat']} was dealt with twice")
            self.acknowledged.add(query)
            if int(query) < self.marks[f"tap of {row['chat']}"]:
                raise Violation(f"tap {query} of {row['chat']} was dealt with after a later one")
            self.marks[f"tap of {row['chat']}"] = int(query)

    def confirmed_updates_are_kept(self) -> None:
        """What the server was told to forget is in the inbox."""
        for number in self.world.line.confirmed:
            if not self.rows("SELECT 1 FROM inbox WHERE update_id = ?", number):
                raise Violation(f"update {number} was confirmed to the server and is not kept")
        self.world.line.confirmed.clear()
