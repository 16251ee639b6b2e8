"""A girth told in the chat is kept, unless the limb is still swollen from training."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any

from conversations.answers import Unclear
from conversations.client.girth import read_girth
from conversations.protocol import Say
from conversations.words import girth as words
from conversations.words.answers import unclear
from conversations.words.coach import to_card
from core.calendar.zones import local
from core.facts import CoachDid, Measured, SetDone
from core.outcomes import detectable_girth_cm
from core.store import facts, people
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

SWOLLEN_FOR = timedelta(hours=2)  # after the last set; own caution, no source


def told(engine: "Engine", client: Person, text: str, at: datetime) -> bool:
    """Whether the text told a girth; then it was answered."""
    if client.role is not Role.CLIENT:
        return False
    try:
        found = read_girth(text)
    except Unclear as problem:
        engine.say(client, Say(unclear(problem)), at)
        return True
    if found is None:
        return False
    if _swollen(engine, client, at):
        engine.say(client, Say(words.TOO_SOON), at)
        return True
    engine.say(client, Say(_kept(engine, client, *found, at)), at)
    return True


def by_coach(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The coach measured, or read it to us."""
    client = people.by_id(engine.store, details["client"])
    text = words.TOO_SOON_COACH.format(name=client.name)
    if not _swollen(engine, client, now):
        text = _kept(engine, client, details["limb"], details["girth"], now)
        what = f"{details['limb'].replace('_', ' ')} {details['girth']:g} cm"
        facts.put(engine.store, client.id, CoachDid(now, coach.id, "girth", what), now)
    engine.say(coach, Say(text, (to_card(client.name, client.id),)), now)
    return False


def _swollen(engine: "Engine", client: Person, at: datetime) -> bool:
    last = facts.latest(engine.store, SetDone, client.id)
    return last is not None and at - last.done_at < SWOLLEN_FOR


def _kept(engine: "Engine", client: Person, limb: str, girth: float, at: datetime) -> str:
    """Keep it; what is said about it."""
    said = _said(engine, client, limb, girth)
    facts.put(engine.store, client.id, Measured(at, limb, girth), at)
    return said


def _said(engine: "Engine", client: Person, limb: str, girth: float) -> str:
    """The new girth, and how it compares to the first one."""
    noted = words.NOTED.format(limb=limb.replace("_", " "), girth=girth)
    known = facts.current(engine.store, Measured, client.id, limb=limb)
    if not known:
        return noted
    first, limit = known[0], detectable_girth_cm(known[0].girth_cm)
    change, day = girth - first.girth_cm, local(first.at, client.zone)
    text = words.REAL_CHANGE if abs(change) > limit else words.SMALL_CHANGE
    return noted + text.format(change=change, day=f"{day.day} {day:%B}", limit=limit)
