"""Settings from the environment, checked at start with one clear line each."""

import os
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from urllib.parse import urlsplit
from zoneinfo import available_timezones

from core.calendar.zones import zone_named

OFFICIAL_API = "https://api.telegram.org"
LOOPBACK = {"127.0.0.1", "localhost", "::1"}
# The Bot API takes 1 to 256 of these: https://core.telegram.org/bots/api#setwebhook. At least 32: own caution.
SECRET = r"[A-Za-z0-9_-]{32,256}"
HIGHEST_PORT = 65535


PREFIX = "CUFFLINE_"
SETTINGS = frozenset(
    PREFIX + name
    for name in (
        "TOKEN COACH TZ DB DB_KEY DB_KEY_FILE API_URL BACKUPS KEEP_YEARS PING_URL WEBHOOK WEBHOOK_SECRET LISTEN ALIVE_FILE"
    ).split()
)


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
    webhook: str = ""  # the public https address that updates are posted to; empty: we fetch them
    listen: tuple[str, int] = ("127.0.0.1", 8443)  # where the webhook's proxy finds us
    webhook_secret: str = ""
    ping_url: str = ""  # called every minute while all is well, so that somebody outside notices silence
    backup_folder: Path | None = None  # None: "backups" beside the database
    # For which the practice keeps the record of a client who leaves; 0: it is erased at once.
    keep_years: int = 0

    @property
    def backups(self) -> Path:
        """Where backups go."""
        return self.backup_folder or self.db.parent / "backups"

    @property
    def loopback(self) -> bool:
        """Whether the Bot API server is on this machine (only then may the clock be shifted)."""
        return _host(self.api_url) in LOOPBACK

    def __repr__(self) -> str:
        return f"Config(api_url={self.api_url!r}, db={str(self.db)!r}, coaches={len(self.coaches)})"


def stored_in(environment: Mapping[str, str] = os.environ) -> Path:
    """The database file as set, or the default; not checked."""
    return Path(environment.get("CUFFLINE_DB", "").strip() or "cuffline.db").expanduser()


def backups_in(db: Path, environment: Mapping[str, str] = os.environ) -> Path:
    """The folder of the backups as set, or the default; not checked."""
    set_to = environment.get("CUFFLINE_BACKUPS", "").strip()
    return Path(set_to).expanduser() if set_to else db.parent / "backups"


def from_environment(environment: Mapping[str, str] = os.environ, coach_needed: bool = True) -> Config:
    """The settings. Raises `Wrong` with a line for each that is missing or malformed.

    Unless `coach_needed`, no coach at all may be set: then `coaches` is empty.
    """
    wrong: list[str] = []
    token = _token(environment, wrong)
    api_url = _api_url(environment, wrong)
    named = environment.get("CUFFLINE_COACH", "").strip()
    coaches = coaches_in(named, wrong) if named or coach_needed else ()
    db = stored_in(environment)
    if not db.parent.is_dir():
        wrong.append(f"CUFFLINE_DB: the folder {db.parent} does not exist")
    elif db.is_dir():
        wrong.append(f"CUFFLINE_DB: {db} is a folder; set the path of a file in it")
    zone = _zone(environment, wrong)
    webhook, listen, secret = _webhook(environment, api_url, wrong)
    ping_url = environment.get("CUFFLINE_PING_URL", "").strip()
    if ping_url and not _is_address(ping_url, ("http", "https")):
        wrong.append("CUFFLINE_PING_URL: set an address to call every minute, like https://example.org/ping")
    backups, keep = backups_in(db, environment), _keep_years(environment, wrong)
    if wrong:
        raise Wrong(wrong)
    return Config(token, api_url, db, coaches, zone, webhook, listen, secret, ping_url, backups, keep)


def misspelt(environment: Mapping[str, str] = os.environ) -> list[str]:
    """A line for each name that looks like one of ours and is none: what it was to set stays unset, unsaid."""
    found = sorted(name for name in environment if name.startswith(PREFIX) and name not in SETTINGS)
    return [f"{name}: there is no such setting{_meant(name, SETTINGS)}" for name in found]


def _meant(said: str, known: Iterable[str]) -> str:
    """ "; CUFFLINE_BACKUPS is meant?", or nothing where nothing is near."""
    near = get_close_matches(said, list(known), 1, 0.8)
    return f"; is {near[0]} meant?" if near else ""


def _token(environment: Mapping[str, str], wrong: list[str]) -> str:
    token = environment.get("CUFFLINE_TOKEN", "").strip()
    if not re.fullmatch(r"\d+:[\w-]+", token):
        wrong.append("CUFFLINE_TOKEN: set the bot's token, like 123456:ABC..., as its maker gave it to you")
    return token


def _api_url(environment: Mapping[str, str], wrong: list[str]) -> str:
    api_url = environment.get("CUFFLINE_API_URL", OFFICIAL_API).strip().rstrip("/")
    if not _is_address(api_url, ("http", "https")):
        wrong.append(
            "CUFFLINE_API_URL: set the base address of a Bot API server, like https://api.telegram.org"
        )
    return api_url


def _zone(environment: Mapping[str, str], wrong: list[str]) -> str:
    zone = zone_in(environment)
    try:
        zone_named(zone)
    except ValueError:
        wrong.append(f"CUFFLINE_TZ: {zone!r} is no IANA time zone, like Europe/Lisbon{_zone_meant(zone)}")
    return zone


def _zone_meant(typed: str) -> str:
    """The zone of that city, or the same in other letters."""
    said = typed.casefold().replace(" ", "_")
    fitting = [
        name
        for name in sorted(available_timezones())
        if said in (name.casefold(), name.casefold().split("/")[-1])
    ]
    return f"; is {fitting[0]} meant?" if len(fitting) == 1 else ""


def _keep_years(environment: Mapping[str, str], wrong: list[str]) -> int:
    text = environment.get("CUFFLINE_KEEP_YEARS", "0").strip()
    if not re.fullmatch(r"[0-9]{1,2}", text):
        wrong.append("CUFFLINE_KEEP_YEARS: set for how many years you must keep records, 0 to 99")
        return 0
    return int(text)


def _host(address: str) -> str:
    try:
        return urlsplit(address).hostname or ""
    except ValueError:
        return ""


def _is_address(text: str, schemes: tuple[str, ...]) -> bool:
    return bool(_host(text)) and urlsplit(text).scheme in schemes


def _webhook(
    environment: Mapping[str, str], api_url: str, wrong: list[str]
) -> tuple[str, tuple[str, int], str]:
    """Address, host and port, secret; plain http only where the Bot API server is on this machine too."""
    webhook = environment.get("CUFFLINE_WEBHOOK", "").strip()
    secret = environment.get("CUFFLINE_WEBHOOK_SECRET", "").strip()
    host, _, port = environment.get("CUFFLINE_LISTEN", "127.0.0.1:8443").strip().rpartition(":")
    if not webhook:
        return "", ("127.0.0.1", 8443), ""
    local = _host(api_url) in LOOPBACK
    if not _is_address(webhook, ("https", "http") if local else ("https",)):
        wrong.append(
            "CUFFLINE_WEBHOOK: set the public https address of your proxy, like https://example.org/hook"
        )
    if not re.fullmatch(SECRET, secret):
        wrong.append("CUFFLINE_WEBHOOK_SECRET: set 32 to 256 letters, digits, - or _ that nobody can guess")
    if not host or not re.fullmatch(r"[0-9]{1,5}", port) or int(port) > HIGHEST_PORT:
        wrong.append("CUFFLINE_LISTEN: set host and port for your proxy to reach, like 127.0.0.1:8443")
        port = "0"
    return webhook, (host.strip("[]"), int(port)), secret


def zone_in(environment: Mapping[str, str] = os.environ) -> str:
    """The practice's zone as set, or UTC; not checked."""
    return environment.get("CUFFLINE_TZ", "UTC").strip()


def coaches_in(text: str, wrong: list[str]) -> tuple[int, ...]:
    """The coaches' numbers, first contact first; () and one more line in `wrong` when that is not what it says."""
    parts = [part.strip() for part in text.split(",") if part.strip()]
    odd = [part for part in parts if not re.fullmatch(r"[0-9]{1,15}", part)]
    if odd or not parts:
        wrong.append(
            f"CUFFLINE_COACH: {repr(odd[0]) + ' is no number; ' if odd else ''}set the Telegram numbers of the coaches, "
            "like 1111,2222 (cuffline run without it answers everybody with their number)"
        )
        return ()
    # Somebody named twice is no second contact.
    return tuple(dict.fromkeys(int(part) for part in parts))
