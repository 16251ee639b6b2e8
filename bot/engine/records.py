"""A client's own records: all of it in two files, or gone."""

import logging
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any

from bot.database import forgotten
from bot.database.forgotten import Note, What
from bot.engine import status, turns
from conversations.protocol import Say
from conversations.words import leaving as words
from conversations.words import records as record_words
from core.calendar.zones import local
from core.safety.causes import Tier
from core.store import duties, erasure, mail, settings, threads
from core.store.duties import Planned
from core.store.mail import Letter
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

log = logging.getLogger("cuffline")

SOON = timedelta(minutes=1)  # the goodbye goes out first
AGAIN = timedelta(minutes=5)
LONGEST = timedelta(hours=24)  # for what is needed still, as the goodbye says; own choice
SAFETY = ("trouble", "still_numb")
OF_NO_USE = (
    "reminding",
    "missed",
    "testing",
    "recap",
    "changing",
    "offer_later",
    "pause_over",
    "travel_over",
)
NO_FOLDER = timedelta(hours=1)


def my_data(engine: "Engine", client: Person, now: datetime) -> None:
    """Everything kept about the client: one file to read, one for programs. Written when they are sent."""
    assert client.chat is not None, "only somebody with a chat can ask"
    for form, name, text in record_words.FILES:
        body = {"text": text, "name": name, "records": form}
        mail.post(engine.store, Letter(client.chat, body, "document", person=client.id), now)


def ask_to_leave(engine: "Engine", client: Person, now: datetime) -> None:
    """Begin the talk about it, unless bands may be on."""
    from bot.engine import due

    if due.in_session(engine, client):
        engine.say(client, Say(words.NOT_NOW), now)
        return
    years = engine.config.keep_years
    until = kept_until(now, years).date().isoformat() if years else ""
    turns.begin(engine, client, "leaving", {"keep_years": years, "kept_until": until}, now)


def kept_until(asked: datetime, years: int) -> datetime:
    """The same day so many years on; 29 February becomes 1 March."""
    try:
        return asked.replace(year=asked.year + years)
    except ValueError:
        return asked.replace(year=asked.year + years, month=3, day=1)


def leave(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """The client said yes twice: the coach hears it, and it is done once the last letters are out."""
    duties.plan(engine.store, client.id, "erase", {"asked": now.isoformat()}, now + SOON, now)
    _ask_nothing_more(engine, client)
    coach = engine.coach_of(client)
    if coach is not None:
        engine.say(coach, Say(_for_the_coach(engine, client, coach, now)), now)
    return False


def _ask_nothing_more(engine: "Engine", client: Person) -> None:
    """Nothing comes after the goodbye but what a limb may be in danger for."""
    for thread in threads.live(engine.store, client.id):
        if thread.dialogue not in SAFETY:
            threads.keep(engine.store, thread.id, None, None)
    for dialogue in OF_NO_USE:
        duties.unplan(engine.store, client.id, dialogue)


def _for_the_coach(engine: "Engine", client: Person, coach: Person, now: datetime) -> str:
    years = engine.config.keep_years
    until = local(kept_until(now, years), coach.zone)
    text = words.COACH_KEEPS if years else words.COACH
    told = text.format(name=client.name, day=until.date().isoformat())
    if duties.open_alerts(engine.store, client.id):
        phone = status.detail(engine, client.id, "phone", "-")
        told += " " + words.COACH_ALERT.format(phone=phone)
    return told


def erase(engine: "Engine", client: Person, talk: Planned, now: datetime) -> None:
    """It is time. What must be kept is kept, locked, and erased at its own time."""
    asked = datetime.fromisoformat(talk.about["asked"])
    if _needed_still(engine, client) and now - asked < LONGEST:
        duties.plan(engine.store, client.id, "erase", talk.about, now + AGAIN, now)
        return
    keeps = engine.config.keep_years > 0 and not talk.about.get("closed")
    until = kept_until(asked, engine.config.keep_years) if keeps else None
    one = Note(now, What.LEFT if keeps else What.ERASED, client.id, until)
    try:
        forgotten.note(engine.config.backups, engine.config.db, one)
    except OSError as problem:
        log.error("nobody is erased while the backups' folder cannot be written: %s", problem)
        duties.plan(engine.store, client.id, "erase", talk.about, now + NO_FOLDER, now)
        return
    _forget(engine, client, one)


def _needed_still(engine: "Engine", client: Person) -> bool:
    """Letters on their way, a session, an urgent alert that nobody took: it would ring no more."""
    rings = any(
        alert.tier is Tier.NOW and alert.next_at is not None and alert.taken_by is None
        for alert in duties.open_alerts(engine.store, client.id)
    )
    trains = duties.watches(engine.store, client.id) or turns.training(engine, client)
    return rings or bool(trains) or erasure.letters_wait(engine.store, client.id)


def _forget(engine: "Engine", client: Person, one: Note) -> None:
    if client.chat is not None:
        engine.countdowns.pop(client.chat, None)
    if one.until is not None:
        forgotten.close(engine.store, client.id, one.at, one.until)
    else:
        erasure.erase(engine.store, client.id)
    settings.put(engine.store, erasure.TO_WIPE, one.at.isoformat())
    log.info("one client's records were %s", one.what.value)
