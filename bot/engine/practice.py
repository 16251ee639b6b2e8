"""What a coach looks at: clients, one client, the week; and what a client sees of the plan."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, screenings, status, turns, weeks
from conversations.protocol import Choice, Say
from conversations.words import calendar as calendar_words
from conversations.words import engine as words
from conversations.words import plan as plan_words
from core.access import Action
from core.calendar.zones import local
from core.store import duties, mail, people
from core.store.mail import Letter, Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

MOST_BUTTONS = 8  # clients with a button of their own; the rest by name


def show_clients(engine: "Engine", coach: Person, now: datetime) -> None:
    """All clients, who waits for something first."""
    clients = people.clients_of(engine.store, coach.id)
    if not clients:
        engine.say(coach, Say(words.NO_CLIENTS), now)
        return
    lines = [words.CLIENT_LINE.format(name=one.name, state=status.state_line(engine, one)) for one in clients]
    buttons = tuple(Choice(one.name, f"menu:client:{one.id}") for one in clients[:MOST_BUTTONS])
    engine.say(coach, Say("\n".join(lines), buttons), now)


def show_client(engine: "Engine", coach: Person, client_id: int, now: datetime) -> None:
    """One client's card."""
    client = people.by_id(engine.store, client_id)
    if not gate.allows(engine, coach, Action.SEE_CLIENT, client):
        engine.say(coach, Say(words.NOT_YOURS), now)
        return
    plan = status.plan_of(engine, client.id)
    parts = [f"{client.name}: {status.state_line(engine, client)}", status.last_session(engine, client)]
    if plan is not None:
        parts.append(plan_words.plan_text(plan))
    buttons = (
        Choice(words.CLEARANCE, f"menu:clearing:{client.id}"),
        Choice(words.NEW_PLAN, f"menu:planning:{client.id}"),
    )
    engine.say(coach, Say("\n".join(parts), buttons), now)


def show_plan(engine: "Engine", client: Person, now: datetime) -> None:
    """The client's plan, its next date, and a button to begin."""
    plan = status.plan_of(engine, client.id)
    if plan is None:
        engine.say(client, Say(words.BARRED["no_plan"]), now)
        return
    text = words.PLAN_FOR_YOU.format(plan=plan_words.plan_text(plan))
    coming = duties.next_talk(engine.store, client.id, "reminding")
    if coming is not None:
        when = local(coming.due_at, client.zone).strftime("%A %d %B, %H:%M") + f" ({client.zone})"
        text += "\n" + words.PLAN_NEXT.format(when=when)
    buttons = [Choice(words.START, "menu:start")]
    if plan.when is not None:
        buttons.append(Choice(calendar_words.TO_CALENDAR, "menu:calendar"))
    engine.say(client, Say(text, tuple(buttons)), now)


def ask_to_clear(engine: "Engine", client: Person, screening: str | None, now: datetime) -> None:
    """Show the coach a screening and ask for the decision."""
    coach = engine.coach_of(client)
    if coach is None:
        return
    about = screenings.about(engine, client, screening)
    if about is None:
        engine.say(coach, Say(words.NOT_FINISHED.format(name=client.name)), now)
        return
    turns.begin(engine, coach, "clearing", about, now)


def recap_week(engine: "Engine", coach: Person, now: datetime) -> None:
    """A short line to every client who trained this week; it waits for whoever is in a session."""
    for client in people.clients_of(engine.store, coach.id):
        week = weeks.week_of(engine, client, now)
        if week.done:
            text = words.YOUR_WEEK.format(done=week.done, moved=week.loads_moved)
            duties.plan(engine.store, client.id, "note", {"text": text}, now, now)


def show_week(engine: "Engine", coach: Person, now: datetime) -> None:
    """The digest of the last seven days: who needs the coach first, then the numbers, then a picture."""
    text, needing, chart = weeks.digest_of(engine, coach, now)
    buttons = tuple(Choice(client.name, f"menu:client:{client.id}") for client in needing[:MOST_BUTTONS])
    engine.say(coach, Say(text, buttons), now, Priority.DIGEST)
    if chart and coach.chat is not None:
        body = {"text": "", "chart": chart}
        mail.post(engine.store, Letter(coach.chat, body, "chart", Priority.DIGEST, coach.id), now)
