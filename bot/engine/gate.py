"""The one gate: who asks, about whom, for what.

Everything that can be asked for names its action: dialogues here, the acts of dialogues in `acts`, a client's
menu in `menus`, buttons in `routing`, a coach's menu in `coach.menu`. `tests/bot/test_gate.py` fails on one that
does not.
"""

from typing import TYPE_CHECKING, Any

from core.access import Action, Actor, may
from core.store import people
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine


def actor(engine: "Engine", person: Person, client: Person) -> Actor:
    """What `person` is to `client`."""
    if person.id == client.id:
        return Actor.COACH if person.role is Role.COACH else Actor.CLIENT
    if person.role is not Role.COACH:
        return Actor.STRANGER
    if client.coach == person.id:
        return Actor.OWN_COACH
    looking_after = engine.coach_of(client)
    if looking_after is not None and looking_after.id == person.id:
        return Actor.STAND_IN
    second = engine.second_contact(client)
    return Actor.SECOND_CONTACT if second is not None and second.id == person.id else Actor.OTHER_COACH


def allows(engine: "Engine", person: Person, action: Action, client: Person) -> bool:
    """Whether this person may do this about this client."""
    return may(actor(engine, person, client), action)


def about(engine: "Engine", person: Person, details: dict[str, Any]) -> Person:
    """Whom something is about: the client it names, else whoever asks."""
    client = details.get("client")
    return people.by_id(engine.store, client) if isinstance(client, int) else person


TALKS: dict[str, Action] = {
    "consent": Action.TALK,
    "screening": Action.TALK,
    "clearing": Action.CLEAR,
    "inviting": Action.INVITE,
    "planning": Action.PLAN,
    "before": Action.TRAIN,
    "session": Action.TRAIN,
    "after": Action.TRAIN,
    "still_numb": Action.TALK,
    "asking": Action.TALK,
    "band_list": Action.TALK,
    "morning": Action.TALK,
    "reminding": Action.TALK,
    "missed": Action.TALK,
    "changing": Action.MOVE_DAYS,
    "preferences": Action.TALK,
    "telling": Action.TALK,
    "testing": Action.TRAIN,
    "travelling": Action.MOVE_DAYS,
    "leaving": Action.TALK,
    "adjusting": Action.PLAN,
    "saving_template": Action.PLAN,
    "renaming": Action.PLAN,
    "gauging": Action.PLAN,
    "pulse": Action.PLAN,
    "measuring": Action.PLAN,
    "allowing": Action.PLAN,
    "details": Action.TALK,
    "trouble": Action.TALK,
    "pausing": Action.PLAN,
    "holding": Action.CLEAR,
    "covering": Action.COVER,
    "writing": Action.RELAY,
    "cueing": Action.RELAY,
}


def talks(engine: "Engine", person: Person, dialogue: str, details: dict[str, Any]) -> bool:
    """Whether this dialogue may be had with this person about whom its details name."""
    return allows(engine, person, TALKS[dialogue], about(engine, person, details))
