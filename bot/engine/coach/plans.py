"""What follows when a coach gives a plan, changes a part of it, or keeps it as a template."""

import re
from collections.abc import Iterable
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import practice, quiet, status
from bot.engine.coach import away, reading_plans, replaced
from bot.engine.coach import clients as whose
from bot.engine.days import calendar, changing
from bot.engine.training import walks
from conversations.coach.inviting import read_name
from conversations.coach.saving_template import names_client
from conversations.protocol import Say
from conversations.words import adjusting as adjusting_words
from conversations.words import coach as words
from conversations.words import travelling as travelling_words
from core.calendar.zones import in_last_day, local
from core.facts import LoadMoved, TemplateSaved
from core.plans import Exercise, Scheme
from core.progression import Action
from core.store import facts, people, settings
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

SAVE = re.compile(r"^save (?:it )?as (?:a )?template:?\s+(?P<name>.+)$", re.IGNORECASE)
ON_THE_TABLE = "on_the_table:{coach}"  # a setting: the client whose card or plan this coach had last


# --- given and changed ----------------------------------------------------------------------------------
def set_loads(engine: "Engine", client: int, exercises: Iterable[Exercise], now: datetime) -> None:
    """What the coach chose for these holds from now on, whatever the model had moved before."""
    for one in exercises:
        was, use = _doing(engine, client, one), _chosen(one)
        if use and was != use:
            session = f"given-{now.timestamp():.0f}"
            why = words.COACH_CHOSE
            fact = LoadMoved(now, session, one.movement, was, use, Action.START.value, why, True)
            facts.put(engine.store, client, fact, now)


def _doing(engine: "Engine", client: int, exercise: Exercise) -> str:
    """What was moved last, even to a load that is no longer at hand: it would count again once it is."""
    if exercise.scheme is Scheme.WALK:
        return walks.shown(walks.at(engine, client, reading_plans.now(engine, client, exercise)))
    moved = facts.latest(engine.store, LoadMoved, client, movement=exercise.movement, applied=True)
    return exercise.doing if moved is None else moved.use


def _chosen(exercise: Exercise) -> str:
    return walks.shown(walks.planned(exercise)) if exercise.scheme is Scheme.WALK else exercise.doing


def given(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """A new plan: its loads hold, the client sees it, reminders follow it."""
    client = people.by_id(engine.store, details["client"])
    plan = status.home_plan_of(engine, client.id)
    if plan is not None:
        set_loads(engine, client.id, plan.exercises, now)
    put_on_table(engine, coach, client)
    changing.follow(engine, client, now)
    was = replaced.before(engine, client.id, now)
    practice.show_plan(engine, client, now, instead=was is not None)
    if was is not None:
        replaced.tell(engine, coach, client, was, now)
    replaced.end_changes(engine, coach, client, now)
    return False


def changed(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """One part of the plan changed: the client reads what and why."""
    client = people.by_id(engine.store, details["client"])
    plan = status.home_plan_of(engine, client.id)
    touched = [one for one in plan.exercises if one.movement in details["movements"]] if plan else []
    set_loads(engine, client.id, touched, now)
    calendar.remind_next(engine, client, now)
    was, begun_on = replaced.before(engine, client.id, now), details["begun_on"]
    if was is not None and begun_on and was.at.isoformat() != begun_on:
        practice.show_plan(engine, client, now, instead=True)
        replaced.tell(engine, coach, client, was, now)
        return False
    if details["movements"]:
        _say_if_away(engine, coach, client, now)
    quiet.note(
        engine, client, adjusting_words.CLIENT_CHANGED.format(line=details["line"], why=details["why"]), now
    )
    return False


def _say_if_away(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """What was changed is the usual plan, which rests while they travel."""
    travel = away.active(engine, client.id, now)
    if travel is not None and travel.since <= now:
        day = local(in_last_day(travel.until), client.zone).strftime("%-d %b")
        engine.say(coach, Say(travelling_words.COUNTS_AFTER.format(name=client.name, day=day)), now)


# --- own templates ---------------------------------------------------------------------------------------
def put_on_table(engine: "Engine", coach: Person, client: Person) -> None:
    """Remember whose plan "save as template NAME" means."""
    settings.put(engine.store, ON_THE_TABLE.format(coach=coach.id), str(client.id))


def save_as(engine: "Engine", coach: Person, name: str, now: datetime) -> None:
    """ "save as template NAME": the plan of the client whose card was last looked at."""
    stored = settings.get(engine.store, ON_THE_TABLE.format(coach=coach.id))
    seen = {client.id: client for client in whose.seen_by(engine, coach, now)}
    client, short = seen.get(int(stored)) if stored else None, read_name(name)
    text = reading_plans.home_text(engine, client.id) if client is not None else ""
    if client is None:
        engine.say(coach, Say(words.TEMPLATE_NO_CLIENT), now)
    elif not text:
        engine.say(coach, Say(words.TEMPLATE_NO_PLAN.format(name=client.name)), now)
    elif short is None:
        engine.say(coach, Say(words.TEMPLATE_NAME_AGAIN), now)
    elif names_client(short, client.name):
        engine.say(coach, Say(words.TEMPLATE_OF_NOBODY.format(name=client.name)), now)
    else:
        facts.put(engine.store, coach.id, TemplateSaved(now, short, text), now)
        engine.say(coach, Say(words.TEMPLATE_SAVED.format(template=short)), now)
