"""Is this file a database we may work on? Asked before every start, by every command, and once a day."""

from pathlib import Path

from bot.config import Config, Wrong
from bot.database import backups
from bot.database.keyed import KEY, KEY_FILE
from core.store import copies, keys
from core.store.converting import is_plain


def usable(db: Path) -> None:
    """Raises `Wrong` unless the file is there, is a practice's database, and of a version known here."""
    if not db.is_file():
        raise Wrong([f"{db}: there is no such file (--db FILE or CUFFLINE_DB says which)"])
    try:
        steps, unknown = copies.applied(db), copies.unknown_steps(db)
    except copies.UNREADABLE as problem:
        raise Wrong([f"{db}: {_why(db, problem)}"]) from None
    if not steps:
        raise Wrong([f"{db}: this is no database of cuffline"])
    if unknown:
        raise Wrong([f"{db}: a newer cuffline made this database ({unknown[-1]}); install that version"])


def _why(db: Path, problem: Exception) -> str:
    """Asked only when it did not open: in the bot's process a database is never read as a mere file while it is open."""
    plain, keyed = is_plain(db), keys.held() is not None
    if keyed and plain:
        return f"is not encrypted, but {KEY_FILE} or {KEY} is set; `cuffline encrypt` encrypts it"
    if keyed:
        return f"{problem} that this key opens: it is damaged, or has another key"
    if plain:
        return str(problem)
    return f"{problem}; if it is an encrypted one, set {KEY_FILE}"


def fit_to_run(config: Config) -> None:
    """Raises `Wrong` for a database that cannot be worked on, with the way back. A new one is made at the start."""
    db = config.db
    if not db.exists() or db.stat().st_size == 0:
        return
    try:
        usable(db)
    except Wrong as wrong:
        raise Wrong([f"{line}{_way_back(config)}" for line in wrong.lines]) from None
    damage = copies.damage(db, quick=True)
    if damage:
        raise Wrong([f"{db}: damaged ({damage[0]}){_way_back(config)}"])


def _way_back(config: Config) -> str:
    kept = backups.found(config.backups, config.db)
    newest = kept[-1].path if kept else "FILE"
    return f"; to go back to a backup: cuffline restore {newest} --db {config.db}"
