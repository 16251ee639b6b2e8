"""An open alert that cannot wait comes before any menu: what to do, that the coach was told, and no start."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import status, turns
from bot.engine.safety.bands import said_off
from conversations.protocol import Choice, Say
from conversations.words import engine as words
from conversations.words import safety
from core.calendar.zones import local
from core.safety.causes import GRAVE, Cause, Tier
from core.store import duties, people
from core.store.duties import OpenAlert
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

# Bands that came off so long before are those that it is about; own caution, no source.
SHORTLY_BEFORE = timedelta(hours=1)
BANDS_OFF = safety.OFF_FIRST.removesuffix(" now.")  # as most of what is told begins


def gravest(engine: "Engine", client: Person) -> OpenAlert | None:
    """The open alert that calls the coach now, the newest of those that a clinician must see; None: there is none."""
    found = [one for one in duties.open_alerts(engine.store, client.id) if one.tier == Tier.NOW]
    return max(found, key=lambda one: (one.cause in GRAVE, one.id), default=None)


def said_first(engine: "Engine", client: Person, now: datetime) -> bool:
    """Say what holds while it is open; True: there is one."""
    alert = gravest(engine, client)
    if alert is None:
        return False
    number = status.emergency_number(engine, client.id)
    text = words.STILL_OPEN.format(
        told=_told(engine, client, alert, number),
        time=f"{local(alert.raised_at, client.zone):%a %H:%M}",
        taken=_taken(engine, alert),
        number=number,
    )
    why = turns.barred(engine, client)
    if why not in (None, "open_alert"):
        text = f"{text} {words.BARRED[str(why)]}"
    buttons = (Choice(*words.CLIENT_MENU_CHOICES[-1]),)
    engine.say(client, Say(_bands_first(engine, client, text), buttons), now, Priority.ALERT)
    return True


def _told(engine: "Engine", client: Person, alert: OpenAlert, number: str) -> str:
    """What was told first; no more of the bands once they are off, nor of a silence that is over."""
    off = said_off(engine, client.id, alert.raised_at - SHORTLY_BEFORE)
    over = off or (alert.cause is Cause.NO_WORD and not duties.watches(engine.store, client.id))
    text = (safety.told_since if over else safety.told)(alert.cause, number)
    return text.removesuffix(f" {safety.COACH_HEARS}")  # what comes next says when


def _bands_first(engine: "Engine", client: Person, text: str) -> str:
    """Before all else the bands, where nobody said that they are off."""
    told = not duties.watches(engine.store, client.id) or text.startswith(BANDS_OFF)
    return text if told else f"{safety.OFF_FIRST} {text}"


def _taken(engine: "Engine", alert: OpenAlert) -> str:
    if alert.taken_by is None:
        return words.NOT_TAKEN
    return words.TAKEN_BY.format(coach=people.by_id(engine.store, alert.taken_by).name)


def emergency_typed(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """The emergency number typed here while such an alert is open is a cry for help, whatever is asked."""
    said = text.strip(" .!")
    own = status.detail(engine, person.id, "emergency_number", "")
    if person.role is not Role.CLIENT or said not in {own, *words.EMERGENCY_NUMBERS}:
        return False
    if gravest(engine, person) is None:
        return False
    engine.say(person, Say(words.CALL_YOURSELF.format(number=said)), now, Priority.ALERT)
    return True
