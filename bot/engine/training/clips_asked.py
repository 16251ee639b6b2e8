"""A coach asks for a film of a movement: the client reads it now and at the next session, before those bands go on."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import quiet, status
from bot.engine.coach import clients as whose
from conversations.protocol import Choice, Say
from conversations.words import clips as words
from conversations.words import coach as coach_words
from conversations.words.movements import NAMES
from core.facts import CoachDid, Detail
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

ASKED = "film_asked"  # detail "film_asked:goblet_squat" of a client: when it was asked for, "": it came


def ask(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The button on the card: of the plan's one movement, else which."""
    plan = status.plan_of(engine, client.id)
    movements = tuple(one.movement for one in plan.exercises) if plan is not None else ()
    name = whose.name_of(engine, coach, client, now)
    back = coach_words.to_card(name, client.id)
    match movements:
        case ():
            engine.say(coach, Say(words.NOTHING_TO_FILM.format(name=name), (back,)), now)
        case (one,):
            ask_for(engine, coach, client, one, now)
        case _:
            choices = (Choice(NAMES[one], f"menu:clip_of:{client.id}/{one}") for one in movements)
            engine.say(coach, Say(words.FILM_OF_WHICH.format(name=name), (*choices, back)), now)


def ask_for(engine: "Engine", coach: Person, client: Person, movement: str, now: datetime) -> None:
    """The client reads it after a session under way or the night, and once more before the bands go on."""
    if movement not in NAMES:
        return
    name = NAMES[movement].lower()
    facts.put(engine.store, client.id, Detail(now, f"{ASKED}:{movement}", now.isoformat()), now)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "asked_clip", name), now)
    quiet.note(engine, client, words.FILM_PLEASE.format(coach=coach.name, name=name), now)
    engine.say(coach, Say(words.FILM_ASKED.format(client=client.name, name=name)), now)


def asked(engine: "Engine", client: int) -> tuple[str, ...]:
    """The movements of which a film is still awaited, the one asked for last at the end."""
    details = facts.current(engine.store, Detail, client)
    named = ((one.name.partition(":"), one.value) for one in details)
    return tuple(movement for (what, _, movement), value in named if what == ASKED and value)


def came(engine: "Engine", client: int, movement: str, now: datetime) -> None:
    """A film of this movement is on its way to the coach."""
    if movement in asked(engine, client):
        facts.put(engine.store, client, Detail(now, f"{ASKED}:{movement}", ""), now)


def with_wishes(engine: "Engine", client: int, teaching: dict[str, str]) -> dict[str, str]:
    """How each movement is done, and where a film of it is awaited, that it is."""
    wished = asked(engine, client)
    return {
        movement: f"{text}\n{words.FILM_NOW}" if movement in wished else text
        for movement, text in teaching.items()
    }
