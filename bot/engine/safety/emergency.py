"""The emergency card: what a stranger who helps needs to know, in one message to show or keep."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import status
from bot.engine.joining import clearances
from conversations.protocol import Choice, Say
from conversations.words import details as detail_words
from conversations.words import emergency as words
from core.calendar.zones import local
from core.facts import BandsOff
from core.store import duties, facts
from core.store.mail import Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def card(engine: "Engine", client: Person, now: datetime) -> None:
    """Send it to the client; at once, whatever else waits."""
    from bot.engine import due

    change = () if due.in_session(engine, client) else (Choice(detail_words.BUTTON, "menu:details"),)
    engine.say(client, Say(text(engine, client), change), now, Priority.ALERT)


def for_coach(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The same for the coach who is on the phone with an ambulance."""
    engine.say(coach, Say(text(engine, client)), now, Priority.ALERT)


def text(engine: "Engine", client: Person) -> str:
    """The card's words from what is known; what is not known is left out."""
    coach = engine.coach_of(client)
    lines = [
        words.FIRST.format(name=client.name),
        words.BANDS_NOW if duties.watches(engine.store, client.id) else _last_bands(engine, client),
        words.CALL.format(number=status.emergency_number(engine, client.id)),
        *(_line(engine, client, name, template) for name, template in words.DETAILS.items()),
        words.COACH.format(coach=coach.name) if coach else "",
        _limits(engine, client),
    ]
    return "\n".join(line for line in lines if line)


def _line(engine: "Engine", client: Person, name: str, template: str) -> str:
    value = status.detail(engine, client.id, name, "")
    return template.format(value=value) if value else ""


def _last_bands(engine: "Engine", client: Person) -> str:
    off = facts.latest(engine.store, BandsOff, client.id)
    return "" if off is None else words.BANDS_OFF.format(when=f"{local(off.at, client.zone):%A %d %B, %H:%M}")


def _limits(engine: "Engine", client: Person) -> str:
    cleared = clearances.decision(engine, client.id)
    return words.CLEARED.format(note=cleared.note) if cleared is not None and cleared.note else ""
