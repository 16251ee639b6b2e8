"""The real process killed again and again while a client corrects a count: nothing lost, nothing doubled.

`python -m tests.bench.kills --messages 600 --kills 40` sends so many messages over HTTP to `cuffline run` and kills
it so many times (SIGKILL), at random moments; the rows on record must be the messages, each one once, in order.
"""

import argparse
import asyncio
import random
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from tests.end_to_end.room import Room
from tests.end_to_end.test_killed_in_mid_set import banded, joined, rows

FIRST, LOW, SPAN, LAST = 28, 5, 35, 41  # the first count; the corrections go round from LOW; the last one
LONGEST_S = 120.0  # until the last answer is out, after a kill and a start
AWAY_S = 0.15  # a message every so many seconds at most


@dataclass(frozen=True, slots=True)
class Found:
    """What was sent as counts, what is on record, and the answers on the client's phone."""

    sent: list[int]
    kept: list[int]
    in_force: list[int]
    answers: list[str]

    @property
    def as_sent(self) -> bool:
        """Every message is on record, once, in order; one count is in force."""
        return self.kept == self.sent and self.in_force == self.sent[-1:]

    @property
    def unanswered(self) -> int:
        """Corrections that were not answered; an answer may come twice after a kill."""
        corrections = self.sent[1:]
        said = {reps: sum(f"is {reps} now" in text for text in self.answers) for reps in set(corrections)}
        return sum(max(0, corrections.count(reps) - times) for reps, times in said.items())


async def played(room: Room, messages: int, kills: int, dice: random.Random) -> Found:
    """One set, and its count corrected by editing the message, again and again."""
    await room.open()
    await joined(room)
    await banded(room)
    await room.type(room.client, "Set 1 of 2", "done")
    counted = await room.type(room.client, "How many clean reps", str(FIRST))
    await room.hears(room.client, f"{FIRST}, noted")
    sent = [FIRST, *(LOW + number % SPAN for number in range(messages - 1)), LAST]
    at = set(dice.sample(range(messages), kills))
    for number, reps in enumerate(sent[1:]):
        room.client.edits(counted, str(reps))
        await asyncio.sleep(dice.random() * AWAY_S)
        if number in at:
            room.kill()
            room.start()
    await _all_answered(room)
    assert room.stop() == 0
    kept = rows(room.db, "SELECT reps FROM set_done ORDER BY id")
    in_force = rows(room.db, "SELECT reps FROM current_set_done")
    answers = [one.text for one in room.client.history if not one.mine]
    return Found(sent, [_number(row) for row in kept], [_number(row) for row in in_force], answers)


async def _all_answered(room: Room) -> None:
    """Until the last correction is answered; by the order of arrival all before it are handled then."""
    said = f"is {LAST} now"
    await room.api.wait(
        lambda: any(said in one.text for one in room.client.history[-9:] if not one.mine), LONGEST_S
    )


def _number(row: tuple[object, ...]) -> int:
    assert isinstance(row[0], int)
    return row[0]


def run(db: Path, messages: int, kills: int, seed: int) -> Found:
    """Play it and end everything."""
    room = Room(db)

    async def all_of_it() -> Found:
        try:
            return await played(room, messages, kills, random.Random(seed))
        finally:
            await room.close()

    return asyncio.run(all_of_it())


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--messages", type=int, default=600)
    parser.add_argument("--kills", type=int, default=40)
    parser.add_argument("--seed", type=int, default=1)
    wanted = parser.parse_args()
    began = time.perf_counter()
    with tempfile.TemporaryDirectory() as folder:
        found = run(Path(folder) / "practice.db", wanted.messages, wanted.kills, wanted.seed)
    print(f"{len(found.sent)} counts sent, {len(found.kept)} on record, as sent: {found.as_sent}")
    print(f"{found.unanswered} unanswered, {wanted.kills} kills, {time.perf_counter() - began:.0f} s")
    return 0 if found.as_sent and found.unanswered == 0 else 1


if __name__ == "__main__":
    raise SystemExit(main())
