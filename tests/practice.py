"""A practice on a virtual clock for tests: two coaches, a cleared client with a plan, and a stranger."""

import asyncio
import contextlib
import contextvars
from collections.abc import Coroutine
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from typing import Any

from bot.local.messages import ChatMessage
from bot.play.stage import Stage
from core.facts import Cleared, PlanGiven, SetDone
from core.plan_text import plan_to_text
from core.plans import OPEN_AIMS, Exercise, Plan, Region, Scheme
from core.store import facts, keys, people
from core.store.people import Role
from core.units import Load
from tests import played

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
COACH, SECOND, CLIENT, OTHER = 1001, 1002, 2001, 2002
SQUAT = Exercise(
    "goblet_squat",
    Region.LEGS,
    Scheme.OPEN,
    OPEN_AIMS,
    Load(Decimal(10)),
    (Load(Decimal(10)), Load(Decimal(12))),
)


RUNNER = asyncio.Runner()


def run(what: Coroutine[Any, Any, None]) -> None:
    """As `asyncio.run`, but all tests share a loop: a new one for each message costs as much as a small answer."""
    try:
        # With the key of this moment: a runner keeps the context in which it ran first.
        RUNNER.run(what, context=contextvars.copy_context())
    finally:
        for left in asyncio.all_tasks(RUNNER.get_loop()):
            left.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                RUNNER.get_loop().run_until_complete(left)


class OnPhones:
    """A stage, with short ways to type, tap, wait and read."""

    stage: Stage

    def settle(self) -> None:
        """Let everybody finish at this moment."""
        run(self.stage.settle())

    def later(self, **time: float) -> None:
        """Let time pass, with all that is due in it."""
        run(self.stage.run(self.stage.clock.now() + timedelta(**time)))

    def types(self, number: int, text: str) -> int:
        """A person types, and everything settles."""
        message = self.stage.phones[number].types(text)
        self.settle()
        return message

    def taps(self, number: int, label: str) -> None:
        """The newest button with this label."""
        for message in reversed(self.stage.phones[number].history):
            if any(label == shown for row in message.buttons for shown, _ in row):
                self.stage.phones[number].taps(message.id, label)
                self.settle()
                return
        raise AssertionError(f"nobody offered {label!r}; newest: {self.messages(number)[-1].text}")

    def messages(self, number: int) -> list[ChatMessage]:
        """All that the bot sent to somebody."""
        return [message for message in self.stage.phones[number].history if not message.mine]


class Practice(OnPhones):
    """A stage with a coach, a second one, a cleared client with a plan, and a stranger."""

    in_memory = True  # no file: that is faster

    def __init__(self) -> None:
        assert self.in_memory is False or keys.held() is None, (
            "in memory nothing is encrypted: PracticeOnFile"
        )
        self.stage = Stage(START, (COACH, SECOND), "Europe/Lisbon", lambda *_: None, self.in_memory)
        for number, name in ((COACH, "Coach"), (SECOND, "Second"), (CLIENT, "Ruta"), (OTHER, "Nobody")):
            self.stage.add(number, name, lambda message, now: None)
        store = self.stage.engine.store
        coach = people.by_chat(store, COACH)
        assert coach is not None
        with store.transaction():
            self.client = people.add(store, CLIENT, "Ruta", Role.CLIENT, "Europe/Lisbon", START, coach.id)
            facts.put(store, self.client, Cleared(START, "1", "cleared", "arms,legs", coach.id), START)
            plan = plan_to_text(Plan("squats", (SQUAT,)))
            facts.put(store, self.client, PlanGiven(START, plan, coach.id), START)
        self.untouched = played.mark(self.stage)

    def heard(self, number: int) -> list[str]:
        """All that the bot wrote to somebody."""
        return [message.text for message in self.messages(number)]

    def newest(self, number: int) -> ChatMessage:
        """The newest message of the bot."""
        return self.messages(number)[-1]

    def sets(self) -> dict[int, int]:
        """Reps by set."""
        return {one.set_no: one.reps for one in facts.current(self.stage.engine.store, SetDone, self.client)}

    def in_a_set(self) -> None:
        """Into set 1 with the bands on and checked."""
        played.once("practice in a set", self.stage, self.untouched, self.play_into_a_set)

    def play_into_a_set(self) -> None:
        """The same, message by message."""
        self.types(CLIENT, "start")
        self.taps(CLIENT, "No")
        for _ in range(40):
            if "Set 1 of" in self.newest(CLIENT).text:
                return
            labels = [label for row in self.newest(CLIENT).buttons for label, _ in row]
            wanted = (
                "No",
                "0",
                "Off in under 10 seconds",
                "Heard it",
                "Done",
                "Bands are on",
                "6",
                "Under 2 seconds",
                "Fine",
            )
            self.taps(CLIENT, next((label for label in wanted if label in labels), labels[0]))
        raise AssertionError(f"no set came: {self.heard(CLIENT)[-3:]}")


class PracticeOnFile(Practice):
    """For those who look at the file, or read it from another process."""

    in_memory = False
