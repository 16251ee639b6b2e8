"""Timers, reminders and planned talks: each comes, in time and once."""

import json

from core.store.times import moment, ms
from tests.simulation.invariants.looking import GRACE, Looker
from tests.simulation.world import Violation

TWICE_PLANNED = (
    "SELECT person, json_extract(about, '$.session_day') AS day FROM planned WHERE dialogue = 'reminding'"
    " AND done_at IS NULL AND json_extract(about, '$.again') IS NULL GROUP BY 1, 2 HAVING count(*) > 1"
)
TIMED = ("set", "rest", "pause", "break", "walk")


class Timers(Looker):
    """What is to happen later."""

    def one_session_at_a_time(self) -> None:
        """Nobody is in two sessions, or in the questions before one and in another."""
        rows = self.rows(
            "SELECT person, group_concat(dialogue) AS what FROM thread WHERE state IS NOT NULL"
            " AND dialogue IN ('before', 'session') GROUP BY person HAVING count(*) > 1"
        )
        for row in rows:
            raise Violation(f"person {row['person']} is in two sessions at once: {row['what']}")

    def timers_are_kept(self) -> None:
        """A phase that ends by the clock has its time in the store."""
        for row in self._sessions():
            phase = json.loads(row["state"]).get("phase")
            if phase in TIMED and row["wake_at"] is None:
                raise Violation(f"a session in phase {phase} that nothing will wake")

    def nobody_oversleeps(self) -> None:
        """No timer is overdue."""
        late = "SELECT * FROM thread WHERE wake_at IS NOT NULL AND wake_at <= ? AND state IS NOT NULL"
        for row in self.rows(late, ms(self.now - GRACE)):
            if self._calm_for(moment(row["wake_at"])):
                raise Violation(f"a {row['dialogue']} of person {row['person']} overslept")

    def one_reminder_a_day(self) -> None:
        """A planned reminder comes once for its day."""
        rows = self.rows(
            "SELECT person, json_extract(brief, '$.session_day') AS day FROM thread WHERE dialogue = 'reminding'"
            " AND NOT coalesce(json_extract(brief, '$.again'), 0)"
        )
        days = [(row["person"], row["day"]) for row in rows]
        if len(set(days)) < len(days):
            raise Violation(f"reminded twice of one day: {sorted(days)}")

    def talks_begin(self) -> None:
        """No planned talk is overdue."""
        overdue = "SELECT * FROM planned WHERE done_at IS NULL ORDER BY due_at LIMIT 1"
        for row in self.rows(overdue):
            if self._calm_for(moment(row["due_at"])):
                raise Violation(f"a planned {row['dialogue']} is overdue: {dict(row)}")

    def reminders_go_on(self) -> None:
        """Whoever has a plan with days has a next reminder, and for each session one."""
        without = self.rows(
            "SELECT * FROM person WHERE role = 'client' AND id NOT IN (SELECT person FROM planned"
            " WHERE dialogue = 'reminding' AND done_at IS NULL)"
        )
        for row in without:
            raise Violation(f"{row['name']} has a plan with days and no next reminder")
        for row in self.rows(TWICE_PLANNED):
            raise Violation(f"person {row['person']} will be reminded twice of {row['day']}")
