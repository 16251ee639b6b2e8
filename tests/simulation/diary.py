"""What one client said about their sets, and what the bot confirmed: the truth that the store must keep."""

import re
from collections import defaultdict
from dataclasses import dataclass

NOTED = re.compile(
    r"^(\d+(?: and \d+)*)(?:, noted\.|, in range\.|, above the range| done\.$| of \d|\. That's)"
)
CHANGED = re.compile(r"^Set (\d+) is (\d+(?: and \d+)*) now")
FIXED = re.compile(r"^.+, set (\d+)(?:, left|, right)?: (\d+(?: and \d+)*) now, not ")


@dataclass(frozen=True, slots=True)
class Key:
    """One set of one side, as the client did it."""

    session: str
    exercise: int
    set_no: int
    side: str


@dataclass(slots=True)
class Claim:
    """A count that was sent, and whether the bot said that it has it."""

    key: Key
    reps: int
    confirmed: bool = False


class Diary:
    """The claims of one client, oldest first. `wrong` gathers what the bot confirmed and nobody said."""

    def __init__(self) -> None:
        self.claims: list[Claim] = []
        self.about: dict[Key, list[Claim]] = defaultdict(list)  # the same claims by their set
        self.wrong: list[str] = []
        self.copied: list[Claim] = []

    def sends(self, key: Key, reps: int) -> None:
        """The client sends a count."""
        self.claims.append(Claim(key, reps))
        self.about[key].append(self.claims[-1])

    def copies(self, key: Key, reps: int) -> None:
        """The client sends a count once more that the bot has confirmed, or else it may well ask about it."""
        self.copied += [claim for claim in self.claims if claim == Claim(key, reps, confirmed=True)][:1]

    def said_last(self) -> int:
        """The count that was sent last; 0 before the first."""
        return self.claims[-1].reps if self.claims else 0

    def is_copy(self, set_no: int, reps: int) -> bool:
        """Whether the last count that was sent is a copy of this one."""
        if not self.copied or self.copied[-1] is not self.claims[-1]:
            return False
        last = self.copied[-1]
        return (last.key.set_no, last.reps) == (set_no, reps)

    def where_now(self, key: Key, reps: int) -> Key:
        """The set that a count of `key` is for, if it was said last: a tapped "Set 1" may have moved it."""
        last = self.claims[-1]
        return last.key if (last.reps, last.key.side) == (reps, key.side) else key

    def spoke_of(self, key: Key) -> bool:
        """Whether a count of this set was sent."""
        return key in self.about

    def has(self, key: Key) -> bool:
        """Whether a count of this set was confirmed."""
        return any(claim.confirmed for claim in self.about.get(key, ()))

    def hears(self, text: str) -> None:
        """The bot confirms a count, or says something else."""
        noted, changed = NOTED.match(text), CHANGED.match(text) or FIXED.match(text)
        found = noted or changed
        if found is None:
            return
        numbers = [int(number) for number in found[found.lastindex or 1].split(" and ")]
        set_no = int(changed[1]) if changed else None
        for reps in numbers:
            self._confirm(reps, set_no, text)

    def _confirm(self, reps: int, set_no: int | None, text: str) -> None:
        fitting = [
            claim
            for claim in self.claims
            if claim.reps == reps and (set_no is None or claim.key.set_no == set_no)
        ]
        if not fitting:
            self.wrong.append(text)
        for claim in fitting[-1:]:  # the newest: the same words may arrive twice
            claim.confirmed = True

    def may_be(self, key: Key) -> set[int]:
        """The counts that the store may hold for a set: the last confirmed one and all that came after it."""
        mine = self.about.get(key, [])
        last = max((no for no, claim in enumerate(mine) if claim.confirmed), default=0)
        return {claim.reps for claim in mine[last:]}

    def must_be(self) -> list[Key]:
        """Every set with a confirmed count."""
        return [key for key in self.about if self.has(key)]
