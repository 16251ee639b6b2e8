"""The coach's clients, who needs attention first, a screen at a time; and one client by a typed name."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine.coach import card
from bot.engine.coach import clients as whose
from bot.engine.numbers import weeks
from conversations.protocol import Choice, Say
from conversations.words import coach as words
from conversations.words import engine as engine_words
from core.calendar.zones import local
from core.digest import ClientWeek, Need, digest
from core.store import threads
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

A_PAGE = 7  # a line and a button for each: a phone's screen


def show(engine: "Engine", coach: Person, now: datetime, page: int = 0) -> None:
    """One page of all clients; those who need the coach come first, each with why."""
    clients = whose.seen_by(engine, coach, now)
    if not clients:
        engine.say(coach, Say(engine_words.NO_CLIENTS), now)
        return
    made = digest(weeks.weeks_of(engine, clients, now))
    needing = {week.client for week, _ in made.needs_you}
    lines = [(week, reasons(week.name, why)) for week, why in made.needs_you]
    lines += [(week, calm(coach, week)) for week in made.weeks if week.client not in needing]
    pages = -(-len(lines) // A_PAGE)
    page = min(max(page, 0), pages - 1)
    shown = lines[page * A_PAGE : (page + 1) * A_PAGE]
    text = [words.list_head(len(clients), len(needing)), *(line for _, line in shown)]
    if pages > 1:
        text.append(words.LIST_PAGE.format(page=page + 1, pages=pages))
    buttons = [Choice(week.name, f"menu:client:{week.client}") for week, _ in shown]
    engine.say(coach, Say("\n".join(text), (*buttons, *_turning(page, len(lines)))), now)


def reasons(name: str, why: list[Need]) -> str:
    """ "Ruta: an alert is open, quiet for a week"."""
    return words.whole_parts(name, [words.REASONS[need] for need in why])


def calm(coach: Person, week: ClientWeek) -> str:
    """A client who needs nothing: how the week went, and when the next session is."""
    still = {
        words.DECLINED_STATE: week.declined,
        words.PAUSED: week.paused,
        words.FINISHED: week.finished,
        words.NOT_YET: week.answering,
    }
    if any(still.values()):
        state = next(state for state, so in still.items() if so)
        return words.LINE.format(name=week.name, state=state)
    done = words.DONE_OF if week.planned >= week.done else words.DONE
    parts = [done.format(done=week.done, planned=week.planned)] if week.planned or week.done else []
    if week.next_at is not None:
        parts.append(words.NEXT.format(when=local(week.next_at, coach.zone).strftime("%a %-d %b")))
    return words.whole_parts(week.name, parts or [words.NOTHING_PLANNED])


def _turning(page: int, lines: int) -> list[Choice]:
    left = lines - (page + 1) * A_PAGE
    buttons = []
    if left > 0:
        label = words.MORE_CLIENTS.format(number=min(left, A_PAGE))
        buttons.append(Choice(label, f"menu:clients:{page + 1}"))
    if page > 0:
        buttons.append(Choice(words.EARLIER_CLIENTS, f"menu:clients:{page - 1}"))
    return buttons


# Talk in which every question is about days, numbers or a reason, so that a client's name is no answer.
NO_NAMES = frozenset({"pausing", "holding", "adjusting", "allowing", "changing", "travelling", "planning"})


def named_aside(engine: "Engine", coach: Person, typed: str, now: datetime) -> bool:
    """A client's whole or first name at a question that asks for no name: the card; the question stays open."""
    asked = threads.floor(engine.store, coach.id)
    if coach.role is not Role.COACH or asked is None or asked.dialogue not in NO_NAMES:
        return False
    said = " ".join(typed.casefold().split())
    clients = whose.seen_by(engine, coach, now)
    meant = [one for one in clients if said in (one.name.casefold(), one.name.casefold().partition(" ")[0])]
    return bool(meant) and by_name(engine, coach, typed, now)


def by_name(engine: "Engine", coach: Person, typed: str, now: datetime) -> bool:
    """Open the card of who is meant, or ask which one; False: nobody is called so."""
    fitting = whose.found(engine, coach, typed, now)
    if not fitting:
        return False
    if len(fitting) == 1:
        card.show(engine, coach, fitting[0], now)
        return True
    names = whose.told_apart(fitting)
    buttons = tuple(Choice(names[one.id], f"menu:client:{one.id}") for one in fitting[:A_PAGE])
    many = words.WHICH_OF_MANY.format(count=len(fitting), shown=len(buttons))
    engine.say(coach, Say(many if len(buttons) < len(fitting) else words.WHICH, buttons), now)
    return True
