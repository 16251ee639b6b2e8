"""An edited message after its session is over: the sets that it had stated change with it."""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from conversations.answers import Unclear, several_numbers
from conversations.protocol import Say
from conversations.words import engine as words
from conversations.words.answers import unclear
from core.facts import SetDone
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def amend(engine: "Engine", person: Person, text: str, message: int, at: datetime) -> None:
    """Append the corrected sets; readers see the latest."""
    sets = facts.by_message(engine.store, SetDone, person.id, message)
    if not sets:
        return
    try:
        counts = several_numbers(text, 0, 200)
    except Unclear as problem:
        engine.say(person, Say(unclear(problem)), engine.clock())
        return
    for one, count in zip(sets, counts, strict=False):
        changed = replace(one, at=at, reps=count.value, rough=count.rough)
        facts.put(engine.store, person.id, changed, engine.clock(), message)
        engine.say(person, Say(words.CHANGED_SET.format(n=one.set_no, reps=count.value)), engine.clock())
