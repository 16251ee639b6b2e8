"""A new plan that another coach replaced before anybody trained by it: its coach hears by whom, and may take it back."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import gate, status, turns
from bot.engine.days import calendar
from conversations.protocol import Choice, Halted, Say
from conversations.words import coach as words
from core.access import Action
from core.facts import CoachDid, PlanGiven, SessionStarted
from core.store import facts, people, threads
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

SOON = timedelta(days=1)  # after that a plan is no news to anybody; own choice
LOOKED_AT = 20  # plans, in search of the coach's own last one


def newest(engine: "Engine", client: int) -> str:
    """When the plan in force was given, as text; "": there is none."""
    given = facts.latest(engine.store, PlanGiven, client)
    return given.at.isoformat() if given is not None else ""


def before(engine: "Engine", client: int, now: datetime) -> PlanGiven | None:
    """The new plan in whose place the newest one came; None: it was none, or not new, or trained by."""
    given = facts.newest(engine.store, PlanGiven, client, 2)
    if len(given) < 2 or now - given[1].at > SOON or status.home_plan_of(engine, client) is None:
        return None
    trained = facts.since(engine.store, SessionStarted, client, given[1].at)
    return None if trained else given[1]


def tell(engine: "Engine", by: Person, client: Person, was: PlanGiven, now: datetime) -> None:
    """Both coaches hear it: whose plan went, who replaced it, and how to get it back."""
    coach = people.find(engine.store, was.by)
    if coach is None or coach.id == by.id or not gate.allows(engine, coach, Action.PLAN, client):
        return
    back = Choice(words.TAKE_BACK, f"menu:plan_back:{client.id}/{was.at.isoformat()}")
    when = calendar.shown(engine, coach, was.at)
    text = words.REPLACED.format(by=by.name, name=client.name, when=when)
    engine.say(coach, Say(text, (back, words.to_card(client.name, client.id))), now)
    when = calendar.shown(engine, by, was.at)
    engine.say(by, Say(words.REPLACED_TOLD.format(coach=coach.name, when=when)), now)


def end_changes(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """A change that this coach had begun on the plan before would put it back: it ends."""
    for thread in threads.live(engine.store, coach.id):
        if thread.dialogue == "adjusting" and turns.client_in(turns.state_of(thread))["client"] == client.id:
            turns.deliver(engine, coach, thread, Halted(now, "new_plan"))


def take_back(engine: "Engine", coach: Person, client: Person, at: str, now: datetime) -> None:
    """The coach's own plan of that moment holds again, and whoever replaced it hears so in turn."""
    from bot.engine.coach import plans

    given = facts.newest(engine.store, PlanGiven, client.id, LOOKED_AT)
    mine = next((one for one in given if one.by == coach.id and one.at.isoformat() == at), None)
    if mine is None or mine.plan == given[0].plan:
        engine.say(coach, Say(words.NOTHING_TO_TAKE_BACK.format(name=client.name)), now)
        return
    facts.put(engine.store, client.id, PlanGiven(now, mine.plan, coach.id, words.TOOK_BACK), now)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "gave_plan", words.TOOK_BACK), now)
    plans.given(engine, coach, {"client": client.id}, now)
    card = words.to_card(client.name, client.id)
    engine.say(coach, Say(words.TAKEN_BACK.format(name=client.name), (card,)), now)
