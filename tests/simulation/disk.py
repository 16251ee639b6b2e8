"""The process's hold on its file: it may be killed at any commit, and the disk may be full."""

import functools
import re
import sqlite3
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Any

WRITES = ("INSERT", "UPDATE", "DELETE", "COMMIT")
CHANGES = re.compile(r"(INSERT|UPDATE|DELETE)(?:\s+(?:OR\s+\w+|INTO|FROM))*\s+\W?(\w+)", re.IGNORECASE)


class Killed(BaseException):
    """SIGKILL. Not an `Exception`: no code of the process gets to handle it."""


def full() -> sqlite3.OperationalError:
    """What SQLite raises when the disk is full."""
    error = sqlite3.OperationalError("database or disk is full")
    error.sqlite_errorcode, error.sqlite_errorname = sqlite3.SQLITE_FULL, "SQLITE_FULL"
    return error


@functools.cache
def kind_of(sql: str) -> tuple[str, str]:
    """The first word of a statement, and what it changes: "INSERT outbox"; "": nothing."""
    word, found = sql.split(None, 1)[0].upper(), CHANGES.match(sql.strip())
    return word, f"{found[1].upper()} {found[2].lower()}" if found else ""


@dataclass
class Fate:
    """What will befall the writes of one world. Numbers count from 1 over all processes of it.

    `kill_before`, `kill_after`: commits; `kill_writes`: statements inside a transaction. `full_commits`,
    `full_writes`: those that find the disk full; `rolls_back`: whether that undoes the transaction by itself.
    """

    kill_before: set[int] = field(default_factory=set)
    kill_after: set[int] = field(default_factory=set)
    kill_writes: set[int] = field(default_factory=set)
    full_commits: set[int] = field(default_factory=set)
    full_writes: set[int] = field(default_factory=set)
    rolls_back: bool = True
    commits: int = 0
    writes: int = 0
    after_commit: Callable[[], None] = lambda: None
    struck: "Callable[[Watched], None]" = lambda watched: (
        None
    )  # before each write and commit, and after each commit
    changed: set[str] = field(
        default_factory=set
    )  # "UPDATE outbox": all that was done to tables since it was emptied


class Watched:
    """A connection as the store uses it, with the fate of its process."""

    def __init__(self, real: sqlite3.Connection, fate: Fate) -> None:
        self.real = real
        self.fate = fate
        self.dead = False

    @property
    def in_transaction(self) -> bool:
        """As the real connection says."""
        return not self.dead and self.real.in_transaction

    def execute(self, sql: str, values: Sequence[Any] = ()) -> sqlite3.Cursor:
        """One statement, unless the process is dead or the disk full."""
        if self.dead:
            raise Killed
        word, change = kind_of(sql)
        if change:
            self.fate.changed.add(change)
        if word in WRITES:
            self._writing(word)
        if word == "COMMIT":
            return self._commit(sql)
        return self.real.execute(sql, values)

    def _writing(self, word: str) -> None:
        self.fate.writes += 1
        self.fate.struck(self)
        if self.fate.writes in self.fate.kill_writes:
            self.die()
        if self.fate.writes in self.fate.full_writes:
            if self.fate.rolls_back and self.real.in_transaction:
                self.real.execute("ROLLBACK")
            raise full()

    def _commit(self, sql: str) -> sqlite3.Cursor:
        self.fate.commits += 1
        number = self.fate.commits
        if number in self.fate.kill_before:
            self.die()
        if number in self.fate.full_commits:
            raise full()
        done = self.real.execute(sql)
        self.fate.after_commit()
        self.fate.struck(self)
        if number in self.fate.kill_after:
            self.die()
        return done

    def die(self) -> None:
        """The process is gone; what was not committed is gone with it."""
        self.dead = True
        self.real.close()
        raise Killed

    def __getattr__(self, name: str) -> Any:
        return getattr(self.real, name)
