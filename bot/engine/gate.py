"""The one gate: who asks, about whom, for what."""

from typing import TYPE_CHECKING

from core.access import Action, Actor, may
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine


def actor(engine: "Engine", person: Person, client: Person) -> Actor:
    """What `person` is to `client`."""
    if person.id == client.id:
        return Actor.CLIENT
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
