"""The review of a plan after six to eight weeks: what was reached, and whether to go back to heavier loads."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import quiet, status
from bot.engine.coach import clients as whose
from bot.engine.coach import pauses, resting
from bot.engine.numbers import weeks
from conversations.protocol import Choice, Say
from conversations.words import coach as coach_words
from conversations.words import report as report_words
from conversations.words import review as words
from conversations.words.common import counted
from core.facts import CoachDid, Rated
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def show(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """What the plan brought, and what may come of it."""
    name, began = whose.name_of(engine, coach, client, now), pauses.plan_began(engine, client.id)
    if began is None or status.plan_of(engine, client.id) is None:
        engine.say(coach, Say(words.NOTHING.format(name=name)), now)
        return
    week = weeks.week_of(engine, client, now, name)
    pain = [one.score for one in facts.since(engine.store, Rated, client.id, began, what="pain")]
    lines = [
        words.HEAD.format(
            name=name,
            weeks=counted((now - began).days // 7, "week"),
            sessions=counted(resting.sessions_done(engine, client), "session"),
        ),
        *resting.load_lines(engine, client),
        words.PAIN.format(most=max(pain), last=pain[-1]) if pain else "",
        words.MISSED.format(count=week.missed_in_a_row) if week.missed_in_a_row else "",
        words.ASK,
    ]
    engine.say(coach, Say("\n".join(line for line in lines if line), _choices(client, name)), now)


def _choices(client: Person, name: str) -> tuple[Choice, ...]:
    pairs = (
        (words.HEAVIER, "heavier"),
        (words.GO_ON, "review_on"),
        (coach_words.NEW_PLAN, "planning"),
        (report_words.REPORT, "report"),
    )
    buttons = (Choice(label, f"menu:{act}:{client.id}") for label, act in pairs)
    return (*buttons, coach_words.to_card(name, client.id))


def heavier(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The bands' part is done: the client hears that heavier loads come, and waits for the coach's word."""
    if status.plan_of(engine, client.id) is None:
        show(engine, coach, client, now)
        return
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "reviewed", words.DID_HEAVIER), now)
    resting.finish(engine, coach, client, now)
    quiet.note(engine, client, words.CLIENT_HEAVIER, now)
    engine.say(coach, Say(words.HEAVIER_TOLD.format(name=client.name)), now)


def go_on(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The plan stays; in six weeks it is looked at again."""
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "reviewed", words.DID_GO_ON), now)
    quiet.note(engine, client, words.CLIENT_GO_ON, now)
    name = whose.name_of(engine, coach, client, now)
    engine.say(coach, Say(words.GOES_ON.format(name=name), (coach_words.to_card(name, client.id),)), now)
