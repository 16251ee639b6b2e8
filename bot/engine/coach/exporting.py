"""A coach's records as tables: whose they are is said first, noted in each client's log, and then the file is sent."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate
from bot.engine.coach import clients as whose
from conversations.protocol import Choice, Say
from conversations.words import engine as engine_words
from conversations.words import exporting as words
from core.access import Action
from core.calendar.zones import local
from core.facts import CoachDid
from core.store import facts, mail, people
from core.store.mail import Letter, Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

KIND = "export"  # of the letter; stored


def seen(engine: "Engine", coach: Person, now: datetime) -> list[Person]:
    """The coach's own clients and those they stand in for now: whom a coach may see, they may see as a table."""
    clients = whose.seen_by(engine, coach, now)
    return [one for one in clients if gate.allows(engine, coach, Action.SEE_CLIENT, one)]


def ask(engine: "Engine", coach: Person, now: datetime) -> None:
    """Whose records, and what they are, before anything is made."""
    clients = seen(engine, coach, now)
    if not clients:
        engine.say(coach, Say(engine_words.NO_CLIENTS), now)
        return
    text = words.ASK.format(whose=_whose(engine, coach, clients))
    engine.say(coach, Say(text, (Choice(words.YES, "menu:export_yes"),)), now)


def _whose(engine: "Engine", coach: Person, clients: list[Person]) -> str:
    called = whose.told_apart(clients)
    by_coach: dict[int, list[str]] = {}
    for client in clients:
        assert client.coach is not None, "they are somebody's"
        by_coach.setdefault(client.coach, []).append(called[client.id])
    own = by_coach.pop(coach.id, [])
    covered = {people.by_id(engine.store, number).name: names for number, names in by_coach.items()}
    return words.whose(own, covered)


def send(engine: "Engine", coach: Person, now: datetime) -> None:
    """A letter that names the clients; the ZIP is made when it goes out."""
    clients = seen(engine, coach, now)
    if not clients or coach.chat is None:
        engine.say(coach, Say(engine_words.NO_CLIENTS), now)
        return
    if mail.waits(engine.store, coach.chat, KIND):
        engine.say(coach, Say(words.ALREADY), now)
        return
    for client in clients:
        facts.put(engine.store, client.id, CoachDid(now, coach.id, "exported"), now)
    engine.say(coach, Say(words.COMING), now)
    here = local(now, coach.zone)
    body = {
        "text": words.caption(len(clients), here.strftime("%-d %B %Y, %H:%M")),
        "name": words.FILE.format(day=here.date().isoformat()),
        "clients": [client.id for client in clients],
        "asked": now.isoformat(),
    }
    mail.post(engine.store, Letter(coach.chat, body, KIND, Priority.DIGEST, coach.id), now)
