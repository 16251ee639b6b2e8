"""Typed words that are for no open question: the emergency number, thanks, commands, days; and with nothing open."""

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import idle, menus, status, typed
from bot.engine.coach import away, listing, writing_to
from bot.engine.days import changing
from bot.engine.joining import agreeing, strangers
from bot.engine.safety import health_news, open_alert, unread
from bot.engine.training import corrections, kit
from conversations.protocol import Choice, Media, Said, Say
from conversations.words import common
from conversations.words import engine as words
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

Dealt = Callable[["Engine", Person, str, datetime], bool]


def before_the_question(thread: Thread | None, flat: str) -> tuple[Dealt, ...]:
    """What may deal with typed words first; a line for the coach goes there as it is."""
    if thread is not None and thread.dialogue == "telling" and flat.lstrip("/") not in menus.WORDS:
        return (open_alert.emergency_typed, agreeing.answered)
    if thread is not None and thread.dialogue == "trouble":  # there "thank you" may be an answer half read
        return (open_alert.emergency_typed, agreeing.answered, typed.done, corrections.typed, menus.command)
    reminded = thread is not None and thread.dialogue in changing.OWN_TIMES
    return (
        open_alert.emergency_typed,
        strangers.invited_already,
        typed.thanked,
        typed.greeted,
        agreeing.answered,
        typed.done,
        corrections.typed,
        menus.command,
        listing.named_aside,
        *((away.said_back,) if reminded else ()),
    )


def nothing_open(engine: "Engine", person: Person, text: str, now: datetime, message: int | None) -> None:
    """Typed words while nothing is asked and no command fits."""
    if person.role is Role.COACH:
        known = (listing.by_name, typed.noted, writing_to.offered)
        if not any(dealt(engine, person, text, now) for dealt in known):
            menus.went_nowhere(engine, person, text, now)
        return
    known_to_client = (menus.said_ready, away.said_back, idle.said_yes, kit.told_gone)
    if any(dealt(engine, person, text, now) for dealt in known_to_client):
        return
    if health_news.asked(engine, person, text, now):
        return
    asked = unread.asked_whether_wrong(engine, person, None, Said(now, text, None, message))
    if not asked and not idle.offered(engine, person, text, now):
        menus.open_menu(engine, person, now)


def media(engine: "Engine", person: Person, kind: Media, now: datetime) -> None:
    """A picture, a sticker, a voice note while nothing is asked; who cannot type may need to stop."""
    how = status.without_consent(engine, person.id)
    if how is not None:
        agreeing.way_back(engine, person, how, now)
        return
    stop = (Choice(common.STOP, "stop"),) if kind is Media.VOICE and person.role is Role.CLIENT else ()
    engine.say(person, Say(words.IDLE_MEDIA[kind], stop), now)
