"""A process that dies at each of its commits and writes, each time from the same beginning.

A story is played once. At every point wanted the whole test forks: in the child the process dies as by SIGKILL
(the file is taken over as it lies there, with its log), starts again and plays the story to its end, and its rows
are compared with those of the story that nothing befell. So no crash plays again what came before it.
"""

import asyncio
import gc
import os
import shutil
import tempfile
import traceback
from collections.abc import Callable, Collection
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from tests.simulation.disk import Killed, Watched
from tests.simulation.stories import ending
from tests.simulation.stories.told import Story
from tests.simulation.world import World

CALM_MIN = 5.0
SECOND_WITHIN = 24  # points after the start of the process: its start and the work it takes up again


@dataclass(frozen=True, slots=True)
class Whole:
    """A story that nothing befell."""

    points: int
    rows: ending.Outcome
    letters: set[tuple[int, str]]


class Grave:
    """In place of the connection of a process that is dead. Closing the real one would tidy up the file."""

    in_transaction = False

    def close(self) -> None:
        """Nobody is there to."""


@dataclass
class Deaths:
    """Counts the points of a story and forks at those wanted."""

    world: World
    wanted: Collection[int] = ()
    twice: bool = False
    told: Callable[[int, str], None] = lambda point, wrong: None
    point: int = 0
    pipe: int | None = None  # in a child: where it says what it found
    again_at: int | None = None  # in a child: dies once more there
    buried: list[Any] = field(default_factory=list)  # must not be collected, which would close or delete them
    folders: list[str] = field(default_factory=list)  # of a child

    def at(self, watched: Watched) -> None:
        """Before a write, before a commit or after one."""
        self.point += 1
        if self.pipe is None and self.point in self.wanted:
            self._fork(watched)
        elif self.point == self.again_at:
            self.die(watched)

    def _fork(self, watched: Watched) -> None:
        read, write = os.pipe()
        loop = asyncio._get_running_loop()
        child = os.fork()
        if child == 0:
            asyncio._set_running_loop(loop)  # which asyncio forgets in a new process
            self.pipe = write
            if self.twice:
                self.again_at = self.point + 1 + self.point % SECOND_WITHIN
            self.die(watched)
        os.close(write)
        with os.fdopen(read) as said:
            wrong = said.read()
        os.waitpid(child, 0)
        self.told(self.point, wrong)

    def die(self, watched: Watched) -> None:
        """As by SIGKILL: the file stays as it lies there. Raises Killed."""
        folder = tempfile.TemporaryDirectory(prefix="cuffline-crashed-")
        here = Path(folder.name) / "left"
        shutil.copytree(self.world.path.parent, here, ignore=shutil.ignore_patterns("*-shm"))
        self.buried += [watched.real, self.world.folder]
        watched.real, watched.dead = Grave(), True  # type: ignore[assignment]
        self.folders.append(folder.name)
        self.world.folder, self.world.path = folder, here / self.world.path.name
        self.world.config = replace(self.world.config, db=self.world.path)
        raise Killed


def whole(story: Story) -> Whole:
    """The story that nothing befalls."""
    world = story.begin()
    deaths = Deaths(world)
    world.fate.struck = deaths.at
    _play(world, story)
    found = Whole(deaths.point, ending.outcome(world), ending.letters(world))
    world.close()
    return found


def crashed(
    story: Story,
    wanted: Collection[int],
    as_always: Whole,
    told: Callable[[int, str], None],
    twice: bool = False,
) -> None:
    """The story, with a crash at each of these points; `told` gets each point and what is wrong ("": nothing)."""
    world = story.begin()
    deaths = Deaths(world, wanted, twice, told)
    world.fate.struck = deaths.at
    gc.freeze()
    wrong = ""
    try:
        _play(world, story)
        if deaths.pipe is not None:
            wrong = _compared(world, as_always)
    except BaseException as problem:
        if deaths.pipe is None:
            raise
        wrong = _in_words(problem, world)
    if deaths.pipe is not None:
        _leave(deaths, wrong)
    world.close()


def _play(world: World, story: Story) -> None:
    world.run(hours=story.hours)
    world.start()
    world.disturbed()
    world.run(minutes=CALM_MIN)
    world.look.__self__.at_the_end(story.erases)  # type: ignore[attr-defined]


def _compared(world: World, as_always: Whole) -> str:
    wrong = ending.differences(as_always.rows, ending.outcome(world))
    said = ending.letters(world)
    wrong += [f"never written: {letter}" for letter in as_always.letters - said]
    if wrong:
        wrong += [f"written instead: {letter}" for letter in said - as_always.letters]
    return "\n".join(wrong)


def _in_words(problem: BaseException, world: World) -> str:
    told = isinstance(problem, AssertionError)
    said = str(problem) if told else "".join(traceback.format_exception(problem))
    return "\n".join([said, *list(world.journal)[-12:]])


def _leave(deaths: Deaths, wrong: str) -> None:
    """The end of a child: without any tidying up of what is the parent's."""
    assert deaths.pipe is not None, "only in a child"
    os.write(deaths.pipe, wrong.encode()[:60_000])
    for folder in deaths.folders:
        shutil.rmtree(folder, ignore_errors=True)
    os._exit(0)
