"""Whatever is typed, tapped, left unsaid or restarted, in any order: no set without clearance and a passed check.

And no emergency words without an alert, no bands that are on and watched by nobody. Read from the store and from what
this machine itself decided, never from the code's own rules.
"""

from datetime import UTC, datetime
from sqlite3 import Row
from typing import Any

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from bot.engine import Engine
from bot.local.messages import ChatMessage
from bot.making import drawing
from bot.net.outbox import Outbox
from core.facts import Cleared
from core.store import facts
from core.store.connection import Store
from core.store.times import moment
from tests.practice import CLIENT, COACH, PracticeOnFile

# What opens legs, which is where the bands of the plan sit.
DECISIONS = {"cleared": "arms,legs", "legs_only": "legs", "arms_only": "arms", "held": "", "declined": ""}
OPENS = {"cleared", "legs_only"}
RED = ("my chest hurts", "i can't breathe", "I fainted just now", "one side of my face hangs")
TYPED = """start|31|17|on|off|bands are on|bands off|done|set done|go|set 1 31|no, 28|6|9|fine|yes|no|not sure|under 2
ready|good morning|what?|back|cancel|skip|menu|status|resume|I'm back|they were never on|as before|can't see""".replace(
    "\n", "|"
).split("|")
GOOD = (
    *(
        "Start a session",
        "No",
        "0",
        "Off in under 10 seconds",
        "Heard it",
        "Done",
        "Bands are on",
        "Loosened",
        "6",
    ),
    *("Under 2 seconds", "Fine", "Set done", "No, all fine", "Go on", "Bands are off"),
)
BEFORE = datetime.min.replace(tzinfo=UTC)
WHERE = ("nowhere", "check", "set")
WHERE_ASKS = {"check": "How tight", "set": "Set 1 of"}
BAD = ("8", "9 or 10", "Longer", "Tingling or numb", "Blue, white or cold", "I can't see the spot")
PASSED = {"go", "ease"}
WATCHED_BY_NOBODY = (
    "SELECT n.* FROM current_bands_on AS n LEFT JOIN watch AS w USING (person, session, spell) WHERE w.next_at IS NULL"
    " AND NOT EXISTS (SELECT 1 FROM bands_off AS f WHERE f.person = n.person AND f.session = n.session"
    " AND f.spell = n.spell)"
)
CHECKED_LAST = (
    "SELECT verdict FROM cuff_checked WHERE session = ? AND spell LIKE ? AND at <= ? AND (spell, check_no) ="
    " (SELECT spell, check_no FROM cuff_checked WHERE session = ? AND spell LIKE ? AND at <= ? ORDER BY id DESC LIMIT 1)"
)


def labels(message: ChatMessage) -> list[str]:
    """Its buttons."""
    return [label for row in message.buttons for label, _ in row]


class AnyOrder(RuleBasedStateMachine):
    """A client whose plan is for the legs, and a coach who decides this and that."""

    def __init__(self) -> None:
        super().__init__()
        self.practice = PracticeOnFile()
        self.seen = 0
        self.decided: list[tuple[datetime, bool]] = [(BEFORE, True)]

    @property
    def store(self) -> Store:
        return self.practice.stage.engine.store

    def rows(self, sql: str, *values: Any) -> list[Row]:
        return self.store.rows(sql, values)

    @initialize(decision=st.sampled_from(list(DECISIONS)), where=st.sampled_from(WHERE))
    def begins(self, decision: str, where: str) -> None:
        """Cleared or not, or in the middle of it already."""
        if where == "nowhere":
            self.decides(decision)
        for _ in range(40 if where in WHERE_ASKS else 0):
            newest = self.newest_question()
            if newest is not None and WHERE_ASKS[where] in newest.text:
                return
            self.answers_well(1)

    @rule(decision=st.sampled_from(list(DECISIONS)))
    def decides(self, decision: str) -> None:
        """The coach decides anew, at any moment."""
        now = self.practice.stage.clock.now()
        with self.store.transaction():
            fact = Cleared(now, "1", decision, DECISIONS[decision], 1)
            facts.put(self.store, self.practice.client, fact, now)
        self.decided.append((now, decision in OPENS))

    @rule(times=st.sampled_from([1, 4, 25, 25]))
    def answers_well(self, times: int) -> None:
        """The client answers what lets it go on."""
        for _ in range(times):
            self.practice.later(seconds=1)  # nobody does two things at the same moment
            newest = self.newest_question()
            label = next((one for one in GOOD if newest and one in labels(newest)), None)
            if newest is not None and "clean reps?" in newest.text:
                self.practice.types(CLIENT, "31")
            elif label is None:
                self.practice.types(CLIENT, "start")
            else:
                self.practice.taps(CLIENT, label)

    @rule(bad=st.sampled_from(BAD))
    def answers_the_check_badly(self, bad: str) -> None:
        """The bands do not sit right, as soon as that is asked."""
        for _ in range(12):
            newest = self.newest_question()
            if newest is not None and bad in labels(newest):
                self.practice.taps(CLIENT, bad)
                return
            self.answers_well(1)

    def newest_question(self) -> ChatMessage | None:
        """The newest message with buttons; None: there was none."""
        asked = [one for one in self.practice.messages(CLIENT) if one.buttons]
        return asked[-1] if asked else None

    @rule(text=st.sampled_from(TYPED))
    def types(self, text: str) -> None:
        """Anything, at any moment."""
        self.practice.later(seconds=1)
        self.practice.types(CLIENT, text)

    @rule(text=st.sampled_from(RED))
    def says_a_red_flag(self, text: str) -> None:
        """An emergency has its alert before anything else happens."""
        self.practice.types(CLIENT, text)
        now = self.practice.stage.clock.now()
        times = [moment(row["last_at"]) for row in self.rows("SELECT last_at FROM alert WHERE tier = 'now'")]
        assert now in times, f"{text!r} without an alert"

    @rule(which=st.integers(1, 40), button=st.integers(0, 5))
    def taps_an_old_button(self, which: int, button: int) -> None:
        """Any message of the chat keeps its buttons."""
        with_buttons = [one for one in self.practice.messages(CLIENT) if one.buttons]
        if not with_buttons:
            return
        message = with_buttons[-min(which, len(with_buttons))]
        offered = labels(message)
        self.practice.stage.phones[CLIENT].taps(message.id, offered[button % len(offered)])
        self.practice.settle()

    @rule(minutes=st.sampled_from([0.2, 0.6, 2, 4, 7, 20, 900]))
    def stays_silent(self, minutes: float) -> None:
        """Nobody says anything."""
        self.practice.later(minutes=minutes)

    @rule()
    def restarts(self) -> None:
        """The process dies between two events and comes back."""
        stage = self.practice.stage
        path, config = stage.engine.store.path, stage.engine.config
        stage.engine.store.close()
        store = Store(path, synchronous="OFF")
        stage.engine = Engine(store, config, stage.clock.now, "cuffline_play_bot")
        stage.engine.resume()
        stage.outbox = Outbox(store, stage.bot, stage.clock.now, drawing.draw)
        self.practice.settle()

    @rule()
    def the_coach_lets_them_train_again(self) -> None:
        """The newest alert is settled, if there is one."""
        offered = [one for one in self.practice.messages(COACH) if one.buttons]
        if offered and "Clear to train" in labels(offered[-1]):
            self.practice.taps(COACH, "Clear to train")

    @invariant()
    def a_set_needs_clearance_and_a_passed_check(self) -> None:
        """At the moment when it was done."""
        for row in self.rows("SELECT * FROM set_done WHERE id > ? ORDER BY id", self.seen):
            self.seen = row["id"]
            done_at = moment(row["done_at"])
            decided = [may for at, may in self.decided if at < done_at][-1]
            assert decided, f"a set without clearance: {dict(row)}"
            where = (row["session"], f"{row['exercise_no']}.%", row["done_at"])
            verdicts = {one["verdict"] for one in self.rows(CHECKED_LAST, *where, *where)}
            assert verdicts, f"a set without a check: {dict(row)}"
            assert verdicts <= PASSED, f"a set after {verdicts}: {dict(row)}"

    @invariant()
    def bands_that_are_on_are_watched(self) -> None:
        """Until they are off: a call, and an alert after it, will come."""
        assert not self.rows(WATCHED_BY_NOBODY)

    @invariant()
    def nothing_broke(self) -> None:
        """No update failed."""
        assert not self.rows("SELECT update_id FROM inbox WHERE failed IS NOT NULL")

    def teardown(self) -> None:
        self.practice.stage.close()


TestAnyOrder = AnyOrder.TestCase
TestAnyOrder.settings = settings(
    max_examples=settings().max_examples // 20, stateful_step_count=12, deadline=None
)
