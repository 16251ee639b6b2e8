"""Facts into the record, and what follows from one by itself."""

from typing import TYPE_CHECKING

from bot.engine.safety import aftercare, never_on
from core.cuffs.limits import calls
from core.facts import NOT_ON, BandsOff, BandsOn, Fact, Noticed, SessionEnded, SetDone
from core.store import duties, facts
from core.store.duties import Watch

if TYPE_CHECKING:
    from bot.engine.core import Engine

SAID_NUMB = ("said_nerve", "said_circulation")  # `Noticed.kind`


def record(engine: "Engine", person: int, fact: Fact, message: int | None = None) -> None:
    """Store a fact and what follows from it by itself: watching bands or no more, the questions after a session."""
    if isinstance(fact, SetDone):
        message = facts.said_by(engine.store, person, fact, "reps", message)
    facts.put(engine.store, person, fact, engine.clock(), message)
    match fact:
        case BandsOn():
            aftercare.bands_were_on(engine, person, fact.session, fact.at)
            first = calls(fact.at, fact.limit_s, fact.region)[0].at
            entry = Watch(0, person, fact.session, fact.spell, fact.region, fact.at, fact.limit_s, 0, first)
            duties.watch(engine.store, entry)
        case BandsOff():
            duties.unwatch(engine.store, person, fact.session, fact.spell)
            aftercare.came_off(engine, person, fact)
            if fact.why == NOT_ON:
                never_on.settle(engine, person, fact)
        case Noticed(kind=kind) if kind in SAID_NUMB:
            aftercare.said_numb(engine, person, fact.at)
        case SessionEnded():
            aftercare.ended(engine, person, fact)
        case _:
            pass
