"""Invented coaches: they take alerts, late or never, settle or hold, write to clients, look at the week."""

import random
import re
from typing import TYPE_CHECKING

from bot.local.messages import ChatMessage

if TYPE_CHECKING:
    from tests.simulation.world import World


class Coach:
    """One coach. `answers`: the chance that an alert is answered at once; else the next time, or the next."""

    def __init__(self, world: "World", number: int, name: str, dice: random.Random, answers: float) -> None:
        self.world = world
        self.name = name
        self.dice = dice
        self.answers = answers
        self.phone = world.line.add_phone(number, name)

    def hears(self, message: ChatMessage) -> None:
        """A message of the bot arrives."""
        labels = [label for row in message.buttons for label, _ in row]
        if "I am on it" in labels:
            if self.dice.random() < self.answers:
                self.later(message, self.dice.choice(("I am on it", "I am on it", "Call noted")), 20, 200)
        elif "Clear to train" in labels:
            self.later(message, "Hold" if self.dice.random() < 0.1 else "Clear to train", 60, 3000)
        elif "Look at clearance" in labels:
            self.later(message, "Look at clearance", 600, 9000)
        else:
            self.about_clearance(message, labels)

    def about_clearance(self, message: ChatMessage, labels: list[str]) -> None:
        """The questions of clearing and planning."""
        if message.text.startswith("Your decision for"):
            self.later(message, labels[0], 10, 60)
        elif message.text.startswith(("A note for the record", "One line, please")):
            self.says("No note" if "No note" in labels else "looked at it", 8)
        elif re.match(r"A plan for|Which template", message.text):
            self.says("cancel", 8)
        elif message.text.startswith("Hold ") and "Two weeks" in labels:
            self.says(self.dice.choice(("two weeks", "until I say")), 10)
        elif "only one who gets alerts" in message.text:
            self.later(message, "I am alone", 5, 10)

    def later(self, message: ChatMessage, label: str, least: float, most: float) -> None:
        """Tap a button after a while."""
        self.world.after(self.dice.uniform(least, most), lambda: self.taps(message, label))

    def taps(self, message: ChatMessage, label: str) -> None:
        """Tap a button."""
        if not self.phone.blocked:
            self.world.note(self.name, f"[{label}]")
            self.world.sent(self.phone.taps(message.id, label))

    def says(self, text: str, seconds: float = 0) -> None:
        """Type."""
        self.world.after(seconds, lambda: self.types(text))

    def types(self, text: str) -> None:
        """Type now."""
        if not self.phone.blocked:
            self.world.note(self.name, text)
            self.world.sent(self.phone.types(text))
