"""A story is told in lines: who says or taps what, one line every so many seconds, whatever befalls the bot.

coach  invite
ruta   [Yes]          a button, on the newest message that has it
...    2 h            time passes
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta

from bot.local.messages import ChatMessage
from bot.play.stage import Mind
from tests.simulation import scene
from tests.simulation.invariants import Watchman
from tests.simulation.world import COACH, FIRST_CLIENT, SECOND, World

APART_S = 20  # seconds between two lines
JUST = timedelta(seconds=2)
UNITS = {"s": 1, "min": 60, "h": 3600, "d": 86_400}
CHATS = {"coach": COACH, "second": SECOND, "ruta": FIRST_CLIENT, "aino": FIRST_CLIENT + 1}
# What needs a diary of what was said, or a plan with days.
NOT_HERE = ("no_set_without_clearance_and_check", "reminders_go_on", "sets_are_what_was_said")


@dataclass(frozen=True, slots=True)
class Story:
    """`begin` makes a world with everything planned in it, for so long. `erases`: somebody's records go."""

    name: str
    begin: Callable[[], World]
    hours: float = 0.5
    erases: bool = False


class Person:
    """A phone, and perhaps a mind that answers by itself."""

    def __init__(self, world: World, number: int, name: str, mind: Mind | None = None) -> None:
        self.world = world
        self.name = name
        self.mind = mind
        self.answers: dict[str, datetime] = {}  # by the words that they answer, and when
        self.phone = world.line.phones.get(number) or world.line.add_phone(number, name)

    def hears(self, message: ChatMessage) -> None:
        """A message of the bot arrives."""
        now = self.world.clock.true
        answer = self.mind(message, now) if self.mind and not self._answered(message.text, now) else None
        if answer is not None:
            self.answers[message.text] = now + timedelta(seconds=answer[1])
            self.world.after(answer[1], lambda: self.acts(message, answer[0]))

    def _answered(self, text: str, now: datetime) -> bool:
        """Whether this only repeats, after a crash, what they have just answered or are about to."""
        asked = [one for one, at in self.answers.items() if now - at < JUST]
        return now - self.world.calm_since < JUST and any(one in text for one in asked)

    def acts(self, message: ChatMessage, said: str) -> None:
        """Taps that button of the message, or types these words."""
        self.world.note(self.name, said)
        if said in labels(message):
            self.world.sent(self.phone.taps(message.id, said))
        else:
            self.world.sent(self.phone.types(said))

    def says(self, said: str) -> None:
        """Types words, or taps the newest button with the label in brackets."""
        button = re.fullmatch(r"\[(.+)\]", said)
        if button is None:
            self.world.note(self.name, said)
            self.world.sent(self.phone.types(said))
        else:
            self.taps(button[1])

    def taps(self, label: str) -> None:
        """The newest button with this label."""
        for message in reversed(self.phone.history):
            if label in labels(message):
                self.acts(message, label)
                return
        newest = self.phone.history[-1]
        raise AssertionError(f"nobody offered {self.name} {label!r}; {labels(newest)} under {newest.text!r}")


def labels(message: ChatMessage) -> list[str]:
    """The buttons under a message."""
    return [label for row in message.buttons for label, _ in row]


def practice(**minds: Mind | None) -> World:
    """Two coaches and no clients yet. `minds`: who answers by themselves."""
    world = scene.practice(1, clients=0, calm=True)
    world.coaches = [Person(world, CHATS[name], name.title(), minds.get(name)) for name in CHATS]  # type: ignore[misc]
    world.restarts, world.resumes = lambda: 0.01, True  # at once: nothing of the story is missed by it
    watchman = Watchman(world)
    watchman.alerts.whom.add(SECOND)  # who may stand in
    watchman.checks = tuple(one for one in watchman.checks if one[0].__name__ not in NOT_HERE)
    world.look = watchman.look
    return world


def tell(world: World, lines: str) -> World:
    """Plan a story's lines, from now on."""
    people = {one.name.lower(): one for one in world.coaches}
    at = world.clock.true
    for line in filter(None, map(str.strip, lines.splitlines())):
        who, said = line.split(None, 1)
        if who == "...":
            number, unit = said.split()
            at += timedelta(seconds=float(number) * UNITS[unit])
        else:
            at += timedelta(seconds=APART_S)
            world.at(at, lambda who=who, said=said: people[who].says(said))  # type: ignore[misc]
    return world
