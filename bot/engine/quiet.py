"""What can wait, waits until the quiet hours of whoever it is for are over. Alerts and sessions never come here."""

from datetime import datetime, time
from typing import TYPE_CHECKING

from bot.engine import status
from core.calendar.quiet import QuietHours, defer
from core.store import duties
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

SETTING = "quiet_hours"  # stored as "21:00-07:00"; equal ends: none


def hours(engine: "Engine", person: Person) -> QuietHours:
    """The person's own quiet hours, else the usual ones."""
    start, _, end = status.detail(engine, person.id, SETTING, "").partition("-")
    return QuietHours(time.fromisoformat(start), time.fromisoformat(end)) if end else QuietHours()


def earliest(engine: "Engine", person: Person, at: datetime) -> datetime:
    """`at`, or the end of the quiet hours that it falls into."""
    return defer(at, hours(engine, person), person.zone)


def is_quiet(engine: "Engine", person: Person, at: datetime) -> bool:
    """Whether it is quiet for this person then."""
    return earliest(engine, person, at) > at


def note(engine: "Engine", person: Person, text: str, now: datetime, name: str = "") -> None:
    """A line that waits for the end of quiet hours and of a session. With a name it can be found (`duties.noted`)."""
    about = {"text": text, "name": name} if name else {"text": text}
    duties.plan(engine.store, person.id, "note", about, earliest(engine, person, now), now)
