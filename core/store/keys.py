"""The key of an encrypted database: one for a process, handed to every file that is opened, shown to nobody.

It is 32 random bytes, never a passphrase: nothing to guess, and a file opens without a slow derivation.
"""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

DIGITS = r"[0-9a-fA-F]{64}"  # 32 bytes, as `openssl rand -hex 32` prints them


class Key:
    """A key. Its digits are in no repr, so in no log and no error."""

    __slots__ = ("digits",)

    def __init__(self, digits: str) -> None:
        """Raises ValueError unless these are 64 hexadecimal digits; the message does not show them."""
        if not re.fullmatch(DIGITS, digits):
            raise ValueError("a key is 64 hexadecimal digits, as `openssl rand -hex 32` prints them")
        self.digits = digits

    def __repr__(self) -> str:
        return "Key(...)"

    @property
    def raw(self) -> str:
        """In the form that SQLCipher takes as it is (https://www.zetetic.net/sqlcipher/sqlcipher-api/#key)."""
        return f"x'{self.digits}'"


_held: ContextVar[Key | None] = ContextVar("key", default=None)


def held() -> Key | None:
    """The key in force; None: files are plain."""
    return _held.get()


@contextmanager
def using(key: Key | None) -> Iterator[None]:
    """Every file opened inside is of this key, in threads begun from here too."""
    before = _held.set(key)
    try:
        yield
    finally:
        _held.reset(before)
