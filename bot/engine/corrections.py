"""An edited message after its session is over: the sets that it had stated change with it."""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from conversations.answers import Count, Unclear, several_numbers, side_numbers
from conversations.protocol import Say
from conversations.words import engine as words
from conversations.words.answers import unclear
from core.facts import SetDone
from core.plans import Side
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
        pairs = _by_side(sets, text) or tuple(zip(sets, several_numbers(text, 0, 200), strict=False))
    except Unclear as problem:
        engine.say(person, Say(unclear(problem)), engine.clock())
        return
    for one, count in pairs:
        changed = replace(one, at=at, reps=count.value, rough=count.rough)
        facts.put(engine.store, person.id, changed, engine.clock(), message)
        engine.say(person, Say(words.CHANGED_SET.format(n=one.set_no, reps=count.value)), engine.clock())


def _by_side(sets: list[SetDone], text: str) -> tuple[tuple[SetDone, Count], ...]:
    """Counts that name their side, with their sets; empty: no sides are named."""
    try:
        sided = side_numbers(text, 0, 200)
    except Unclear:
        return ()
    said = {Side.LEFT: sided.left, Side.RIGHT: sided.right}
    return tuple((one, count) for one in sets if (count := said.get(one.side)) is not None)
