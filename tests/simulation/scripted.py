"""One scripted session, calm and always the same: the ground for killing it between any two commits.

Whatever befalls the process, the session must end in the same facts: that is `outcome`.
"""

import os
import random
import shutil
import sqlite3
from collections.abc import Callable
from pathlib import Path

from tests.simulation import scene
from tests.simulation.disk import Fate
from tests.simulation.world import World

Outcome = tuple[tuple[object, ...], ...]
SEED = 4  # two-sided rows and goblet squats among its clients
OF_INTEREST = (
    "SELECT 'set', person, session, exercise_no, set_no, side, reps FROM current_set_done ORDER BY 2, 3, 4, 5, 6",
    "SELECT 'ended', person, session, why FROM session_ended ORDER BY person, session",
    "SELECT 'bands', person, session, spell FROM bands_off GROUP BY 2, 3, 4 ORDER BY 2, 3, 4",
    "SELECT 'watch', count(*) FROM watch",
    "SELECT 'alerts', count(*) FROM alert WHERE tier = 'now'",
    "SELECT 'failed', count(*) FROM inbox WHERE failed IS NOT NULL OR handled_at IS NULL",
)


def _usual(set_no: int, side: str = "both") -> int:
    return {1: 30, 2: 15, 3: 9, 4: 8}[set_no] + (side == "right")


def begun(clients: int = 1) -> World:
    """A calm practice; everybody says "start" after a minute."""
    world = scene.practice(SEED, clients, calm=True)
    world.restarts = lambda: 0.01  # at once: nothing of the session is missed by it
    for client in world.clients:
        client.reps = _usual  # type: ignore[method-assign]
        world.after(60, lambda client=client: client.types("start"))  # type: ignore[misc]
    return world


def outcome(world: World) -> Outcome:
    """What is left of the session in the store."""
    return tuple(tuple(row) for sql in OF_INTEREST for row in world.store.rows(sql))


def undisturbed() -> tuple[range, range, Outcome]:
    """Of the session without any fate: the numbers of its commits and of its writes, and its outcome."""
    world = begun()
    first = world.fate.commits, world.fate.writes
    world.run(minutes=25)
    last = world.fate.commits, world.fate.writes
    scene.finish(world)
    found = outcome(world)
    world.close()
    return range(first[0] + 1, last[0] + 1), range(first[1] + 1, last[1] + 1), found


def after(fate: Callable[[Fate], None], mischief: int | None = None) -> Outcome:
    """The outcome of the session with this fate; `mischief`: a seed for updates given again.

    Here each fetch brings one update: other orders are in `orders`.
    """
    world = begun()
    fate(world.fate)
    if mischief is not None:
        world.line.mischief = random.Random(mischief)
    world.run(minutes=25)
    scene.finish(world)
    found = outcome(world)
    world.close()
    return found


def recorded(path: str, synchronous: str) -> None:
    """The session on this file; beside it `before`, its start, and `marks`, a line for each confirmed commit."""
    from tests.simulation.power import COUNTS

    world = begun()
    world.kill(back=False)
    shutil.copy(world.path, path)
    shutil.copy(world.path, Path(path).parent / "before")
    world.path, world.synchronous = Path(path), synchronous
    marks = os.open(Path(path).parent / "marks", os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    reader = sqlite3.connect(path)

    def mark() -> None:
        counts = reader.execute(COUNTS).fetchone()
        os.write(marks, " ".join(map(str, counts)).encode())

    world.fate.after_commit = mark
    world.start()
    world.run(minutes=25)
    reader.close()
    world.close()
