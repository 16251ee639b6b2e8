"""Bands came off by another way than the question of a talk: the button of a call, or a word."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import recording, turns
from bot.engine.safety import never_on
from conversations.answers.taken_off import Off, off_unasked, says_never_on, taken_off
from conversations.protocol import BandsCameOff, Say
from conversations.training.getting_better import off_and_fine
from conversations.words import engine as words
from conversations.words import session as session_words
from core.facts import NOT_ON, BandsOff
from core.store import duties, threads
from core.store.duties import Watch
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine


UNASKED = "unasked"  # why bands came off, stored: nothing is known of these
ASKING = ("session", "trouble")  # talks that ask themselves whether the bands are off


def came_off(engine: "Engine", person: Person, watch: Watch, at: datetime, never: bool = False) -> None:
    """They are off, by a word that no talk had asked for: stored, thanked, and whoever asks need not any more."""
    why = NOT_ON if never and never_on.alarm(engine, person.id) is not None else "time"
    thanks = session_words.NEVER_ON if why == NOT_ON else words.TIME_UP_THANKS
    recording.record(engine, person.id, BandsOff(at, watch.session, watch.spell, why))
    engine.say(person, Say(thanks), at, Priority.SESSION)
    for name in ASKING:
        if (talk := threads.live_in(engine.store, person.id, name)) is not None:
            turns.deliver(engine, person, talk, BandsCameOff(at, watch.spell, why == NOT_ON))


def said_off(engine: "Engine", person: Person, text: str, at: datetime) -> bool:
    """ "Off", typed while bands are on, or nothing at all is going on, and nothing asks for it any more."""
    watches = duties.watches(engine.store, person.id)
    asked = any(threads.live_in(engine.store, person.id, name) is not None for name in ASKING)
    if asked or taken_off(text, asked=False) is not Off.BOTH:
        return False
    if not watches:
        return _news(engine, person, text, at)
    for watch in watches:
        came_off(engine, person, watch, at, says_never_on(text))
    return True


def _news(engine: "Engine", person: Person, text: str, at: datetime) -> bool:
    """ "Bands off now, all normal", while none was known to be on: stored, as whatever is said next may be about it."""
    idle = person.role is Role.CLIENT and threads.floor(engine.store, person.id) is None
    if not idle or not off_unasked(text) or not off_and_fine(text):
        return False
    recording.record(engine, person.id, BandsOff(at, "", f"typed {at.isoformat()}", UNASKED))
    engine.say(person, Say(words.TIME_UP_THANKS), at)
    return True
