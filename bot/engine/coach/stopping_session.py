"""The coach ends a session under way: bands off first, at once, whatever the client is in the middle of."""

import re
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, turns
from bot.engine.coach import clients as whose
from bot.engine.safety import bands
from conversations.catalogue import CATALOGUE
from conversations.protocol import Barred, Choice, Say
from conversations.stopwords import Kind, read
from conversations.words import coach as words
from conversations.words import engine as engine_words
from core.access import Action
from core.facts import CoachDid
from core.store import facts, threads
from core.store.mail import Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

WHY = "stopped_by_coach"  # stored
TYPED = re.compile(
    r"^/?(?:stop\s+(?:the\s+)?(?:session\s+(?:of|for|with)\s+)?(?P<name>[^:?]{1,60}?)(?:'s)?(?:\s+(?:session|now))*[\s.!]*"
    r"|(?P<first>[^:?]{1,40}?)\s*[:,]?\s+stop(?:\s+now)?[\s.!]*)$",
    re.IGNORECASE,
)


def typed(engine: "Engine", coach: Person, text: str, now: datetime) -> bool:
    """ "stop Ruta", "Ruta: stop"; False: it names no client of this coach who is in a session."""
    found = TYPED.match(text.strip().replace("’", "'"))
    if found is None:
        return False
    named = whose.found(engine, coach, found["name"] or found["first"], now)
    training = [client for client in named if under_way(engine, client)]
    if not named or (not training and found["first"]):
        return False
    if len(training) > 1:
        engine.say(coach, Say(words.STOP_WHOM, tuple(button(client) for client in training)), now)
        return True
    stop(engine, coach, (training or named)[0], now)
    return True


def button(client: Person) -> Choice:
    """To end this client's session."""
    return Choice(words.STOP_SESSION.format(name=client.name), f"menu:stop_session:{client.id}")


def is_stop(text: str) -> bool:
    """Whether the coach's words are marked stop: those do not wait until the bands are off."""
    return read(text).kind is Kind.STOP


def under_way(engine: "Engine", client: Person) -> bool:
    """Whether there is a session to stop, or bands are on."""
    from bot.engine import due

    return due.in_session(engine, client)


def stop(engine: "Engine", coach: Person, client: Person, now: datetime, said: str = "") -> None:
    """End it. `said`: what the coach wrote, word for word; it goes along."""
    if not gate.allows(engine, coach, Action.RELAY, client):
        engine.say(coach, Say(engine_words.NOT_YOURS), now)
        return
    if not under_way(engine, client):
        engine.say(coach, Say(words.NOTHING_TO_STOP.format(name=client.name)), now)
        return
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "stopped_session", said), now)
    engine.say(client, Say(words.CLIENT_STOPPED), now, Priority.ALERT)
    if said:
        engine.say(client, Say(engine_words.FROM_COACH.format(text=said)), now, Priority.ALERT)
    for thread in threads.live(engine.store, client.id):
        if CATALOGUE[thread.dialogue].trains:
            _end(engine, client, thread, now)
    bands.told_off(engine, client.id)
    engine.say(coach, Say(words.STOPPED_SESSION.format(name=client.name)), now)


def _end(engine: "Engine", client: Person, thread: threads.Thread, now: datetime) -> None:
    """Over at once; with bands on only once they are off."""
    ended = turns.foreseen(engine, thread, Barred(now, WHY))
    turns.keep(engine, client, thread, CATALOGUE[thread.dialogue], ended, None)
