"""How long a coach's ZIP takes: years of sessions of a whole practice, read, written and packed.

Run: `python -m tests.bench.export` (`--clients 60 --sessions 150` are about a year of three a week).
"""

import argparse
import time
from datetime import datetime, timedelta

from bot.export import zipped
from core.facts import CuffChecked, Fact, Rated, SessionEnded, SessionStarted, SetDone
from core.plans import Side
from core.store import facts
from tests.bot.coach_room import COACH, Room, RoomOnFile

LEGS = ("left_leg", "right_leg")
FIRST = 3001  # the number of the first client's chat


def session(name: str, number: int, at: datetime) -> list[Fact]:
    """Three movements of three sets, bands checked twice, two ratings."""
    checks = [
        CuffChecked(at, name, f"{spell}.1", 1, leg, 7, "under_2", 1.0, "fine", "go", "")
        for spell in (1, 2)
        for leg in LEGS
    ]
    sets = [
        SetDone(at, name, exercise, "goblet_squat", set_no, Side.BOTH, "10 kg", 30, False, at, 30.0, 6, False)
        for exercise in (1, 2, 3)
        for set_no in (1, 2, 3)
    ]
    ratings = [Rated(at, name, what, "after", 3) for what in ("effort", "pain")]
    return [SessionStarted(at, name, number, ""), *checks, *sets, *ratings, SessionEnded(at, name, "done")]


def fill(room: Room, clients: int, sessions: int) -> list[int]:
    """So many clients with so many sessions, every second day until now."""
    numbers = [room.client(FIRST + one, f"Client {one}") for one in range(clients)]
    with room.store.transaction():
        for client in numbers:
            for one in range(sessions):
                at = room.now - timedelta(days=2 * (sessions - one))
                for fact in session(f"{client}-{one}", one + 1, at):
                    facts.put(room.store, client, fact, at)
    return numbers


def main() -> None:
    """Print what it took, of the processor and by the clock."""
    given = argparse.ArgumentParser()
    given.add_argument("--clients", type=int, default=60)
    given.add_argument("--sessions", type=int, default=150)
    options = given.parse_args()
    room = RoomOnFile()
    clients = fill(room, options.clients, options.sessions)
    now = room.now.isoformat()
    wanted = {"coach": room.person(COACH).id, "db": room.store.path, "now": now, "asked": now}
    processor, clock = time.process_time(), time.perf_counter()
    made = zipped.made({**wanted, "clients": clients})
    processor, clock = time.process_time() - processor, time.perf_counter() - clock
    print(f"{options.clients} clients, {options.sessions} sessions each: {len(made) / 1e6:.1f} MB")
    print(f"{processor:.1f} s of the processor, {clock:.1f} s by the clock")
    room.stage.close()


if __name__ == "__main__":
    main()
