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
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

# Said while something else is asked, where "on" may belong to the answer: these words alone, and where no dialogue reads them.
PLAINLY_ON = re.compile(
    r"\W*(?:(?:i )?(?:have|ve|'ve)? ?(?:got )?)?(?:(?:my|the|both) ){0,2}(?:bands?|cuffs?|straps?)"
    r"(?: (?:are|is|now|already|both|still)){0,3} on(?: (?:now|already|my (?:arms?|legs?)))?\W*",
    re.IGNORECASE,
)
READS_IT_ITSELF = frozenset({"session", "trouble", "telling"})
NAMED = re.compile(r"\b(?:bands?|cuffs?|straps?)\b", re.IGNORECASE)


def said_on(engine: "Engine", person: Person, text: str, at: datetime) -> bool:
    """ "Bands are on", while no session is under way: they are watched from this word on, and are to come off."""
    floor = threads.floor(engine.store, person.id)
    if person.role is not Role.CLIENT or not _says_on(text, floor):
        return False
    limit_s = LIMIT_MIN[Region.ARMS] * 60
    spell = f"typed {at.isoformat()}"
    ends = at + timedelta(seconds=limit_s)
    duties.watch(engine.store, Watch(0, person.id, "", spell, Region.ARMS, at, limit_s, 0, ends))
    bands.told_off(engine, person.id, "", spell)
    watched = duties.watches(engine.store, person.id)[-1]
    off = Choice(words.TIME_UP_LABEL, f"bands_off:{watched.id}")
    told = words.ON_UNASKED if floor is None else words.ON_MEANWHILE
    engine.say(person, Say(told, (off,)), at, Priority.SESSION)
    return True


def _says_on(text: str, floor: Thread | None) -> bool:
    if floor is not None:
        return floor.dialogue not in READS_IT_ITSELF and PLAINLY_ON.fullmatch(text.strip()) is not None
    return NAMED.search(text) is not None and says_on(text)
