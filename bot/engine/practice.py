"""What a client sees of the plan, and what waits for the coach's decision."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import status, turns
from bot.engine.days import calendar
from bot.engine.joining import screenings
from conversations.protocol import Choice, Say
from conversations.words import beat as beat_words
from conversations.words import calendar as calendar_words
from conversations.words import engine as words
from conversations.words import plan as plan_words
from core.beat import pattern_of
from core.store import threads, unsent
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

PLAN_SHOWN, PLAN_INSTEAD = "plan_shown", "plan_instead"  # the names of these letters, stored


def show_plan(engine: "Engine", client: Person, now: datetime, *, instead: bool = False) -> None:
    """The client's plan, its next date, and a button to begin; `instead`: they have just got another one."""
    plan = status.plan_of(engine, client.id)
    if plan is None:
        engine.say(client, Say(words.BARRED["no_plan"]), now)
        return
    instead = instead and not _taken_back(engine, client)
    under_way = threads.live_in(engine.store, client.id, "session") is not None
    usual = words.PLAN_INSTEAD if instead else words.PLAN_FOR_YOU
    head = words.PLAN_FROM_NEXT if under_way else usual
    text = head.format(plan=plan_words.plan_text(plan))
    coming = calendar.next_at(engine, client)
    if coming is not None:
        text += calendar.usual(engine, client, plan)
        text += "\n" + words.PLAN_NEXT.format(when=calendar.shown(engine, client, coming))
    elif plan.when is None:
        text += "\n" + words.PLAN_NO_DAYS
    buttons = [] if under_way else [Choice(words.START, "menu:start")]
    if any(pattern_of(one) for one in plan.exercises):
        buttons.append(Choice(beat_words.BUTTON, "menu:sound"))
    if plan.when is not None:
        buttons.append(Choice(calendar_words.TO_CALENDAR, "menu:calendar"))
    engine.say(client, Say(text, tuple(buttons), PLAN_INSTEAD if instead else PLAN_SHOWN), now)


def _taken_back(engine: "Engine", client: Person) -> bool:
    """Two plans at once: what was to tell of the first does not go out; True: it was the first that they would have got."""
    if client.chat is None:
        return False
    after = engine.letters_before
    unsent.take_back(engine.store, client.chat, PLAN_INSTEAD, after)
    return unsent.take_back(engine.store, client.chat, PLAN_SHOWN, after)


def ask_to_clear(
    engine: "Engine", client: Person, screening: str | None, now: datetime, coach: Person | None = None
) -> None:
    """Show the coach (None: who looks after the client) a screening and ask for the decision."""
    coach = coach or engine.coach_of(client)
    if coach is None:
        return
    about = screenings.about(engine, client, screening)
    if about is None:
        engine.say(coach, Say(words.NOT_FINISHED.format(name=client.name)), now)
        return
    turns.begin(engine, coach, "clearing", about, now)
