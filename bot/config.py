"""Settings from the environment, checked at start with one clear line each."""

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from core.calendar.zones import zone_named

OFFICIAL_API = "https://api.telegram.org"
LOOPBACK = {"127.0.0.1", "localhost", "::1"}


class Wrong(Exception):
    """Settings that cannot work; one line for each."""

    def __init__(self, lines: list[str]) -> None:
        super().__init__("\n".join(lines))
        self.lines = lines


@dataclass(frozen=True, slots=True)
class Config:
    """What a practice sets. `coaches` are Telegram numbers; the next in the row is the second contact."""

    token: str
    api_url: str
    db: Path
    coaches: tuple[int, ...]
    zone: str

    @property
    def loopback(self) -> bool:
        """Whether the Bot API server is on this machine (only then may the clock be shifted)."""
        return (urlsplit(self.api_url).hostname or "") in LOOPBACK

    def __repr__(self) -> str:
        return f"Config(api_url={self.api_url!r}, db={str(self.db)!r}, coaches={len(self.coaches)})"


def from_environment(environment: Mapping[str, str] = os.environ) -> Config:
    """The settings. Raises `Wrong` with a line for each that is missing or malformed."""
    wrong: list[str] = []
    token = environment.get("CUFFLINE_TOKEN", "").strip()
    if not re.fullmatch(r"\d+:[\w-]+", token):
        wrong.append("CUFFLINE_TOKEN: set the bot's token, like 123456:ABC..., as its maker gave it to you")
    api_url = environment.get("CUFFLINE_API_URL", OFFICIAL_API).strip().rstrip("/")
    if urlsplit(api_url).scheme not in ("http", "https") or not urlsplit(api_url).hostname:
        wrong.append(
            "CUFFLINE_API_URL: set the base address of a Bot API server, like https://api.telegram.org"
        )
    coaches = _coaches(environment.get("CUFFLINE_COACH", ""), wrong)
    db = Path(environment.get("CUFFLINE_DB", "cuffline.db")).expanduser()
    if not db.parent.is_dir():
        wrong.append(f"CUFFLINE_DB: the folder {db.parent} does not exist")
    zone = environment.get("CUFFLINE_TZ", "UTC").strip()
    try:
        zone_named(zone)
    except ValueError:
        wrong.append(f"CUFFLINE_TZ: {zone!r} is no IANA time zone, like Europe/Lisbon")
    if wrong:
        raise Wrong(wrong)
    return Config(token, api_url, db, coaches, zone)


def _coaches(text: str, wrong: list[str]) -> tuple[int, ...]:
    parts = [part.strip() for part in text.split(",") if part.strip()]
    if not parts or not all(re.fullmatch(r"[0-9]{1,15}", part) for part in parts):
        wrong.append(
            "CUFFLINE_COACH: set the Telegram numbers of the coaches, like 1111,2222 "
            "(start the bot and write to it: it answers with your number)"
        )
        return ()
    return tuple(int(part) for part in parts)
