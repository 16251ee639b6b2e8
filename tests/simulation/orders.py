"""Three clients train in the same moments, each with two phones, and their updates arrive in any order.

What one moment brings is mixed with updates that were given before, taps of the other phone and taps under old
questions, shuffled, cut into fetches, and worked through now or later. Each ends in the same facts: `outcome`.
"""

import random
from collections.abc import Callable
from itertools import count
from typing import Any

from bot.local.messages import ChatMessage
from bot.net import intake
from bot.net.intake import Numbered
from core.facts import Cleared, PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan
from core.store import facts, people
from core.store.people import Role
from tests.practice import CLIENT, COACH, RUNNER, SQUAT, START, Practice

REPS = {CLIENT: (31, 15), 2003: (28, 14), 2004: (35, 17)}
ANSWERS = (
    *("No", "0", "Off in under 10 seconds", "Heard it", "Done", "Bands are on", "6", "Under 2 seconds"),
    *("Fine", "Bands are off", "3"),
)
MOMENTS = 40
OTHER_PHONE = 0.4  # as the chance of a tap
WORKS_BETWEEN = 0.5  # as the chance after a fetch
OF_INTEREST = (
    "SELECT person, session, exercise_no, set_no, side, reps FROM current_set_done ORDER BY 1, 2, 3, 4, 5",
    "SELECT person, session, why FROM session_ended ORDER BY 1, 2",
    "SELECT person, session, spell FROM bands_on ORDER BY 1, 2, 3",
    "SELECT person, session, spell, why FROM bands_off ORDER BY 1, 2, 3",
    "SELECT person, session, limb, refill, tightness FROM current_cuff_checked ORDER BY 1, 2, 3, 4, 5",
    "SELECT person, cause FROM alert ORDER BY 1, 2",
    "SELECT person FROM watch",
    "SELECT update_id FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL",
)

Outcome = list[list[tuple[Any, ...]]]


class Trio(Practice):
    """`dice`: None is the calm history that all others are held against."""

    def __init__(self, dice: random.Random | None) -> None:
        super().__init__()
        self.dice = dice
        self.numbers = count(10**12)  # of updates that no phone of ours made
        self.given: list[Numbered] = []
        self.counted = dict.fromkeys(REPS, 0)
        self.tapped: set[tuple[int, int]] = set()
        for number in REPS:
            if number != CLIENT:
                self._joins(number)

    def _joins(self, number: int) -> None:
        store = self.stage.engine.store
        coach = people.by_chat(store, COACH)
        assert coach is not None
        self.stage.add(number, str(number), lambda message, now: None)
        with store.transaction():
            client = people.add(store, number, str(number), Role.CLIENT, "Europe/Lisbon", START, coach.id)
            facts.put(store, client, Cleared(START, "1", "cleared", "arms,legs", coach.id), START)
            facts.put(
                store, client, PlanGiven(START, plan_to_text(Plan("squats", (SQUAT,))), coach.id), START
            )

    # --- what they do ---
    def next_deed(self, number: int) -> Callable[[], object] | None:
        """What this client does now; None: waits."""
        phone, said = self.stage.phones[number], self.messages(number)
        if not said:
            return lambda: phone.types("start")
        done = self.counted[number]
        if done < len(REPS[number]) and any(_asks_for(one, done + 1) for one in said[-3:]):
            self.counted[number] += 1
            return lambda: phone.types(str(REPS[number][done]))
        asked = [one for one in said if one.buttons][-1]
        label = next((one for one in ANSWERS if one in _labels(asked)), None)
        if label is None or (number, asked.id) in self.tapped:
            return None
        self.tapped.add((number, asked.id))
        return lambda: phone.taps(asked.id, label)

    def play(self) -> Outcome:
        """All of it; what is left in the store."""
        for _ in range(MOMENTS):
            deeds = [deed for deed in map(self.next_deed, REPS) if deed is not None]
            for deed in deeds:
                deed()
            self._arrive()
            if not deeds:
                self.later(seconds=15)
        store = self.stage.engine.store
        return [[tuple(row) for row in store.rows(sql)] for sql in OF_INTEREST]

    # --- how it arrives ---
    def _arrive(self) -> None:
        fresh = self._fetched()
        mixed = self._mixed(fresh) if self.dice and fresh else fresh
        self.given += fresh
        while mixed:
            size = self.dice.randint(1, len(mixed)) if self.dice else len(mixed)
            self.stage.engine.receive(mixed[:size])
            mixed = mixed[size:]
            if self.dice and self.dice.random() < WORKS_BETWEEN:
                self.stage.engine.work()
        self.settle()

    def _fetched(self) -> list[Numbered]:
        found = RUNNER.run(intake.fetch(self.stage.bot, self.stage.offset, 0))
        if found:
            self.stage.offset = found[-1]["update_id"] + 1
        return [(one["update_id"], one) for one in found]

    def _mixed(self, fresh: list[Numbered]) -> list[Numbered]:
        assert self.dice is not None
        again = self.dice.sample(self.given, min(len(self.given), self.dice.randint(0, 3)))
        taps = [one for one in fresh if "callback_query" in one[1]]
        both = [self._tapped_anew(one) for one in taps if self.dice.random() < OTHER_PHONE]
        old = [one for one in self.given if "callback_query" in one[1]]
        late = [self._tapped_anew(one) for one in self.dice.sample(old, min(len(old), 2))]
        mixed = [*fresh, *again, *both, *late]
        self.dice.shuffle(mixed)
        return mixed

    def _tapped_anew(self, one: Numbered) -> Numbered:
        """The same button once more, as another update."""
        number = next(self.numbers)
        return number, {"callback_query": {**one[1]["callback_query"], "id": str(number)}}


def _asks_for(message: ChatMessage, set_no: int) -> bool:
    return f"Set {set_no} of" in message.text or message.text.startswith(f"Go · set {set_no}")


def _labels(message: ChatMessage) -> list[str]:
    return [label for row in message.buttons for label, _ in row]


def outcome(seed: int | None) -> Outcome:
    """Of the history with this seed; None: the calm one."""
    trio = Trio(None if seed is None else random.Random(seed))
    try:
        return trio.play()
    finally:
        trio.stage.close()
