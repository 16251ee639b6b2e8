"""What the numbers of a session say: the question between two readings, and the load looked at again."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import loads, status, turns
from conversations.protocol import Say
from conversations.words import asking as words
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def ask(engine: "Engine", client: Person, session: str, advised: loads.Advised, now: datetime) -> bool:
    """Ask the one question that tells two close readings apart; False: there is none."""
    found = loads.question(advised)
    if found is None:
        return False
    movement, question = found
    name = loads.names(status.plan_of(engine, client.id))[movement]
    about = {"session": session, "movement": movement, "movement_name": name, "question": question.value}
    turns.begin(engine, client, "asking", about, now)
    return True


def read_again(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """The question is answered: advise once more, and say so where the next load changed."""
    session = details["session"]
    for name, _, use, why in loads.move_again(
        engine, client.id, session, loads.advised(engine, client.id, session)
    ):
        engine.say(client, Say(words.CHANGED.format(name=name.lower(), use=use, why=why)), now)
    return False
