"""The coach's week: who needs them first and why, the practice in numbers, a line per client, a picture."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import quiet
from bot.engine.coach import clients as whose
from bot.engine.days import calendar
from bot.engine.numbers import recaps, weeks
from conversations.protocol import Choice, Say
from conversations.words import digest as words
from core.digest import Need
from core.facts import (
    CalendarChanged,
    Cleared,
    CoachDid,
    Detail,
    Paused,
    PlanEnded,
    PlanGiven,
    ScreeningDone,
    Travelling,
    WalkDone,
)
from core.safety.causes import WEEKLY, Tier
from core.store import duties, mail, people
from core.store.ahead import read_ahead
from core.store.duties import Planned
from core.store.mail import Letter, Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


ASKED = "week_asked"  # a planned talk; stored

# Asked for several times a client, and few of each: read ahead for all clients at once.
FEW = (
    CalendarChanged,
    Cleared,
    CoachDid,
    Detail,
    Paused,
    PlanEnded,
    PlanGiven,
    ScreeningDone,
    Travelling,
    WalkDone,
)

# By the most urgent reason; the name of a button about a client.
ACT = {
    Need.HELD: "clearing",
    Need.CLEARANCE: "clearing",
    Need.NO_PLAN: "planning",
    Need.LOADS_OFF: "change",
    Need.MISSED: "message",
    Need.QUIET: "message",
    Need.REVIEW_DUE: "review",
}


@dataclass(frozen=True, slots=True)
class Week:
    """A coach's week, made and not yet told: plain data, so that another process may make it."""

    text: str
    buttons: tuple[tuple[str, str], ...]  # label and value
    chart: dict[str, Any]  # {}: nothing to draw
    recaps: tuple[tuple[int, str], ...] = ()  # a client, and their own week in words
    about: tuple[tuple[int, str], ...] = ()  # whom it may name


def make(engine: "Engine", coach: Person, now: datetime) -> Week:
    """The last seven days. Reads only."""
    made = weeks.week_of_practice(engine, coach, now)
    buttons = [
        (words.label(week, why[0]), _act(engine, week.client, why[0]))
        for week, why in made.needs_you[: words.MOST_NEEDING]
    ]
    if made.weeks:
        buttons.append((words.EVERYBODY, "menu:everybody:0"))
    chart = weeks.chart_of(engine, whose.seen_by(engine, coach, now), now, made.by_need)
    return Week(words.render(made), tuple(buttons), chart)


def _act(engine: "Engine", client: int, why: Need) -> str:
    """What the button of a client does: the act that the most urgent reason asks for, else the card."""
    if why in (Need.URGENT, Need.OPEN_ALERT):
        mine = sorted(duties.open_alerts(engine.store, client), key=lambda one: one.tier is not Tier.NOW)
        told = [one for one in mine if one.cause not in WEEKLY]
        return f"menu:alert:{told[0].id}" if told else f"menu:client:{client}"
    return f"menu:{ACT.get(why, 'client')}:{client}"


def make_for(engine: "Engine", coach: Person, talk: Planned, now: datetime) -> Week:
    """What a planned talk is for: the week at its time, with every client's own; or what the coach asked for."""
    clients = [*whose.seen_by(engine, coach, now), *people.clients_of(engine.store, coach.id)]
    with read_ahead(engine.store, FEW, [client.id for client in clients]):
        week = _made(engine, coach, talk, now)
    return replace(week, about=tuple(dict.fromkeys((client.id, client.name) for client in clients)))


def _made(engine: "Engine", coach: Person, talk: Planned, now: datetime) -> Week:
    if talk.dialogue != ASKED:
        return make_for_all(engine, coach, now)
    page = talk.about["page"]
    return make(engine, coach, now) if page is None else make_page(engine, coach, now, page)


def names_somebody_gone(engine: "Engine", week: Week) -> bool:
    """Whether somebody was erased while it was made: their name would stand in a letter for two weeks more."""
    named = dict(week.about)
    return people.names_of(engine.store, named) != named


def make_for_all(engine: "Engine", coach: Person, now: datetime) -> Week:
    """The digest and, for every client of this coach, their own week. Reads only."""
    texts = [
        (client.id, recaps.text_of(engine, client, now))
        for client in people.clients_of(engine.store, coach.id)
    ]
    made = make(engine, coach, now)
    return replace(made, recaps=tuple((client, text) for client, text in texts if text is not None))


def make_page(engine: "Engine", coach: Person, now: datetime, page: int) -> Week:
    """A line per client, a screen at a time. Reads only."""
    made = weeks.week_of_practice(engine, coach, now)
    pages = words.pages(made)
    page = min(max(page, 0), pages - 1)
    turning = ((words.NEXT, page + 1, page + 1 < pages), (words.BACK, page - 1, page > 0))
    buttons = tuple((label, f"menu:everybody:{to}") for label, to, there in turning if there)
    return Week(words.everybody(made, page), buttons, {})


def tell(engine: "Engine", coach: Person, week: Week, now: datetime) -> None:
    """To the coach at once, before their clients' own weeks."""
    buttons = tuple(Choice(label, value) for label, value in week.buttons)
    engine.say(coach, Say(week.text, buttons), now, Priority.REMINDER)
    if week.chart and coach.chat is not None:
        letter = Letter(coach.chat, {"text": "", "chart": week.chart}, "chart", Priority.REMINDER, coach.id)
        mail.post(engine.store, letter, now)


def tell_clients(engine: "Engine", week: str, told: Sequence[tuple[int, str]], now: datetime) -> None:
    """Each their own week, when they do not sleep or train. `week` names it: said again, it is not told again."""
    for number, text in told:
        client = people.find(engine.store, number)
        if client is not None and not duties.noted(engine.store, number, week):
            quiet.note(engine, client, text, now, week)


def told(engine: "Engine", coach: Person, talk: Planned, week: Week, now: datetime) -> None:
    """The end of a talk that this week was made for: the coach has it, and the next one is planned.

    A second contact without clients of their own is not written to every week.
    """
    if talk.dialogue == ASKED or week.text != words.NO_CLIENTS:
        tell(engine, coach, week, now)
    if talk.dialogue != ASKED:
        calendar.plan_week(engine, coach, now)


def at_once(engine: "Engine", coach: Person, talk: Planned, now: datetime) -> None:
    """Made and told here, where no process can be had for it."""
    week = make_for(engine, coach, talk, now)
    tell_clients(engine, name_of(talk), week.recaps, now)
    told(engine, coach, talk, week, now)


def name_of(talk: Planned) -> str:
    """By which a client's week is known as told: nobody gets one twice because we were killed meanwhile."""
    return f"{talk.id}:{talk.about.get('day', '')}"


def ask(engine: "Engine", coach: Person, now: datetime, page: int | None = None) -> None:
    """The digest of the last seven days, or a page of everybody, asked for: its making waits for nobody's set."""
    if all(one.about["page"] != page for one in duties.planned(engine.store, coach.id, ASKED)):
        duties.plan(engine.store, coach.id, ASKED, {"page": page}, now, now)
