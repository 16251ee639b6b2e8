"""Invented clients on the virtual clock: they answer sensibly, wrongly, late, twice, or not at all.

What a sensible client says to a question is `bot.play`'s table; here it is bent. Everything is drawn from the
client's own dice, so that one seed tells one story.
"""

import random
import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.local.messages import ChatMessage
from bot.play.people import RULES
from tests.simulation.diary import Diary, Key
from tests.simulation.offered import Offers

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
TOO_SOON = timedelta(seconds=10)  # after Go no set is done yet: a number is the one before's
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


@dataclass
class Temper:
    """How often a client does something other than the sensible thing, as chances of one answer."""

    silent: float = 0.02
    late: float = 0.03
    wrong: float = 0.03
    twice: float = 0.06
    old: float = 0.03
    red: float = 0.006
    media: float = 0.01
    edits: float = 0.12
    bad_check: float = 0.03


PLAIN = Temper(0, 0, 0, 0, 0, 0, 0, 0, 0)


class Client:
    """One client: a phone, dice, a temper, and a diary of what was said about sets."""

    def __init__(self, world: "World", number: int, name: str, dice: random.Random, temper: Temper) -> None:
        self.world = world
        self.name = name
        self.dice = dice
        self.temper = temper
        self.phone = world.line.add_phone(number, name)
        self.person = 0
        self.diary = Diary()
        self.offers = Offers()
        self.silent_until: datetime | None = None
        self.heard: list[ChatMessage] = []
        self.asked_on: list[datetime] = []  # when the "bands on" questions that were tapped were sent
        self.blocks = 0
        self.flags: list[int] = []
        # The set under way as the client sees it.
        self.place: tuple[str, int, tuple[str, ...]] | None = None
        self.set_no = 0
        self.went_at = world.clock.true
        self.done_no = 0
        self.counting: tuple[int, str, int] | None = None  # set, side, reps: between two taps
        self.done: dict[object, int] = {}

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

    def _follow(self, text: str) -> None:
        """Which set is it now?"""
        if re.match(r"Set 1 of \d", text):
            self.place, self.set_no = self.world.place_of(self.person), 1
        elif (found := re.match(r"Go · set (\d)", text)) is not None:
            self.set_no = int(found[1])
            self.went_at = self.world.clock.true

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
    def types(self, text: str, reply_to: int | None = None) -> int | None:
        """Type, unless the bot is blocked. The message's number."""
        if self.phone.blocked:
            return None
        self.world.note(self.name, text)
        number = self.phone.types(text, reply_to=reply_to)
        self.world.sent(number)
        return number

    def taps(self, message: ChatMessage, label: str) -> None:
        """Tap a button of a message."""
        if self.phone.blocked:
            return
        self.world.note(self.name, f"[{label}]")
        if label == "Bands are on":
            self.asked_on.append(message.at)
        for key, reps in self.offers.claims(message, label):
            self.diary.sends(key, reps)
        self.world.sent(self.phone.taps(message.id, label))

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

    # --- sets ---
    def reps(self, set_no: int, side: str = "both") -> int:
        """Clean reps of a set today: asked twice, the client says the same."""
        of = (self.place and self.place[:2], set_no, side)
        if of not in self.done:
            usual = (30, 15, 9, 8)[max(1, min(set_no, 4)) - 1]
            self.done[of] = max(3, round(usual * self.dice.uniform(0.8, 1.2)))
        return self.done[of]

    def key(self, set_no: int, side: str) -> Key:
        """The diary's name of a set."""
        assert self.place is not None, "a set follows from its announcement"
        session, exercise, _ = self.place
        return Key(session, exercise, set_no, side)

    def set_done(self, message: ChatMessage) -> None:
        """Tap it, or type the count at once."""
        self.done_no, meant = self.set_no, self._meant()
        sides = self.place[2] if self.place else ()
        # "Go" may come twice.
        again = self.place is not None and self.diary.spoke_of(self.key(meant, sides[0]))
        if len(sides) == 1 and self.dice.random() < 0.15 and not again:
            self.done_no = meant
            self.claim(self.reps(meant, sides[0]), meant, sides[0])
        else:
            self.taps(message, "Set done")

    def _meant(self) -> int:
        """The set under way; answered late, just after the next Go, still the one before, if that has no count."""
        too_soon = self.world.clock.true - self.went_at <= TOO_SOON
        if self.place is None or self.set_no < 2 or not too_soon:
            return self.set_no
        before = self.key(self.set_no - 1, self.place[2][0])
        return self.set_no if self.diary.has(before) else self.set_no - 1

    def claim(self, reps: int, set_no: int, side: str, reply_to: int | None = None) -> None:
        """Type a count, and perhaps correct it later."""
        if self.phone.blocked:
            return
        key = self.key(set_no, side)
        self.diary.sends(key, reps)
        number = self.types(str(reps), reply_to)
        one_side = self.place is not None and len(self.place[2]) == 1
        if number is not None and self.dice.random() < self.temper.twice and one_side:
            self.world.after(self.dice.choice((1, 3)), lambda: self.sends_again(key, reps, reply_to))
        if number is not None and self.dice.random() < self.temper.edits / 2:
            self.world.after(6, lambda: self.corrects(key, reps))
        elif number is not None and self.dice.random() < self.temper.edits:
            wait, other = self.dice.choice((4, 20, 400, 4000)), max(2, reps + self.dice.choice((-2, 3)))
            self.world.after(wait, lambda: self.edits(number, key, other))

    def sends_again(self, key: Key, reps: int, reply_to: int | None) -> None:
        """The same words once more, as a thumb does when the line is slow."""
        self.diary.copies(key, reps)
        self.types(str(reps), reply_to)

    def corrects(self, key: Key, said: int) -> None:
        """Say that it was one more, whatever the bot has answered by then; which one, if it was not said last."""
        if self.phone.blocked or self.done_no != key.set_no:
            return
        last, key = self.diary.claims[-1].key, self.diary.where_now(key, said)
        side = "" if key.side in (last.side, "both") else f"{key.side} "
        which = "" if last.set_no == key.set_no else f"set {key.set_no} "
        self.diary.sends(key, said + 1)
        self.types(f"no, {which}{side}{said + 1}")

    def edits(self, number: int, key: Key, reps: int) -> None:
        """Change the words of an earlier count."""
        if not self.phone.blocked:
            self.world.note(self.name, f"[edits to {reps}]")
            self.diary.sends(key, reps)
            self.phone.edits(number, str(reps))

    def count(self, message: ChatMessage, set_no: int) -> None:
        """Answer how many: typed, or by tens and ones; both sides at once where there are two."""
        if self.place is None or self.phone.blocked:
            return
        if (earlier := re.match(r"Set (\d): how many", message.text)) is not None:
            set_no = int(earlier[1])
        asked = re.search(r"(Left|Right): how many", message.text)
        side = asked[1].lower() if asked else self.place[2][0]
        labels = {label for row in message.buttons for label, _ in row}
        key = self.key(set_no, side)
        first_side = asked is not None and side == self.place[2][0]
        if self.diary.spoke_of(key) if first_side else self.diary.has(key):
            return  # the question came twice and was answered
        late = message.id if set_no != self.done_no else None
        if "10-19" in labels and self.counting is None and self.dice.random() < 0.4:
            self.counting = (set_no, side, self.reps(set_no, side))
            low = self.counting[2] // 10 * 10
            self.taps(message, f"{low}-{low + 9}")
        elif asked is not None and side == self.place[2][0] and self.dice.random() < 0.3:
            self._both(set_no, late)
        else:
            self.claim(self.reps(set_no, side), set_no, side, late)

    def _both(self, set_no: int, reply_to: int | None) -> None:
        left, right = self.reps(set_no, "left"), self.reps(set_no, "right")
        self.diary.sends(self.key(set_no, "left"), left)
        self.diary.sends(self.key(set_no, "right"), right)
        self.types(f"{left} left {right} right", reply_to)

    def tap_ones(self, message: ChatMessage) -> None:
        """The second tap of a count; for which set and side was said with the first."""
        labels = [label for row in message.buttons for label, _ in row]
        if self.counting is None or str(self.counting[2]) not in labels or self.place is None:
            return
        (set_no, side, reps), self.counting = self.counting, None
        self.diary.sends(self.key(set_no, side), reps)
        self.taps(message, str(reps))
        if self.dice.random() < self.temper.twice:
            self.world.after(0.7, lambda: self.taps(message, str(reps)))

    def which(self, message: ChatMessage) -> None:
        """ "Set 1 again, or set 2?": the next one, done early."""
        found = re.match(r"(\d+): (?:for )?set (\d)(?: again)?, or set (\d)", message.text)
        if found is None or self.place is None or self.phone.blocked:
            return
        if self.diary.is_copy(int(found[2]), int(found[1])):
            self.diary.wrong.append(message.text)  # noted already: no question about it
        chosen = int(self.dice.choice(found.groups()[1:]))
        self.done_no = max(self.done_no, chosen)
        self.taps(message, f"Set {chosen}")


def _labels(message: ChatMessage) -> list[str]:
    """Buttons that may be tapped late without meaning it."""
    return [label for row in message.buttons for label, _ in row if label not in LASTING]
