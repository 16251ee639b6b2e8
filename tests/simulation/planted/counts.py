"""Counts of sets."""

import itertools
from dataclasses import replace
from typing import Any

from bot.engine import recording
from bot.engine.training import edited_counts
from conversations.session import counting, deciding, machine, tally, which_set
from core.cuffs import Decision, Step
from core.facts import SetDone
from core.plans import Side
from core.store import facts
from tests.simulation.planted.planting import bug, nothing


@bug(recording, "record")
def swapped_sides(right: Any) -> Any:
    other = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT, Side.BOTH: Side.BOTH}

    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if isinstance(fact, SetDone):
            fact = replace(fact, side=other[fact.side])
        right(engine, person, fact, message)

    return record


@bug(recording, "record")
def confirmed_and_not_stored(right: Any) -> Any:
    numbers = itertools.count(1)

    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if not isinstance(fact, SetDone) or next(numbers) % 6:
            right(engine, person, fact, message)

    return record


@bug(recording, "record")
def filed_under_the_next_set(right: Any) -> Any:
    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if isinstance(fact, SetDone):
            fact = replace(fact, set_no=fact.set_no + 1)
        right(engine, person, fact, message)

    return record


@bug(facts, "_same_key")
def correction_beside_the_first(right: Any) -> Any:
    return lambda store, person, fact: None


@bug(tally, "amend")
def correction_said_and_not_made(right: Any) -> Any:
    return lambda *args: replace(right(*args), effects=())


@bug(edited_counts, "amend")
def late_edit_changes_another_set(right: Any) -> Any:
    def amend(engine: Any, person: Any, text: str, message: int, at: Any) -> None:
        row = engine.store.row("SELECT min(message) AS first FROM set_done WHERE person = ?", [person.id])
        right(engine, person, text, row["first"] or message, at)

    return amend


@bug(which_set, "said_again")
def second_copy_counts_as_new(right: Any) -> Any:
    return nothing


@bug(machine, "_is_open")
def old_button_obeyed(right: Any) -> Any:
    return lambda state, question: True


@bug(deciding, "decide")
def check_always_passes(right: Any) -> Any:
    return lambda checks, so_far: Decision(Step.GO, (), 0)


@bug(counting, "typed")
def silent_on_what_it_cannot_read(right: Any) -> Any:
    def typed(state: Any, event: Any) -> Any:
        made = right(state, event)
        return made if made.effects else replace(made, replies=())

    return typed
