"""Sets: each once, with the count that its client said; the session and the store agree."""

import json
from typing import TYPE_CHECKING

from tests.simulation.diary import Key
from tests.simulation.invariants.looking import Looker
from tests.simulation.world import Violation

if TYPE_CHECKING:
    from tests.simulation.world import World


class Sets(Looker):
    """Counts in the store."""

    def __init__(self, world: "World") -> None:
        super().__init__(world)
        self.known: dict[int, dict[Key, int]] = {}  # by person, as read since sets were written last

    def sets_are_read_anew(self) -> None:
        """Sets were written, or the process started anew."""
        self.known.clear()

    def sets_are_what_was_said(self) -> None:
        """A set exists once, with a count its client said; a confirmed count is there."""
        for client in self.world.everybody:
            if client.diary.wrong:
                raise Violation(f"{client.name} heard a count they never said: {client.diary.wrong[0]!r}")
            stored = self._stored(client.person, client.name)
            for key, reps in stored.items():
                said = client.diary.may_be(key)
                if reps not in said:
                    raise Violation(f"{client.name} {key}: stored {reps}, said {sorted(said)}")
            for key in client.diary.must_be():
                if key not in stored:
                    raise Violation(f"{client.name} {key}: confirmed and not stored")

    def _stored(self, person: int, name: str) -> dict[Key, int]:
        if person in self.known:
            return self.known[person]
        found = self.known[person] = {}
        for row in self.rows("SELECT * FROM current_set_done WHERE person = ?", person):
            key = Key(row["session"], row["exercise_no"], row["set_no"], row["side"])
            if key in found:
                raise Violation(f"{name} {key}: stored twice")
            found[key] = row["reps"]
        return found

    def dialogues_and_facts_agree(self) -> None:
        """What a live session remembers as counted is stored, and nothing else of that movement."""
        for row in self._sessions():
            state = json.loads(row["state"])
            exercise = state.get("exercise", 0)
            sides = state["brief"]["exercises"][exercise].get("sides", ["both"])
            stored = self.rows(
                "SELECT set_no, side, reps FROM current_set_done WHERE person = ? AND session = ?"
                " AND exercise_no = ?",
                row["person"],
                state["brief"]["session"],
                exercise + 1,
            )
            remembered = {
                (one["no"], side, reps)
                for one in state.get("counted", [])
                for side, reps in zip(sides, one.get("reps", []), strict=False)
            }
            if remembered != {tuple(one) for one in stored}:
                raise Violation(
                    f"the session remembers {remembered}, stored is {[tuple(one) for one in stored]}"
                )
