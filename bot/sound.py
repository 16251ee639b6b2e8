"""Is this file a database we may work on? Asked before every start, by every command, and once a day."""

from pathlib import Path

from bot import backups
from bot.config import Config, Wrong
from core.store import copies


def usable(db: Path) -> None:
    """Raises `Wrong` unless the file is there, is a practice's database, and of a version known here."""
    if not db.is_file():
        raise Wrong([f"{db}: there is no such file (--db FILE or CUFFLINE_DB says which)"])
    try:
        steps, unknown = copies.applied(db), copies.unknown_steps(db)
    except copies.UNREADABLE as problem:
        raise Wrong([f"{db}: {problem}"]) from None
    if not steps:
        raise Wrong([f"{db}: this is no database of cuffline"])
    if unknown:
        raise Wrong([f"{db}: a newer cuffline made this database ({unknown[-1]}); install that version"])


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
