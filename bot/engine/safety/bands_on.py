"""Bands that are on although no session asked for them: off first, then a session begins properly."""

import re
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine.safety import bands
from conversations.protocol import Choice, Say
from conversations.session.going_on import says_on
from conversations.words import engine as words
from core.plans import LIMIT_MIN, Region
from core.store import duties, threads
from core.store.duties import Watch
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

NAMED = re.compile(r"\b(?:bands?|cuffs?|straps?)\b", re.IGNORECASE)


def said_on(engine: "Engine", person: Person, text: str, at: datetime) -> bool:
    """ "Bands are on", while nothing is under way: they are watched from this word on, and are to come off."""
    asked = threads.floor(engine.store, person.id) is not None or person.role is not Role.CLIENT
    if asked or not NAMED.search(text) or not says_on(text):
        return False
    limit_s = LIMIT_MIN[Region.ARMS] * 60
    spell = f"typed {at.isoformat()}"
    ends = at + timedelta(seconds=limit_s)
    duties.watch(engine.store, Watch(0, person.id, "", spell, Region.ARMS, at, limit_s, 0, ends))
    bands.told_off(engine, person.id, "", spell)
    watched = duties.watches(engine.store, person.id)[-1]
    off = Choice(words.TIME_UP_LABEL, f"bands_off:{watched.id}")
    engine.say(person, Say(words.ON_UNASKED, (off,)), at, Priority.SESSION)
    return True
