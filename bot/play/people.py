"""Invented people who answer: a coach, and clients with a strength of their own.

An answer is chosen by the question's words; the reps come from a simple curve that the load model does not
know: fewer reps at more load, a little more strength each week, some spread from day to day.
"""

import random
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from bot.local.messages import ChatMessage

Answer = tuple[str, float]
LEFT_WHEN_GENTLE = 4
Rules = tuple[tuple[str, Callable[[re.Match[str], ChatMessage], Answer | None]], ...]


def says(text: str, seconds: float = 4) -> Callable[[re.Match[str], ChatMessage], Answer]:
    """Always the same answer."""
    return lambda found, message: (text, seconds)


@dataclass
class Client:
    """A client. `strength`: the load (kg, or 1.0 for body weight) at which set 1 brings 32 reps.

    `own`: what only they say to a question, as pairs of its words and the answer.
    """

    name: str
    city: str
    age: int
    strength: dict[str, float]
    dice: random.Random
    own: tuple[tuple[str, str], ...] = ()
    growth: float = 0.01  # a week
    started: datetime | None = None
    day: float = 1.0
    load: dict[str, float] = field(default_factory=dict)
    doing: str = ""
    set_no: int = 1
    gentle: bool = False
    most: int | None = None  # reps at which this set ends, however many more were possible
    saying: dict[str, datetime] = field(default_factory=dict)  # what they are about to say, and when

    def __call__(self, message: ChatMessage, now: datetime) -> Answer | None:
        """What they answer to a message of the bot; None: nothing, or they are about to say just that."""
        answer = self.answer(message, now)
        if answer is None or self.saying.get(answer[0], now) > now:
            return None
        self.saying[answer[0]] = now + timedelta(seconds=answer[1])
        return answer

    def answer(self, message: ChatMessage, now: datetime) -> Answer | None:
        """What they would answer."""
        self.started = self.started or now
        for pattern, text in self.own:
            if re.search(pattern, message.text):
                return text, 5
        for pattern, answer in RULES:
            found = re.search(pattern, message.text)
            if found is not None:
                return answer(found, message)
        labels = {label for row in message.buttons for label, _ in row}
        if {"No", "Not sure"} <= labels:  # the screening: nothing is wrong with these people
            return "No", 4
        return self.special(message, now)

    def special(self, message: ChatMessage, now: datetime) -> Answer | None:
        """Questions whose answer depends on the person."""
        text = message.text
        if text.startswith("How old"):
            return str(self.age), 5
        if text.startswith("Where do you live"):
            return self.city, 6
        began = re.search(r"Set 1 of \d+ · (.+?)\. (?:Aim|Gentle)", text)
        self.most = self.ends_at(text)
        if began is not None:
            self.begin(began[1], "Gentle" in text)
            return "Set done", 3.5 * self.reps(1, now)
        following = re.match(r"Go · set (\d)", text)
        if following is not None:
            self.set_no = int(following[1])
            return "Set done", 3.5 * self.reps(self.set_no, now)
        if "how many clean reps" in text.lower():
            return str(self.reps(self.set_no, now)), 5
        return None

    def ends_at(self, text: str) -> int | None:
        """The number at which a set is to end; None: when the form goes. Of other messages: as it was."""
        aim = re.search(r"Aim: ([\d-]+) clean|^Go · set \d · ([\d-]+)", text)
        if aim is None:
            return self.most
        number = aim[1] or aim[2]
        return int(number) if number.isdigit() else None

    def begin(self, what: str, gentle: bool) -> None:
        """A movement begins: its load and how the day is."""
        name, _, doing = what.partition(" · ")
        load = re.match(r"([\d.]+) kg", doing)
        self.doing, self.gentle, self.set_no = name, gentle, 1
        self.load[name] = float(load[1]) if load else 1.0
        self.day = self.dice.gauss(1.0, 0.06)

    def reps(self, set_no: int, now: datetime) -> int:
        """Clean reps of this set today."""
        weeks = (now - (self.started or now)).days / 7
        strong = self.strength.get(self.doing, self.strength[""]) * (1 + self.growth * weeks)
        first: float = 32 * (strong / self.load.get(self.doing, 1.0)) ** 2.2 * self.day
        left = LEFT_WHEN_GENTLE if self.gentle else 0
        possible = max(3, round(first * (1.0, 0.5, 0.28, 0.26)[set_no - 1]) - left)
        return possible if self.most is None else min(possible, self.most)


RULES: Rules = (
    (r"^Do you agree", says("Yes")),
    (r"[Ee]mergency where you live|number do you call in an emergency", says("112", 5)),
    (r"[Pp]hone number", says("Skip")),
    (r"Where do you train", says("12 Mill Lane", 8)),
    (r"Who should be rung", says("Tomas, 555 0101", 8)),
    (r"are you alone", says("Alone")),
    (r"type for you", says("No")),
    (r"What do you weigh", says("70 kg", 5)),
    (r"How tall", says("172 cm", 5)),
    (r"move for half an hour", says("Yes")),
    (r"latest blood pressure", says("124/78", 8)),
    (r"Anything new since|Fever, alcohol", says("No")),
    (r"Any pain in a joint right now|^Any pain now|^Any joint pain now", says("0")),
    (r"train the same muscles hard", says("No")),
    (r"^First a drill", says("Off in under 10 seconds", 30)),
    (r"^Sound on", says("Heard it")),
    (r"^Warm up", says("Done", 90)),
    (r"Tap when (?:they are|it is) on|close (?:them|it) a touch tighter", says("Bands are on", 20)),
    (r"^Loosen it", says("Loosened", 15)),
    (r"^How tight (?:are they|is it)", says("6", 5)),
    (r"press .* with your thumb", says("Under 2 seconds", 9)),
    (r"^How (?:do they|does it) feel", says("Fine")),
    (r"Bands? off now|minutes: bands off now", says("Bands are off", 12)),
    (r"after set 1, how many more", says("4", 5)),
    (r"^How hard was it", says("7", 5)),
    (r"still tingling or numb", says("No")),
    (r"out of the ordinary", says("All fine", 30)),
    (r"^Time for", says("Start", 60)),
    (r"^All right\? Bands off if not", says("Set done", 5)),
    (r"^You stopped that session", says("Gone", 20)),
    (r"How tight were the bands at the end", says("6", 10)),
    (r"Could you have done more clean reps in set 1", says("No, that was all", 10)),
    (r"Were all those reps clean", says("Yes", 10)),
    (r"Anything heavy the day before", says("No", 10)),
    (r"How long was the rest before", says("30", 10)),
    (r"^Yesterday's", says("Drop it", 60)),
)


def coach_mind(message: ChatMessage, now: datetime) -> Answer | None:
    """The coach reads, clears whoever may be cleared, and makes plans as `PLANS` says."""
    for pattern, answer in COACH_RULES:
        found = re.search(pattern, message.text)
        if found is not None:
            return answer(found, message)
    return None


PLANS = {
    "Ruta": ("Dumbbells: goblet squat, curl", "mon and thu 18:00"),
    "Aino": ("Gentle: walk 10 min, chair squat", "tue and fri 10:00"),
    "Milo": ("Travel: push-up, chair squat", "mon and fri 7:30"),
}


def _template(found: re.Match[str], message: ChatMessage) -> Answer:
    return PLANS[found[1]][0], 6


def _when(found: re.Match[str], message: ChatMessage) -> Answer:
    return PLANS[_planned_for(message)][1], 10


_current: dict[str, str] = {}


def _remember(found: re.Match[str], message: ChatMessage) -> Answer:
    _current["name"] = found[1]
    return _template(found, message)


def _planned_for(message: ChatMessage) -> str:
    return _current["name"]


def _decide(found: re.Match[str], message: ChatMessage) -> Answer:
    labels = [label for row in message.buttons for label, _ in row]
    return labels[0], 15


COACH_RULES: Rules = (
    (r"only one who gets alerts", says("I am alone", 3)),
    (r"^Your decision for", _decide),
    (r"^A note for the record|^One line, please", says("Spoke by phone; fit, starts gently.", 12)),
    (r"^A plan for (\w+)\.", _remember),
    (r"^Which loads does", says("2-20 by 2 kg", 6)),
    (r"^Start goblet squat", says("10 kg", 6)),
    (r"^Start curl", says("4 kg", 6)),
    (r"^Which days", _when),
    (r"Send it to", says("Send it")),
    (r"\nTold: ", says("I am on it", 40)),
    (r"is on it:", says("Clear to train", 120)),
)
