"""What coaches did about a client, newest first; the client may ask for the same."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine.coach import clients as whose
from conversations.protocol import Say
from conversations.words import coach as words
from core.calendar.zones import local
from core.facts import CoachDid
from core.store import facts, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

LOG_LINES = 12


def show(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """What coaches did about this client."""
    did = facts.current(engine.store, CoachDid, client.id)[-LOG_LINES:]
    lines = [_logged(engine, client, one) for one in reversed(did)] or [words.LOG_EMPTY]
    name = whose.name_of(engine, coach, client, now)
    back = words.to_card(name, client.id)
    engine.say(coach, Say("\n".join([words.LOG_HEAD.format(name=name), *lines]), (back,)), now)


def own(engine: "Engine", client: Person, now: datetime) -> None:
    """The same for the client: what was done about them, and where all of it stands."""
    did = facts.current(engine.store, CoachDid, client.id)[-LOG_LINES:]
    lines = [_logged(engine, client, one) for one in reversed(did)] or [words.LOG_EMPTY]
    engine.say(client, Say("\n".join([words.OWN_LOG_HEAD, *lines, words.OWN_LOG_MORE])), now)


def _logged(engine: "Engine", client: Person, one: CoachDid) -> str:
    what = words.DID.get(one.action, one.action.replace("_", " "))
    when = local(one.at, client.zone).strftime("%-d %b %H:%M")
    who = people.by_id(engine.store, one.by).name
    return words.cut(
        words.LOG_LINE.format(when=when, who=who, what=f"{what}: {one.note}" if one.note else what), 90
    )
