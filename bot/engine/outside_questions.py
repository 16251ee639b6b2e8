"""Typed words that are for no open question: the emergency number, thanks, commands, days; and with nothing open."""

from collections.abc import Callable
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import agreeing, corrections, idle, menus, open_alert, status, stopping, typed
from bot.engine.coach import listing
from conversations.heard import is_prose
from conversations.protocol import Choice, Media, Say
from conversations.stopwords.kinds import Kind
from conversations.words import common
from conversations.words import engine as words
from core.facts import BandsOff
from core.store import facts
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

AFTER_BANDS = timedelta(hours=24)  # words that fit nothing may be about the session; own caution, no source
Dealt = Callable[["Engine", Person, str, datetime], bool]


def before_the_question(thread: Thread | None, flat: str) -> tuple[Dealt, ...]:
    """What may deal with typed words first; a line for the coach goes there as it is."""
    if thread is not None and thread.dialogue == "telling" and flat.lstrip("/") not in menus.WORDS:
        return (open_alert.emergency_typed, agreeing.answered)
    if thread is not None and thread.dialogue == "trouble":  # there "thank you" may be an answer half read
        return (open_alert.emergency_typed, agreeing.answered, typed.done, corrections.typed, menus.command)
    return (
        open_alert.emergency_typed,
        typed.thanked,
        typed.greeted,
        agreeing.answered,
        typed.done,
        corrections.typed,
        menus.command,
    )


def nothing_open(engine: "Engine", person: Person, text: str, now: datetime) -> None:
    """Typed words while nothing is asked and no command fits."""
    if person.role is Role.COACH:
        if not any(dealt(engine, person, text, now) for dealt in (listing.by_name, typed.noted)):
            menus.open_menu(engine, person, now)
    elif is_prose(text) and _after_bands(engine, person, now) and open_alert.gravest(engine, person) is None:
        stopping.halt(engine, person, Kind.UNSURE, text, now, [])
    elif not idle.offered(engine, person, text, now):
        menus.open_menu(engine, person, now)


def _after_bands(engine: "Engine", client: Person, now: datetime) -> bool:
    off = facts.latest(engine.store, BandsOff, client.id)
    return off is not None and now - off.at < AFTER_BANDS


def media(engine: "Engine", person: Person, kind: Media, now: datetime) -> None:
    """A picture, a sticker, a voice note while nothing is asked; who cannot type may need to stop."""
    how = status.without_consent(engine, person.id)
    if how is not None:
        agreeing.way_back(engine, person, how, now)
        return
    stop = (Choice(common.STOP, "stop"),) if kind is Media.VOICE and person.role is Role.CLIENT else ()
    engine.say(person, Say(words.IDLE_MEDIA[kind], stop), now)
