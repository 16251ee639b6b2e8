"""Without consent nothing goes on, and there is always a way back to it."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import quiet, status, turns
from conversations.catalogue import CATALOGUE
from conversations.protocol import Choice, Resumed, Say
from conversations.words import consent as words
from core.facts import Detail
from core.store import facts, threads
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine


def without(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """The client said no, took a yes back, or left before the end: kept, and the coach is told kindly."""
    how = details["how"]
    facts.put(engine.store, client.id, Detail(now, status.CONSENT, how), now)
    coach = engine.coach_of(client)
    if coach is not None and how in words.COACH_TOLD:
        quiet.note(engine, coach, words.COACH_TOLD[how].format(name=client.name), now)
    return False


def answered(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """Words of a client without consent, and words that take it back; True: they were dealt with."""
    if client.role is not Role.CLIENT:
        return False
    said = " ".join(text.lower().replace("’", "'").split()).rstrip(".!")
    how = status.without_consent(engine, client.id)
    if how is None and said in words.TAKES_BACK:
        take_back(engine, client, now)
        return True
    if how is None or said in words.ALWAYS or threads.floor(engine.store, client.id) is not None:
        return False
    if said in (words.GO_ON[how].lower(), "i agree", "yes"):
        again(engine, client, now)
    else:
        way_back(engine, client, how, now)
    return True


def take_back(engine: "Engine", client: Person, now: datetime) -> None:
    """All talks end; one with bands on ends with its bands-off question."""
    engine.say(client, Say(words.TAKEN_BACK), now)
    without(engine, client, {"how": "withdrawn"}, now)
    for thread in threads.live(engine.store, client.id):
        if CATALOGUE[thread.dialogue].trains:
            turns.deliver(engine, client, thread, Resumed(now))
        else:
            threads.keep(engine.store, thread.id, None, None)


def way_back(engine: "Engine", client: Person, how: str, now: datetime) -> None:
    """Why it stopped here, and the button that goes on."""
    engine.say(client, Say(words.WITHOUT[how], (Choice(words.GO_ON[how], "menu:agree"),)), now)


def again(engine: "Engine", client: Person, now: datetime) -> None:
    """Ask for consent once more."""
    if status.without_consent(engine, client.id) is None:
        return
    facts.put(engine.store, client.id, Detail(now, status.CONSENT, status.ASKED), now)
    turns.begin(engine, client, "consent", {}, now)
