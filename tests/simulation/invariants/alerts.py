"""Alerts: each leaves in its own commit, and goes on until a human answers."""

import json
from collections import defaultdict
from datetime import datetime, timedelta
from sqlite3 import Row
from typing import TYPE_CHECKING

from core.store.times import moment
from tests.simulation.invariants.looking import GRACE, Looker
from tests.simulation.world import COACH, SECOND, Violation

if TYPE_CHECKING:
    from tests.simulation.world import World


ROUNDS = ((timedelta(minutes=5), 2), (timedelta(minutes=15), 3))  # an alert of now: by then, so many sendings
NO_BURST = timedelta(minutes=11)  # two late sendings are 5 min apart
LONGEST_SILENCE = timedelta(hours=5)  # between two sendings of an open alert


class Alerts(Looker):
    """What was raised, and who heard of it."""

    def __init__(self, world: "World") -> None:
        super().__init__(world)
        self.sendings: dict[int, list[tuple[int, datetime]]] = defaultdict(list)  # alert -> (chat, when)
        self.posted: dict[int, datetime] = {}  # letters that overtake others, and when they were first seen
        self.whom = {COACH}  # an alert goes to one of these at once

    def alerts_go_out(self) -> None:
        """An alert of `now` goes out in its own commit."""
        for row in self._new("outbox", "SELECT * FROM outbox WHERE id > ? AND priority = 0 ORDER BY id"):
            self._note_sending(row)
        for row in self._new("alert", "SELECT * FROM alert WHERE id > ? ORDER BY id"):
            told = {chat for chat, _ in self.sendings[row["id"]]}
            if row["tier"] == "now" and not self.whom & told:
                raise Violation(f"an alert that went to nobody: {dict(row)}")

    def alerts_go_on(self) -> None:
        """It reaches a second human after 5 min, and never falls silent."""
        open_ones = "SELECT * FROM alert WHERE tier = 'now' AND taken_by IS NULL AND settled_at IS NULL"
        for row in self.rows(open_ones):
            self._escalates(row)

    def _note_sending(self, row: Row) -> None:
        """A new alert speaks for itself, a repeat for all whose numbers its first button has."""
        self.posted[row["id"]] = self.now
        body = json.loads(row["body"])
        for _, token in (body.get("buttons") or [])[:1]:
            found = self.rows("SELECT value FROM button WHERE token = ? AND value LIKE 'alert:%'", token)
            for one in found:
                named = [int(number) for number in one["value"].rpartition(":")[2].split("+")]
                for number in named if "not answered yet" in body["text"] else named[:1]:
                    self.sendings[number].append((row["chat"], moment(row["created_at"])))

    def _escalates(self, row: Row) -> None:
        sendings, raised = self.sendings[row["id"]], moment(row["raised_at"])
        if row["next_at"] is None or moment(row["next_at"]) > self.now + LONGEST_SILENCE:
            raise Violation(f"nobody answered and it does not go on: {dict(row)}")
        if self._calm_for(moment(row["next_at"])):
            raise Violation(f"an alert is overdue: {dict(row)}")
        rounds = len({at for _, at in sendings})
        # Late sendings do not come in a burst, so a disturbed escalation gets its minutes.
        grace = 2 * GRACE if self.world.calm_since <= raised else NO_BURST + GRACE
        for after, least in ROUNDS:
            if self._calm_for(raised + after, grace) and rounds < least:
                raise Violation(f"after {after} an alert went out {rounds} times: {dict(row)}")
            if self._calm_for(raised + after, grace) and SECOND not in [chat for chat, _ in sendings]:
                raise Violation(f"after {after} the second contact knows nothing: {dict(row)}")

    def flags_have_alerts(self) -> None:
        """Red-flag words that were dealt with have an alert."""
        for client in self.world.everybody:
            for message in list(client.flags):
                handled = self.rows(
                    "SELECT handled_at FROM inbox WHERE handled_at IS NOT NULL AND body LIKE ?",
                    f'%"message_id": {message},%',
                )
                if not handled:
                    continue
                client.flags.remove(message)
                at = handled[0]["handled_at"]
                fresh = (
                    "SELECT 1 FROM alert WHERE person = ? AND last_at = ? AND coalesce(settled_at, ?) >= ?"
                )
                if not self.rows(fresh, client.person, at, at, at):
                    raise Violation(f"a red flag of {client.name} without an alert (message {message})")
