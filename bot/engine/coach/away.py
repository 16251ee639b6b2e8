"""The travel plan: for given days without equipment, then back by itself; both sides are told."""

import re
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import practice, quiet, status, turns
from bot.engine.days import calendar
from conversations.protocol import Choice, Say
from conversations.words import travelling as travelling_words
from core.facts import CoachDid, Travelling
from core.progression.travel import needs_equipment, travel_plan
from core.store import duties, facts, people
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine


def active(engine: "Engine", client: int, now: datetime) -> Travelling | None:
    """The travel that is on or still to come."""
    last = facts.latest(engine.store, Travelling, client)
    return last if last is not None and now < last.until else None


def by_coach(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """From the card."""
    _ask(engine, coach, client, now)


def by_client(engine: "Engine", client: Person, now: datetime) -> None:
    """Asked for by the client; who is away already may come back."""
    if active(engine, client.id, now) is not None:
        engine.say(
            client, Say(travelling_words.TRAVEL_ON, (Choice(travelling_words.I_AM_HOME, "menu:home"),)), now
        )
        return
    _ask(engine, client, client, now)


def _ask(engine: "Engine", person: Person, client: Person, now: datetime) -> None:
    plan = status.open_plan_of(engine, client.id)
    coach = person.role is Role.COACH
    if plan is None:
        engine.say(person, Say(travelling_words.TRAVEL_NO_PLAN.format(name=client.name)), now)
    elif not needs_equipment(plan):
        engine.say(person, Say(travelling_words.TRAVEL_NOT_NEEDED), now)
    elif travel_plan(plan) is None:
        text = travelling_words.TRAVEL_NOTHING_COACH if coach else travelling_words.TRAVEL_NOTHING
        engine.say(person, Say(text.format(name=client.name)), now)
    else:
        turns.begin(engine, person, "travelling", {"client": client.id}, now)


def begun(engine: "Engine", person: Person, details: dict[str, Any], now: datetime) -> bool:
    """The days are set: the other side hears of it, and both ends are planned."""
    client = people.by_id(engine.store, details["client"])
    away = active(engine, client.id, now)
    if away is None:
        return False
    for talk in ("travel_begins", "travel_over"):
        duties.unplan(engine.store, client.id, talk)
    if away.since > now:
        duties.plan(
            engine.store, client.id, "travel_begins", {}, quiet.earliest(engine, client, away.since), now
        )
    else:
        practice.show_plan(engine, client, now)
    duties.plan(engine.store, client.id, "travel_over", {}, quiet.earliest(engine, client, away.until), now)
    if details["by_coach"]:
        quiet.note(engine, client, travelling_words.CLIENT_TRAVELS.format(days=details["days"]), now)
    else:
        _tell_coach(
            engine, client, travelling_words.COACH_TRAVELS.format(name=client.name, days=details["days"]), now
        )
    return False


def travel_begins(engine: "Engine", client: Person, about: dict[str, Any], now: datetime) -> None:
    """The first day away: the plan as it is from now on."""
    away = active(engine, client.id, now)
    if away is not None and away.since <= now:
        engine.say(client, Say(travelling_words.TRAVEL_BEGINS), now)
        practice.show_plan(engine, client, now)


def travel_over(engine: "Engine", client: Person, about: dict[str, Any], now: datetime) -> None:
    """Back to the usual plan by itself."""
    if active(engine, client.id, now) is None:
        _back(engine, client, now)


def back_by_coach(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The coach ends it before its time."""
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "travel", travelling_words.TRAVEL_ENDED), now)
    home(engine, client, now)


def home(engine: "Engine", client: Person, now: datetime) -> None:
    """Back before the last day."""
    travel = active(engine, client.id, now)
    if travel is None:
        engine.say(client, Say(travelling_words.TRAVEL_IS_OVER), now)
        return
    facts.put(engine.store, client.id, Travelling(now, now, now, client.id), now)
    for talk in ("travel_begins", "travel_over"):
        duties.unplan(engine.store, client.id, talk)
    if travel.since <= now:
        _back(engine, client, now)
        return
    engine.say(client, Say(travelling_words.TRAVEL_OFF), now)
    _tell_coach(engine, client, travelling_words.TRAVEL_OFF_COACH.format(name=client.name), now)


SAID_BACK = re.compile(
    r"(?:hi,? |hello,? )?(?:(?:i am|i'm|im|i’m|we are|we're) )?(?:now )?(?:back(?: at)?(?: home)?|(?:at )?home)(?: again)?(?: now)?[ .!]*",
    re.IGNORECASE,
)


def said_back(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """ "I'm back", "home again" of who is away: the usual plan and the clock at home, each after a tap."""
    if not SAID_BACK.fullmatch(text.strip()):
        return False
    travel, moves = active(engine, client.id, now), calendar.clock_moves(engine, client.id)
    begun = travel is not None and travel.since <= now
    if begun:
        by_client(engine, client, now)
    if not moves or moves[-1][1] == client.zone:
        return begun
    about = {"said": f"I am in {moves[-1][1]}", "said_at": now.isoformat()}
    turns.begin(engine, client, "changing", about, now)
    return True


def _back(engine: "Engine", client: Person, now: datetime) -> None:
    engine.say(client, Say(travelling_words.TRAVEL_BACK), now)
    practice.show_plan(engine, client, now)
    _tell_coach(engine, client, travelling_words.TRAVEL_BACK_COACH.format(name=client.name), now)


def _tell_coach(engine: "Engine", client: Person, text: str, now: datetime) -> None:
    coach = engine.coach_of(client)
    if coach is not None:
        quiet.note(engine, coach, text, now)
