"""Invented clients on the virtual clock: they answer sensibly, wrongly, late, twice, or not at all.

What a sensible client says to a question is `bot.play`'s table; here it is bent. Everything is drawn from the
client's own dice, so that one seed tells one story.
"""

import random
import re
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.local.messages import ChatMessage
from bot.play.people import RULES
from tests.simulation.telling import Teller, Temper

if TYPE_CHECKING:
    from tests.simulation.world import World

RED_FLAGS = (
    "my foot is numb",
    "chest pain",
    "i feel dizzy",
    "my hand is blue",
    "can't breathe",
    "my arm is tingling",
)
NONSENSE = ("banana", "hmm ok?", "💪", "what do you mean", "NaN")
OFF = "Bands are off"
LASTING = (
    "Stop",
    "Start a session",
    "Start",
    "My plan",
    "Write to my coach",
    "Bands are off",
    "Bands are on",
)
OWN = (
    (r"[Ii]s something wrong right now", "No, all fine", 5),
    (r"^Are the bands off", "Bands are off", 6),
    (r"^How is it now", "Better", 20),
    (r"^A burn in the working muscle", "Go on", 10),
    (r"^All right\? Bands off if not", "Set done", 5),
    (r"^Where\?$", "Working muscle", 5),
    (r"I was away", "Bands are off", 10),
    (r"bands off|Bands? off now|Bands still on|Take the bands off", "Bands are off", 9),
)


class Client(Teller):
    """One client: what they hear, what a sensible one answers, and how that is bent."""

    def __init__(self, world: "World", number: int, name: str, dice: random.Random, temper: Temper) -> None:
        super().__init__(world, number, name, dice, temper)
        self.silent_until: datetime | None = None
        self.heard: list[ChatMessage] = []
        self.blocks = 0
        self.flags: list[int] = []

    # --- hearing ---
    def hears(self, message: ChatMessage) -> None:
        """A message of the bot arrives."""
        self.heard.append(message)
        self.diary.hears(message.text)
        self._follow(message.text)
        self.offers.arrives(message, self.place, self.diary.said_last())
        if self.silent_until is not None and self.world.clock.true < self.silent_until:
            return
        answer = self.answer(message)
        if answer is not None:
            self.bend(message, *answer)

    def answer(self, message: ChatMessage) -> tuple[str, float] | None:
        """What a sensible client says, and after how many seconds; None: nothing."""
        text = message.text
        if re.match(r"Set 1 of \d|Go · set \d", text):
            return "Set done", 2.5 * self.reps(self.set_no)
        if "How many clean reps" in text or "how many clean reps?" in text or "best guess?" in text:
            return f"count {self.done_no}", 4
        if text.endswith(": which number?"):
            return "ones", 2
        if re.match(r"\d+: (for )?set \d( again)?, or set \d", text):
            return "which", 3
        if text.startswith("Time for"):
            if self.dice.random() < self.temper.wrong * 3:
                self.world.after(30, lambda: self.types("start"))
            return self.dice.choice(("Start", "Start", "Start", "In 30 min", "Not today")), 60
        return self._usual(message)

    def _usual(self, message: ChatMessage) -> tuple[str, float] | None:
        text, labels = message.text, {label for row in message.buttons for label, _ in row}
        if self.dice.random() < self.temper.bad_check:
            for bad in ("9 or 10", "8", "5 or less", "Longer", "Tingling or numb", "It took longer"):
                if bad in labels and self.dice.random() < 0.5:
                    return bad, 5
        for pattern, said, seconds in OWN:
            if re.search(pattern, text) and said in labels:
                return said, seconds
        if "Where does it hurt" in text:
            return self.dice.choice([label for label in sorted(labels) if label != "Stop"]), 6
        for pattern, make in RULES:
            found = re.search(pattern, text)
            if found is not None:
                answer = make(found, message)
                # Words with no question in them get no answer, or two would talk about it for ever.
                return None if answer is not None and answer[0] == OFF and OFF not in labels else answer
        return ("No", 4) if {"No", "Not sure"} <= labels else None

    # --- bending ---
    def bend(self, message: ChatMessage, said: str, seconds: float) -> None:
        """Say it, or something else, or later, or twice."""
        temper, roll = self.temper, self.dice.random()
        for chance, otherwise in (
            (temper.silent, self._falls_silent),
            (temper.wrong, self._wrong_first),
            (temper.old, self._old_button),
            (temper.red, self._red_flag),
            (temper.media, self._media),
        ):
            if roll < chance:
                otherwise()
                if otherwise == self._falls_silent:
                    return
                seconds += 15
                break
            roll -= chance
        if self.dice.random() < temper.late:
            seconds += self.dice.choice((40, 150, 900, 5000))
        self.world.after(seconds, lambda: self.act(message, said))
        if self.dice.random() < temper.twice and said not in ("ones", "which") and "count" not in said:
            self.world.after(seconds + 0.7, lambda: self.act(message, said))

    def _falls_silent(self) -> None:
        for_min = self.dice.choice((2, 10, 30, 240))
        self.silent_until = self.world.clock.true + timedelta(minutes=for_min)
        self.world.after(60 * for_min + 1, self.comes_back)

    def comes_back(self) -> None:
        """After a silence: answer what was asked last."""
        self.silent_until = None
        asked = [message for message in self.heard[-4:] if message.buttons]
        if asked and (answer := self.answer(asked[-1])) is not None:
            self.act(asked[-1], answer[0])

    def _wrong_first(self) -> None:
        self.world.after(3, lambda: self.types(self.dice.choice(NONSENSE)))

    def _red_flag(self) -> None:
        self.world.after(2, lambda: self.flag(self.dice.choice(RED_FLAGS)))

    def _media(self) -> None:
        self.world.after(2, self.sends_media)

    def sends_media(self) -> None:
        """A voice note or a picture instead of words."""
        if not self.phone.blocked:
            self.world.note(self.name, "[voice]")
            self.world.sent(self.phone.sends("voice", b"x"))

    def block(self) -> None:
        """Block the bot."""
        self.blocks += 1
        self.phone.blocks()

    def flag(self, words: str) -> None:
        """A red flag."""
        number = self.types(words)
        if number is not None:
            self.flags.append(number)

    def _old_button(self) -> None:
        recent = {message.text for message in self.heard[-6:]}  # a copy of an open question is not old
        old = [one for one in self.heard[-40:-6] if _labels(one) and one.text not in recent]
        if old:
            message = self.dice.choice(old)
            label = self.dice.choice(_labels(message))
            self.world.after(3, lambda: self.taps(message, label))

    # --- acting ---
    def act(self, message: ChatMessage, said: str) -> None:
        """Do what the answer says: a button, or words, or something about counts."""
        match said:
            case _ if said.startswith("count "):
                self.count(message, int(said.removeprefix("count ")))
            case "ones":
                self.tap_ones(message)
            case "which":
                self.which(message)
            case _ if said in [label for row in message.buttons for label, _ in row]:
                if said == "Set done":
                    self.set_done(message)
                else:
                    self.taps(message, said)
            case _:
                self.types(said)


def _labels(message: ChatMessage) -> list[str]:
    """Buttons that may be tapped late without meaning it."""
    return [label for row in message.buttons for label, _ in row if label not in LASTING]
