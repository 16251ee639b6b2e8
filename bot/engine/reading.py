"""What the numbers of a session say: the question between two readings, and the load looked at again."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import loads, status, turns
from conversations.protocol import Say
from conversations.words import asking as words
from core.facts import LoadMoved
from core.store import facts
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
    told = {one.movement: one for one in facts.current(engine.store, LoadMoved, client.id, session=session)}
    loads.move(engine, client.id, session, loads.advised(engine, client.id, session))
    for one in facts.current(engine.store, LoadMoved, client.id, session=session):
        if one.movement in told and one.use != told[one.movement].use:
            name = loads.names(status.plan_of(engine, client.id))[one.movement].lower()
            engine.say(client, Say(words.CHANGED.format(name=name, use=one.use, why=one.because)), now)
    return False
