"""Power cuts at recorded writes: what the disk was never told to keep may be lost, in part, or torn.

`strace` records every write and sync that SQLite makes during one scripted session, with a mark after each
confirmed commit. A cut point is any moment between; what was synced is there, of the rest any part, the last
write perhaps torn at a sector. The file must then open whole and hold every confirmed commit.
"""

import ast
import random
import re
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Iterable
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

SECTOR = 512  # bytes; the least a disk writes at once
ROOT = Path(__file__).parents[2]
CALL = re.compile(r"(pwrite64|write|fdatasync|fsync|ftruncate)\((\d+)<([^>]*)>(?:, (.*))?\) += (\d+)$")
COUNTS = (
    "SELECT (SELECT count(*) FROM inbox), (SELECT count(*) FROM inbox WHERE handled_at IS NOT NULL),"
    " (SELECT count(*) FROM outbox), (SELECT count(*) FROM outbox WHERE sent_at IS NOT NULL),"
    " (SELECT count(*) FROM set_done)"
)
SCRIPT = """
import os, sys
from tests.simulation import scripted
scripted.recorded(sys.argv[1], sys.argv[2])
"""


@dataclass(frozen=True, slots=True)
class Write:
    """Bytes to a file at an offset; `data` None: the file is cut to `offset` bytes."""

    file: str
    offset: int
    data: bytes | None


@dataclass(frozen=True, slots=True)
class Sync:
    """All earlier writes to this file are on the disk now."""

    file: str


@dataclass(frozen=True, slots=True)
class Mark:
    """A commit was confirmed; these rows were there."""

    counts: tuple[int, ...]


Event = Write | Sync | Mark


@dataclass(frozen=True, slots=True)
class Recorded:
    """The file as it was before, and all that happened since."""

    before: bytes
    events: list[Event]


def possible() -> bool:
    """Whether writes can be recorded here."""
    return shutil.which("strace") is not None


def record(synchronous: str, folder: Path) -> Recorded:
    """One scripted session with this setting of SQLite, as its writes, syncs and confirmed commits."""
    trace = folder / "trace"
    calls = "pwrite64,write,fdatasync,fsync,ftruncate"
    strace = ["strace", "-f", "-y", "-xx", "-s", "10000000", "-e", f"trace={calls}", "-o", str(trace)]
    script = [sys.executable, "-c", SCRIPT, str(folder / "practice.db"), synchronous]
    subprocess.run([*strace, *script], check=True, cwd=ROOT, capture_output=True)
    lines = trace.read_text().splitlines()
    events = [event for line in lines if (event := _event(line, folder)) is not None]
    return Recorded((folder / "before").read_bytes(), events)


def _event(line: str, folder: Path) -> Event | None:
    found = CALL.search(line)
    if found is None or not _plain(found[3]).startswith(str(folder)):
        return None
    call, name = found[1], _plain(found[3]).rpartition("/")[2]
    match call:
        case "fdatasync" | "fsync":
            return Sync(name)
        case "ftruncate":
            return Write(name, int(found[4]), None)
        case "write" if name == "marks":
            return Mark(tuple(map(int, _bytes(found[4]).decode().split())))
        case "pwrite64":
            return Write(name, int(found[4].rpartition(", ")[2]), _bytes(found[4]))
        case _:
            return None


def _plain(name: str) -> str:
    return ast.literal_eval(f'"{name}"')


def _bytes(arguments: str) -> bytes:
    return ast.literal_eval("b" + arguments[: arguments.index('"', 1) + 1])


class Disk:
    """What is safe on it, and what was written since and may be lost."""

    def __init__(self, before: bytes) -> None:
        self.safe: dict[str, bytearray] = {"practice.db": bytearray(before)}
        self.pending: list[Write] = []

    def take(self, event: Event) -> None:
        """The next thing that happened."""
        if isinstance(event, Write):
            self.pending.append(event)
        elif isinstance(event, Sync):
            for write in self.pending:
                if write.file == event.file:
                    _apply(self.safe, write)
            self.pending = [write for write in self.pending if write.file != event.file]

    def cut(self, dice: random.Random) -> dict[str, bytearray]:
        """What a power cut may leave: of the unsafe writes some, the last of them torn."""
        left = {name: bytearray(data) for name, data in self.safe.items()}
        share = dice.choice((0.0, 0.5, 0.9, 1.0))
        kept = [write for write in self.pending if dice.random() < share]
        for write in kept[:-1]:
            _apply(left, write)
        for write in kept[-1:]:
            _apply(left, _torn(write, dice))
        return left


def _apply(files: dict[str, bytearray], write: Write) -> None:
    file = files.setdefault(write.file, bytearray())
    if write.data is None:
        del file[write.offset :]
        return
    file.extend(bytes(max(0, write.offset - len(file))))
    file[write.offset : write.offset + len(write.data)] = write.data


def _torn(write: Write, dice: random.Random) -> Write:
    if write.data is None:
        return write
    sectors = dice.randint(0, len(write.data) // SECTOR)
    return Write(write.file, write.offset, write.data[: sectors * SECTOR])


def lost_at_cuts(recorded: Recorded, cuts: Iterable[int], dice: random.Random) -> tuple[int, int]:
    """How many of these cut points (numbers of events) lost a confirmed commit; how many broke the file."""
    disk, at, lost, broken = Disk(recorded.before), 0, 0, 0
    confirmed: tuple[int, ...] = ()
    for cut in sorted(cuts):
        for event in recorded.events[at:cut]:
            disk.take(event)
            confirmed = event.counts if isinstance(event, Mark) else confirmed
        at = cut
        found = _recovered(disk.cut(dice))
        broken += found is None
        lost += found is not None and any(have < had for have, had in zip(found, confirmed, strict=False))
    return lost, broken


def _recovered(files: dict[str, bytearray]) -> tuple[int, ...] | None:
    """The counts after SQLite's own recovery; None: it cannot be read or is damaged; () before the schema."""
    with tempfile.TemporaryDirectory(dir="/dev/shm" if Path("/dev/shm").is_dir() else None) as folder:
        for name, data in files.items():
            if name.endswith((".db", "-wal")):
                (Path(folder) / name).write_bytes(data)
        try:
            with closing(sqlite3.connect(Path(folder) / "practice.db")) as file:
                if file.execute("PRAGMA quick_check").fetchone() != ("ok",):
                    return None
                return tuple(file.execute(COUNTS).fetchone())
        except sqlite3.DatabaseError as problem:
            return () if "no such table" in str(problem) else None
