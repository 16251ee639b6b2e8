"""Random byte flips in a small database: who notices.

`python -m tests.bench.damage [FLIPS]` damages a copy again and again, one byte at a time, and prints how many flips
SQLite's own check notices, how many `cuffline check` notices on a live file, how many of the rest change what the
database says, and how many the checksum of a backup misses. Exit code 1 when a damaged backup passes.
"""

import random
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

from bot.database import backups
from core.facts import Noticed, SetDone
from core.plans import Side
from core.store import copies, facts, mail
from core.store.connection import Store
from core.store.mail import Letter
from tests.bot.terminal.practice import MONDAY, made

FLIPS = 1_000
SEED = 1
SESSIONS = 80


@dataclass(slots=True)
class Count:
    """Flips by who noticed them."""

    flips: int = 0
    sqlite: int = 0  # integrity and references
    check: int = 0  # the same, or a row that is not as in the last backup
    silent: int = 0  # neither, and a row says another thing
    passed: int = 0  # a backup that is taken for whole


def filled(db: Path) -> None:
    """A client with half a year of sessions and messages."""
    client = made(db)
    store = Store(db, synchronous="OFF")
    with store.transaction():
        for number in range(SESSIONS):
            at, session = MONDAY + timedelta(days=number), f"{client}-{number + 2}"
            for set_no in (1, 2, 3):
                reps = 40 // set_no
                done = SetDone(
                    at, session, 1, "curl", set_no, Side.BOTH, "5 kg", reps, False, at, 30.0, 7, False
                )
                facts.put(store, client, done, at)
            facts.put(
                store, client, Noticed(at, "note", f"note {number}: the left arm was the slower one"), at
            )
            letter = Letter(2001, {"text": f"Next time the same, {number} done."}, person=client)
            mail.post(store, letter, at)
    store.close()


def flipped(content: bytes, random_: random.Random) -> bytes:
    """One byte of it is another one."""
    place = random_.randrange(len(content))
    damaged = bytearray(content)
    damaged[place] ^= random_.randrange(1, 256)
    return bytes(damaged)


def damaged(folder: Path, flips: int, seed: int) -> Iterator[tuple[Path, Path]]:
    """(a whole backup, a copy of it with one byte flipped), again and again."""
    filled(folder / "cuffline.db")
    whole, broken = folder / "cuffline-whole.db", folder / "cuffline-broken.db"
    backups.write(folder / "cuffline.db", whole)
    backups.checksum_of(broken).write_text(backups.checksum_of(whole).read_text())
    content, random_ = whole.read_bytes(), random.Random(seed)
    for _ in range(flips):
        broken.write_bytes(flipped(content, random_))
        yield whole, broken


def count(flips: int = FLIPS, seed: int = SEED) -> Count:
    """Damage and look."""
    found = Count()
    with tempfile.TemporaryDirectory() as folder:
        for whole, broken in damaged(Path(folder), flips, seed):
            found.flips += 1
            by_sqlite = bool(copies.damage(broken))
            by_check = by_sqlite or noticed(whole, broken)
            found.sqlite += by_sqlite
            found.check += by_check
            found.silent += not by_check and says(broken) != says(whole)
            found.passed += passes(broken)
    return found


def noticed(whole: Path, broken: Path) -> bool:
    """Whether a row is not what it was."""
    try:
        return bool(copies.changed(whole, broken))
    except copies.UNREADABLE:
        return True


def passes(file: Path) -> bool:
    """Whether a restore would take it."""
    try:
        backups.verify(file)
    except backups.Faulty:
        return False
    return True


def says(file: Path) -> list[tuple[object, ...]]:
    """Everything in it, as a reader sees it."""
    with closing(copies.reading(file)) as database:
        tables = database.execute(
            "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name"
        ).fetchall()
        return [row for (name,) in tables for row in database.execute(f'SELECT * FROM "{name}"')]


def main() -> int:
    """Print one line a question."""
    found = count(int(sys.argv[1]) if len(sys.argv) > 1 else FLIPS)
    print(f"flips                                         {found.flips}")
    print(f"noticed by SQLite's own check                 {found.sqlite}")
    print(f"noticed by cuffline check on the live file    {found.check}")
    print(f"of the rest, rows that say another thing      {found.silent}")
    print(f"damaged backups taken for whole               {found.passed}")
    return 1 if found.passed else 0


if __name__ == "__main__":
    sys.exit(main())
