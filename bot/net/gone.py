"""Whoever blocked the bot: a client's coach hears it; a coach's alerts go to whoever is next, at once."""

from collections.abc import Callable
from datetime import datetime

from conversations.words import engine as words
from core.store import duties, mail, people
from core.store.connection import Store
from core.store.people import Person

Second = Callable[[Person], Person | None]


def mark(store: Store, chat: int, now: datetime, second: Second) -> None:
    """Nobody is reached in this chat until they write again. `second` is a client's second contact."""
    person = people.by_chat(store, chat)
    if person is None or person.unreachable_at is not None:
        return
    people.unreachable(store, chat, now)
    if person.coach is None:
        duties.not_arrived(store, person.id, now)
        return
    coach = people.stand_in_of(store, person.coach, now) or people.by_id(store, person.coach)
    if coach.unreachable_at is not None:
        coach = second(person) or coach
    if coach.chat is not None:
        mail.post(store, mail.Letter(coach.chat, {"text": words.UNREACHABLE.format(name=person.name)}), now)
