"""A state machine over messages, taps, silences, restarts and what the coach does, in any order, in the real engine.

No path leads to bands or a set without clearance, with an open urgent alert, or without a passed check; no sign of harm
is without an alert; no band stays on without a later "off" or an alert.
"""

from datetime import timedelta
from sqlite3 import Row
from typing import Any

from hypothesis import Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from bot.local.messages import ChatMessage
from core.facts import Cleared
from core.store import facts
from core.store.times import moment, ms
from tests.practice import CLIENT, COACH, START, Practice

PASSED = ("go", "ease")
THIRD_CALL = timedelta(minutes=2)  # after the limit of the bands the coach must know
GRACE = timedelta(seconds=1)
FLAGS = (
    "my chest hurts", "cant breathe", "my hand is numb", "toes are blue", "i feel faint", "calf is swollen and hot",
    "my pee is brown", "no pain but my fingers tingle", "it wont come off, the buckle is stuck", "mi mano esta dormida",
)  # fmt: skip
SAID = (
    "start", "on", "off", "not on", "never on", "bands off now, all normal", "7", "9", "31", "16 8", "no, 30", "set 1 28",
    "lost count", "done", "stop", "hurts", "too tight", "help me", "wait", "ok", "yes", "no", "fine", "back", "cancel", "menu",
    "not numb", "the tingling is gone", "it is raining", "coach can we talk", "plan", "?",
)  # fmt: skip
ONWARD = (
    "No", "0", "Off in under 10 seconds", "Heard it", "Done", "Bands are on", "6", "Under 2 seconds", "Fine", "Set done",
    "Bands are off", "5 or more", "Better", "No, all fine", "All fine", "Start a session",
)  # fmt: skip
DEEDS = ("I am on it", "Call noted", "Clear to train", "Hold", "Yes, a clinician cleared it")
SECONDS = (1, 4, 31, 62, 125, 310, 1000, 8000, 50000)


class AnyOrder(RuleBasedStateMachine):
    """One client, cleared or not, and one coach."""

    @initialize(cleared=st.booleans())
    def begins(self, cleared: bool) -> None:
        self.room, self.seen = Practice(), 0
        self.store, self.cleared = self.room.stage.engine.store, cleared
        if not cleared:
            with self.store.transaction():
                held = Cleared(START, "1", "held", "", 1)
                facts.put(self.store, self.room.client, held, START)

    def teardown(self) -> None:
        if hasattr(self, "room"):
            self.room.stage.close()

    # --- what happens ---
    @rule(text=st.sampled_from(SAID))
    def says(self, text: str) -> None:
        self.room.types(CLIENT, text)

    @rule(text=st.sampled_from(FLAGS))
    def says_a_sign(self, text: str) -> None:
        self.room.types(CLIENT, text)
        now = ms(self.room.stage.clock.now())
        assert self.rows("SELECT 1 FROM alert WHERE last_at = ?", now) or self._is_answer(), text

    def _is_answer(self) -> bool:
        """A few questions around a session take a sign as their answer, and ask on."""
        return bool(
            self.rows("SELECT 1 FROM thread WHERE state IS NOT NULL AND dialogue IN ('before', 'after')")
        )

    @rule(text=st.sampled_from((*SAID, *FLAGS)))
    def edits(self, text: str) -> None:
        mine = [message for message in self.room.stage.phones[CLIENT].history if message.mine]
        if mine:
            self.room.stage.phones[CLIENT].edits(mine[-1].id, text)
            self.room.settle()

    @rule(times=st.integers(1, 12))
    def goes_on(self, times: int) -> None:
        """As the questions suggest."""
        for _ in range(times):
            newest = self._asked()
            labels = [label for row in newest.buttons for label, _ in row] if newest else []
            fitting = next((label for label in ONWARD if label in labels), None)
            if fitting is None:
                self.room.types(CLIENT, "start" if newest is None else "12")
            else:
                self._tap(newest, fitting)

    @rule(back=st.integers(0, 5), which=st.integers(0, 9))
    def taps_something(self, back: int, which: int) -> None:
        offered = [one for one in self.room.messages(CLIENT) if one.buttons][-1 - back :]
        if offered:
            labels = [label for row in offered[0].buttons for label, _ in row]
            self._tap(offered[0], labels[which % len(labels)])

    @rule(seconds=st.sampled_from(SECONDS))
    def is_silent(self, seconds: int) -> None:
        self.room.later(seconds=seconds)

    @rule()
    def restarts(self) -> None:
        self.room.stage.engine.resume()
        self.room.settle()

    @precondition(lambda self: self.rows("SELECT 1 FROM alert"))
    @rule(deed=st.sampled_from(DEEDS))
    def the_coach_answers(self, deed: str) -> None:
        for message in reversed(self.room.messages(COACH)):
            if any(deed == label for row in message.buttons for label, _ in row):
                self.room.stage.phones[COACH].taps(message.id, deed)
                self.room.settle()
                return

    @rule(text=st.sampled_from(("stop Ruta", "hold Ruta", "to Ruta: how is it?", "on it")))
    def the_coach_types(self, text: str) -> None:
        self.room.types(COACH, text)

    # --- what must hold ---
    @invariant()
    def nobody_trains_without_clearance_or_with_an_urgent_alert(self) -> None:
        on = self.rows("SELECT * FROM bands_on")
        assert self.cleared or not on
        for row in on[self.seen :]:
            urgent = self.rows(
                "SELECT 1 FROM alert WHERE tier = 'now' AND raised_at < ? AND coalesce(settled_at, ?) > ?",
                *(row["noted_at"], row["noted_at"] + 1, row["noted_at"]),
            )
            assert not urgent, dict(row)
        self.seen = len(on)

    @invariant()
    def no_set_without_a_passed_check(self) -> None:
        for row in self.rows("SELECT * FROM set_done"):
            checks = self.rows(
                "SELECT verdict FROM cuff_checked WHERE session = ? AND spell LIKE ? AND at <= ? ORDER BY id",
                *(row["session"], f"{row['exercise_no']}.%", row["noted_at"]),
            )
            assert any(one["verdict"] in PASSED for one in checks), dict(row)

    @invariant()
    def no_band_stays_on_unheard(self) -> None:
        now = self.room.stage.clock.now() if hasattr(self, "room") else START
        for row in self._on():
            assert row["next_at"] is not None, dict(row)
            late = moment(row["at"]) + timedelta(seconds=row["limit_s"]) + THIRD_CALL + GRACE
            told = self.rows("SELECT 1 FROM alert WHERE last_at >= ?", row["at"])
            assert now < late or told, dict(row)

    def _on(self) -> list[Row]:
        return self.rows(
            "SELECT n.*, w.next_at FROM current_bands_on AS n LEFT JOIN watch AS w USING (person, session, spell)"
            " WHERE NOT EXISTS (SELECT 1 FROM bands_off AS f WHERE f.session = n.session AND f.spell = n.spell)"
        )

    # --- how ---
    def rows(self, sql: str, *values: Any) -> list[Row]:
        return self.store.rows(sql, list(values)) if hasattr(self, "store") else []

    def _asked(self) -> ChatMessage | None:
        newest = self.room.messages(CLIENT)[-1:]
        return newest[0] if newest and newest[0].buttons else None

    def _tap(self, message: ChatMessage | None, label: str) -> None:
        assert message is not None
        self.room.stage.phones[CLIENT].taps(message.id, label)
        self.room.settle()


TestAnyOrder = AnyOrder.TestCase
TestAnyOrder.settings = settings(
    max_examples=settings.default.max_examples // 12,  # each plays a practice for days
    stateful_step_count=25,
    deadline=None,
    phases=(Phase.generate,),  # to shrink what is played takes minutes
)
