"""The key of an encrypted database, from a file or the environment; said in one line when it cannot be used."""

import os
import stat
from collections.abc import Mapping
from importlib.util import find_spec
from pathlib import Path

from bot.config import Wrong
from core.store.keys import Key

KEY, KEY_FILE = "CUFFLINE_DB_KEY", "CUFFLINE_DB_KEY_FILE"
OTHERS = stat.S_IRWXG | stat.S_IRWXO  # a key is for its owner only


def key_in(environment: Mapping[str, str] = os.environ) -> Key | None:
    """The key as set, or None. Raises `Wrong`; nothing it says holds a part of the key."""
    text, file = environment.get(KEY, "").strip(), environment.get(KEY_FILE, "").strip()
    if text and file:
        raise Wrong([f"{KEY} and {KEY_FILE}: set one of them, not both"])
    if not text and not file:
        return None
    name, digits = (KEY, text) if text else (KEY_FILE, _read(Path(file).expanduser()))
    try:
        key = Key(digits)
    except ValueError as problem:
        raise Wrong([f"{name}: {problem}"]) from None
    if find_spec("sqlcipher3") is None:
        raise Wrong([f"{name}: an encrypted database needs `pip install cuffline[encrypted]`"])
    return key


def _read(file: Path) -> str:
    try:
        handle = os.open(file, os.O_RDONLY)
    except OSError as problem:
        raise Wrong([f"{KEY_FILE}: {file}: {problem.strerror}"]) from None
    with open(handle, encoding="ascii", errors="replace") as opened:
        if os.fstat(handle).st_mode & OTHERS:
            raise Wrong([f"{KEY_FILE}: others can read {file}; `chmod 600 {file}`"])
        return opened.read(1000).strip()
