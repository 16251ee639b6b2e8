"""The coach's week: who needs them first and why, the practice in numbers, a line per client, a picture."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import recaps, weeks
from bot.engine.coach import clients as whose
from conversations.protocol import Choice, Say
from conversations.words import digest as words
from core.store import mail, people
from core.store.mail import Letter, Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def show(engine: "Engine", coach: Person, now: datetime) -> None:
    """The digest of the last seven days."""
    made = weeks.week_of_practice(engine, coach, now)
    needing = [week for week, _ in made.needs_you[: words.MOST_NEEDING]]
    buttons = [Choice(week.name, f"menu:client:{week.client}") for week in needing]
    if made.weeks:
        buttons.append(Choice(words.EVERYBODY, "menu:everybody:0"))
    engine.say(coach, Say(words.render(made), tuple(buttons)), now, Priority.DIGEST)
    chart = weeks.chart_of(engine, whose.seen_by(engine, coach, now), now)
    if chart and coach.chat is not None:
        letter = Letter(coach.chat, {"text": "", "chart": chart}, "chart", Priority.DIGEST, coach.id)
        mail.post(engine.store, letter, now)


def everybody(engine: "Engine", coach: Person, now: datetime, page: int) -> None:
    """A line per client, a screen at a time."""
    made = weeks.week_of_practice(engine, coach, now)
    pages = words.pages(made)
    page = min(max(page, 0), pages - 1)
    turning = ((words.NEXT, page + 1, page + 1 < pages), (words.BACK, page - 1, page > 0))
    buttons = tuple(Choice(label, f"menu:everybody:{to}") for label, to, there in turning if there)
    engine.say(coach, Say(words.everybody(made, page), buttons), now)


def recap_week(engine: "Engine", coach: Person, now: datetime) -> None:
    """Their own week to every client of this coach."""
    for client in people.clients_of(engine.store, coach.id):
        recaps.send(engine, client, now)
