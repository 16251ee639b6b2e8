"""How an invented client tells their counts: typed or tapped, twice, corrected, late, for one set or another.

What they mean by it is written into their diary as they say it.
"""

import random
import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.local.messages import ChatMessage
from tests.simulation.diary import Diary, Key
from tests.simulation.offered import Offers, Place

if TYPE_CHECKING:
    from tests.simulation.world import World

TOO_SOON = timedelta(seconds=10)  # after Go no set is done yet: a number is the one before's


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


class Teller:
    """A phone, dice, a temper, the set under way, and a diary of what was said about sets."""

    def __init__(self, world: "World", number: int, name: str, dice: random.Random, temper: Temper) -> None:
        self.world = world
        self.name = name
        self.dice = dice
        self.temper = temper
        self.phone = world.line.add_phone(number, name)
        self.person = 0
        self.diary = Diary()
        self.offers = Offers()
        self.asked_on: list[datetime] = []  # when the "bands on" questions that were tapped were sent
        # The set under way as the client sees it.
        self.place: Place | None = None
        self.set_no = 0
        self.went_at = world.clock.true
        self.done_no = 0
        self.counting: tuple[int, str] | None = None  # set, side: between two taps
        self.done: dict[object, int] = {}

    def _follow(self, text: str) -> None:
        """Which set is it now?"""
        if re.match(r"Set 1 of \d", text):
            self.place, self.set_no = self.world.place_of(self.person), 1
        elif (found := re.match(r"Go · set (\d)", text)) is not None:
            self.set_no = int(found[1])
            self.went_at = self.world.clock.true

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
        self._means(key, said + 1)
        self.types(f"no, {which}{side}{said + 1}")

    def _means(self, key: Key, reps: int) -> None:
        """Asked once more, they say this."""
        self.done[(key.session, key.exercise), key.set_no, key.side] = reps

    def edits(self, number: int, key: Key, reps: int) -> None:
        """Change the words of an earlier count."""
        if not self.phone.blocked:
            self.world.note(self.name, f"[edits to {reps}]")
            self.diary.sends(key, reps)
            self._means(key, reps)
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
            self.counting = (set_no, side)
            low = self.reps(set_no, side) // 10 * 10
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
        if self.counting is None or self.place is None:
            return
        set_no, side = self.counting
        if (reps := self.reps(set_no, side)) // 10 != int(labels[0]) // 10:
            return
        self.counting = None
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
