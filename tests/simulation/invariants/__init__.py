"""What must always hold, looked at after every event. Read from the store, never from the code's own rules.

Each check is one method of a module here; it raises `Violation` with a line that says what is wrong. What depends on
the time is looked at every time, the rest where what it reads was written since (`Fate.changed`), words were heard,
or the process started anew.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from tests.simulation.invariants.alerts import Alerts
from tests.simulation.invariants.bands import Bands
from tests.simulation.invariants.letters import Letters
from tests.simulation.invariants.sets import Sets
from tests.simulation.invariants.timers import Timers
from tests.simulation.invariants.updates import Updates
from tests.simulation.world import Violation

if TYPE_CHECKING:
    from tests.simulation.world import Process, World

ALWAYS: frozenset[str] = frozenset()
BANDS = frozenset({"bands_on", "bands_off", "watch"})


class Watchman:
    """Looks at one world."""

    def __init__(self, world: "World") -> None:
        self.world = world
        self.seen: Process | None = None  # the process at the last look
        self.updates, self.sets, self.bands = Updates(world), Sets(world), Bands(world)
        self.alerts, self.timers = Alerts(world), Timers(world)
        self.letters = Letters(world, self.alerts.posted)
        # A check, and what makes it necessary; without any of that it is looked at every time.
        self.checks: tuple[tuple[Callable[[], None], frozenset[str]], ...] = (
            (self.updates.updates_are_handled, frozenset({"inbox", "INSERT outbox"})),
            (self.updates.confirmed_updates_are_kept, ALWAYS),
            (self.sets.sets_are_read_anew, frozenset({"set_done"})),
            (self.sets.sets_are_what_was_said, frozenset({"set_done", "inbox", "heard"})),
            (self.bands.no_set_without_clearance_and_check, frozenset({"bands_on", "set_done"})),
            (self.bands.bands_may_be_on, BANDS),
            (self.bands.bands_are_watched_until_off, ALWAYS),
            (self.alerts.alerts_go_out, frozenset({"INSERT outbox", "alert"})),
            (self.alerts.alerts_go_on, ALWAYS),
            (self.alerts.flags_have_alerts, ALWAYS),
            (self.sets.dialogues_and_facts_agree, frozenset({"thread", "set_done"})),
            (self.timers.one_session_at_a_time, frozenset({"thread"})),
            (self.timers.timers_are_kept, frozenset({"thread"})),
            (self.timers.nobody_oversleeps, ALWAYS),
            (self.timers.one_reminder_a_day, frozenset({"thread"})),
            (self.timers.talks_begin, ALWAYS),
            (self.timers.reminders_go_on, frozenset({"person", "planned"})),
            (self.letters.coach_knows_who_blocked, frozenset({"INSERT outbox", "person"})),
            (self.letters.letters_leave, ALWAYS),
            (self.updates.one_effect_for_one_update, frozenset({"INSERT outbox"})),
        )

    def look(self) -> None:
        """All of it."""
        if self.world.store.connection.in_transaction:
            raise Violation("an event ended inside an open transaction")
        happened = self._happened()
        for check, needed_by in self.checks:
            if not needed_by or needed_by & happened:
                check()

    def _happened(self) -> set[str]:
        """What was written since the last look, as "INSERT outbox" and as "outbox"; after a start everything was."""
        changed = self.world.fate.changed
        happened = {one.rpartition(" ")[2] for one in changed} | changed
        if self.seen is not self.world.process:
            self.seen = self.world.process
            happened |= {what for _, needed_by in self.checks for what in needed_by}
        changed.clear()
        return happened

    def at_the_end(self, erased: bool = False) -> None:
        """Calm again: nothing waits, nothing is lost. `erased`: somebody's words are gone as they wished."""
        self.letters.at_the_end(erased)
