"""Buttons that stand for a count, as a client sees them: of which sets, and how many.

A button may be tapped long after its question, with another movement or session under way by then; what it meant is
kept when the question arrives.
"""

import re
from dataclasses import dataclass, field

from bot.local.messages import ChatMessage
from tests.simulation.diary import Key

Place = tuple[str, int, tuple[str, ...]]  # session, exercise number, sides
Counts = tuple[int, ...]
BEGINS = re.compile(r"^Set 1 of \d+ · (.+?)(?: ·|\. )")
ASKED = re.compile(r"^(\d+(?: and \d+)*): (?:for )?set \d(?: again)?, or set \d")
SEVERAL = re.compile(r"^(\d[\d, and]*) came while the line was slow: sets ")
CHOSEN = re.compile(r"^Set (\d)$")
CHANGED = re.compile(r"^Set (\d) is (\d+(?: and \d+)*)$")
SETS = re.compile(r"^Sets (\d[\d, and]*)$")
OF_MOVEMENT = re.compile(r"^(.+): set (\d), \d+(?: and \d+)*$")
ONES = re.compile(r"^Set (\d)(?:, (left|right))?: which number\?$")
LATE = re.compile(r"^(.+): set (\d) is (\d+)$")


@dataclass
class Offers:
    """What the buttons of one client's messages stand for."""

    # By session and name; and by message, where it arrived and the count that was said last.
    movements: dict[tuple[str, str], Place] = field(default_factory=dict)
    asked: dict[int, tuple[Place, int]] = field(default_factory=dict)

    def arrives(self, message: ChatMessage, place: Place | None, said_last: int) -> None:
        """A message arrives while this movement is under way, after this count of the client's."""
        if place is None:
            return
        if (began := BEGINS.match(message.text)) is not None:
            self.movements[place[0], began[1]] = place
        self.asked[message.id] = (place, said_last)

    def claims(self, message: ChatMessage, label: str) -> list[tuple[Key, int]]:
        """The counts that a tap gives; empty: the button is about something else."""
        if message.id not in self.asked:
            return []
        place, said_last = self.asked[message.id]
        if (late := LATE.match(label)) is not None:
            return self._of(place, late[1], int(late[2]), (int(late[3]),))
        if (named := OF_MOVEMENT.match(label)) is not None:
            return self._of(place, named[1], int(named[2]), (said_last,))
        if (changed := CHANGED.match(label)) is not None:
            return _each(place, int(changed[1]), _counts(changed[2]))
        return _chosen(message.text, label, place)

    def _of(self, place: Place, name: str, set_no: int, counts: Counts) -> list[tuple[Key, int]]:
        there = self.movements.get((place[0], name))
        return [] if there is None else _each(there, set_no, counts)


def _chosen(text: str, label: str, place: Place) -> list[tuple[Key, int]]:
    """One set of two that were offered, or several in a row."""
    if (ones := ONES.match(text)) is not None and label.isdecimal():
        session, exercise, sides = place
        return [(Key(session, exercise, int(ones[1]), ones[2] or sides[0]), int(label))]
    chosen, asked = CHOSEN.match(label), ASKED.match(text)
    if chosen is not None and asked is not None:
        return _each(place, int(chosen[1]), _counts(asked[1]))
    sets, several = SETS.match(label), SEVERAL.match(text)
    if sets is None or several is None:
        return []
    groups = zip(_counts(sets[1]), several[1].split(", "), strict=False)
    return [one for no, group in groups for one in _each(place, no, _counts(group))]


def _each(place: Place, set_no: int, counts: Counts) -> list[tuple[Key, int]]:
    """A count for each side; too few or too many are none."""
    session, exercise, sides = place
    if len(counts) != len(sides):
        return []
    return [(Key(session, exercise, set_no, side), reps) for side, reps in zip(sides, counts, strict=True)]


def _counts(text: str) -> Counts:
    return tuple(int(number) for number in re.findall(r"\d+", text))
