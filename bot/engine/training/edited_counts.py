"""A count changed by editing the message that stated it, in a session or after it."""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine.training.corrections import MOST_REPS, by_side, next_time
from conversations.answers import Unclear, several_numbers
from conversations.protocol import Say
from conversations.words import engine as words
from conversations.words.answers import unclear
from core.facts import SetDone
from core.store import facts, threads
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def amend(engine: "Engine", person: Person, text: str, message: int, at: datetime) -> None:
    """Append the corrected sets; readers see the latest."""
    sets = facts.by_message(engine.store, SetDone, person.id, message)
    if not sets:
        return
    try:
        pairs = by_side(sets, text) or tuple(zip(sets, several_numbers(text, 0, MOST_REPS), strict=False))
    except Unclear as problem:
        engine.say(person, Say(unclear(problem)), engine.clock())
        return
    for one, count in pairs:
        changed = replace(one, at=at, reps=count.value, rough=count.rough)
        facts.put(engine.store, person.id, changed, engine.clock(), message)
        engine.say(person, Say(words.CHANGED_SET.format(n=one.set_no, reps=count.value)), engine.clock())
    if threads.live_in(engine.store, person.id, "session") is None:
        for line in next_time(engine, person, sets[0].session):
            engine.say(person, Say(line), engine.clock())
