"""Bands: on only after clearance and a passed check, watched while they are on, always off in the end."""

from datetime import timedelta
from sqlite3 import Row
from typing import TYPE_CHECKING

from core.store.times import moment, ms
from tests.simulation.invariants.looking import GRACE, Looker
from tests.simulation.world import Violation

if TYPE_CHECKING:
    from tests.simulation.world import World


THIRD_CALL = timedelta(minutes=2)  # bands: after the limit, the coach must know
MAYBE_ON = timedelta(minutes=5)  # asked to put bands on and no word: they are counted as on
PASSED = ("go", "ease")


class Bands(Looker):
    """Who has bands on, and whether they may."""

    def __init__(self, world: "World") -> None:
        super().__init__(world)
        self.banded = True  # whether anybody may have bands on

    def no_set_without_clearance_and_check(self) -> None:
        """Bands go on, and sets are done, only by cleared people without an open alert, after a passed check."""
        for row in self._new("bands_on", "SELECT * FROM bands_on WHERE id > ? ORDER BY id"):
            self._cleared(row["person"], row["noted_at"], "bands on")
            self._no_alert(row)
            client = next(one for one in self.world.everybody if one.person == row["person"])
            latest = max(client.asked_on, default=None)
            client.asked_on.clear()
            if moment(row["noted_at"]) - moment(row["at"]) >= MAYBE_ON:  # no word: counted from the question
                continue
            if latest is None or (row["at"] > ms(latest) and not self.world.clock.was_set):
                raise Violation(
                    f"bands on at {moment(row['at'])}; the question that was tapped is of {latest}"
                )
        for row in self._new("set_done", "SELECT * FROM set_done WHERE id > ? ORDER BY id"):
            self._cleared(row["person"], row["done_at"], "a set")
            self._checked(row)

    def _cleared(self, person: int, at: int, what: str) -> None:
        if self.world.clock.was_set:  # stored times no longer tell what came first
            return
        rows = self.rows(
            "SELECT * FROM cleared WHERE person = ? AND noted_at <= ? ORDER BY id DESC LIMIT 1", person, at
        )
        if not rows or not rows[0]["regions"] or (rows[0]["until"] or at + 1) <= at:
            raise Violation(f"{what} without clearance of person {person} at {moment(at)}")

    def _no_alert(self, row: Row) -> None:
        if self.world.clock.was_set:
            return
        open_then = self.rows(
            "SELECT * FROM alert WHERE person = ? AND tier = 'now' AND raised_at < ?"
            " AND (settled_at IS NULL OR settled_at > ?)",
            row["person"],
            row["noted_at"],
            row["noted_at"],
        )
        if open_then:
            raise Violation(f"bands on with an open alert: {dict(open_then[0])}")

    def _checked(self, row: Row) -> None:
        if self.world.clock.was_set:
            return
        last = self.rows(
            "SELECT verdict FROM cuff_checked WHERE person = ? AND session = ? AND spell LIKE ? AND at <= ?"
            " AND (spell, check_no) = (SELECT spell, check_no FROM cuff_checked WHERE person = ?"
            " AND session = ? AND spell LIKE ? AND at <= ? ORDER BY id DESC LIMIT 1)",
            *(2 * (row["person"], row["session"], f"{row['exercise_no']}.%", row["done_at"])),
        )
        if not last or any(one["verdict"] not in PASSED for one in last):
            raise Violation(f"a set without a passed check: {dict(row)}")

    def bands_may_be_on(self) -> None:
        """Something about bands was written, or the process started anew: look until nobody has any on."""
        self.banded = True

    def bands_are_watched_until_off(self) -> None:
        """Bands that are on are watched; too long on, the coach is told."""
        if not self.banded:
            return
        on = self.rows(
            "SELECT n.*, w.next_at, w.calls FROM current_bands_on AS n LEFT JOIN watch AS w USING (person, session, spell)"
            " WHERE NOT EXISTS (SELECT 1 FROM bands_off AS f WHERE f.person = n.person"
            " AND f.session = n.session AND f.spell = n.spell)"
        )
        self.banded = bool(on)
        for row in on:
            if row["next_at"] is None:
                raise Violation(f"bands on and nobody watches: {dict(row)}")
            due = moment(row["at"]) + timedelta(seconds=row["limit_s"]) + THIRD_CALL
            put_off = row["calls"] < 3 and moment(row["next_at"]) > max(due, self.now) + GRACE
            if put_off and not self.world.clock.was_set:
                raise Violation(f"a call about bands is put off until {moment(row['next_at'])}: {dict(row)}")
            if self._calm_for(due) and not self._told_since(row):
                raise Violation(f"bands on for too long and nobody told: {dict(row)}")
        watched = self.rows("SELECT count(*) AS n FROM watch")[0]["n"]
        if watched > len(on):
            raise Violation(f"{watched} watches for {len(on)} pairs of bands that are on")

    def _told_since(self, row: Row) -> bool:
        since = row["at"]
        return bool(self.rows("SELECT 1 FROM alert WHERE person = ? AND last_at >= ?", row["person"], since))
