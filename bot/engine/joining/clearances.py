"""A client's clearance as it stands now, read from the store; the rules are in `core.screening.standing`."""

from typing import TYPE_CHECKING

from conversations.words import coach as words
from conversations.words.screening import RULES
from core.calendar.zones import local
from core.cuffs.limbs import ALL, Limb, plan_on
from core.facts import Cleared, ScreeningDone
from core.plans import Plan
from core.screening.standing import Standing, in_force, open_by, standing
from core.store import facts, people
from core.store.people import Person
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine


def now(engine: "Engine", client: int) -> Standing:
    """Which limbs are open now, or what the client waits for."""
    return standing(facts.current(engine.store, Cleared, client), screened(engine, client), engine.clock())


def decision(engine: "Engine", client: int) -> Cleared | None:
    """The decision in force, a hold as well; None: nobody has decided."""
    return in_force(facts.current(engine.store, Cleared, client), engine.clock())


def screened(engine: "Engine", client: int) -> ScreeningDone | None:
    """The newest screening that came to its end."""
    return facts.latest(engine.store, ScreeningDone, client)


def decided(engine: "Engine", client: Person) -> str:
    """The decision in force: what, by whom, when, on which findings; "": none."""
    one = decision(engine, client.id)
    if one is None:
        return ""
    done = facts.latest(engine.store, ScreeningDone, client.id, screening=one.screening)
    rules = [RULES.get(rule, rule) for rule in names_in(done.because if done else "")]
    return words.DECIDED.format(
        what=words.DECIDED_WHAT.get(one.decision, words.DECIDED_WHAT["cleared"]),
        who=people.by_id(engine.store, one.by).name,
        day=local(one.at, client.zone).strftime("%-d %b %Y"),
        on=words.DECIDED_ON.format(answers="; ".join(rules)) if rules else "",
        note=words.DECIDED_NOTE.format(note=one.note.rstrip(" .")) if one.note else "",
    )


def limbs(engine: "Engine", client: int) -> frozenset[Limb]:
    """The limbs that the decision in force opens, whether or not something else bars training now."""
    one = decision(engine, client)
    return frozenset() if one is None else open_by(one, screened(engine, client))


def on_open_limbs(engine: "Engine", client: int, plan: Plan) -> Plan | None:
    """The plan without bands on a closed limb; None: nothing of it is left. The plan on record stays as it is."""
    # None open: barred, and the plan waits as it was given.
    return plan_on(plan, limbs(engine, client) or ALL)
