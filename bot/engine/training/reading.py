"""What the numbers of a session say: the question between two readings, and the load looked at again."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import status, turns
from bot.engine.training import loads
from bot.engine.training.advising import advice_on
from conversations.protocol import Say
from conversations.words import asking as words
from conversations.words import readings as words_of
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def ask(engine: "Engine", client: Person, session: str, advised: loads.Advised, now: datetime) -> bool:
    """Ask the one question that tells two close readings apart; False: there is none."""
    found = loads.question(advised)
    if found is None:
        return False
    movement, question, either = found
    name = loads.names(status.plan_of(engine, client.id))[movement]
    about = {
        "session": session,
        "movement": movement,
        "movement_name": name,
        "question": question.value,
        "either": [one.value for one in either],
    }
    turns.begin(engine, client, "asking", about, now)
    return True


def lines(engine: "Engine", client: int, advised: loads.Advised) -> list[str]:
    """What the numbers look like where it is not the load; what is asked about is said with the question."""
    called, asked = loads.names(status.plan_of(engine, client)), loads.question(advised)
    said = (
        words_of.one_line(called[exercise.movement], advice.readings)
        for exercise, advice in advised
        if asked is None or exercise.movement != asked[0]
    )
    return [line for line in said if line]


def for_coach(engine: "Engine", client: Person) -> list[str]:
    """What the last session of each movement looks like, with the odds."""
    plan = status.plan_of(engine, client.id)
    called, said = loads.names(plan), []
    for exercise in loads.exercises(engine, client.id, plan):
        advice = advice_on(engine, client.id, exercise, plan)
        said.append(words_of.coach_line(called[exercise.movement], advice.readings) if advice else "")
    return [line for line in said if line]


def read_again(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """The question is answered: advise once more, and say so where the next load changed."""
    session = details["session"]
    for name, _, use, why in loads.move_again(
        engine, client.id, session, loads.advised(engine, client.id, session)
    ):
        engine.say(client, Say(words.CHANGED.format(name=name.lower(), use=use, why=why)), now)
    return False
