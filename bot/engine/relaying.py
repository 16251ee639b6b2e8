"""Words from one side to the other: at once, after the night, or once the bands are off."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, quiet, status, turns
from bot.engine.coach import stopping_session
from conversations import passing_on
from conversations.protocol import Relay, Say
from conversations.words import engine as words
from core.access import Action
from core.calendar.zones import local
from core.facts import CoachDid
from core.store import duties, facts, people
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine


def for_coach(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """ "coach, ..." or "tell my coach ...", at any moment; True: it went there."""
    coach = engine.coach_of(client)
    line = passing_on.for_coach(text, "" if coach is None else coach.name)
    if line is None:
        return False
    relay(engine, client, Relay(line))
    return True


def relay(engine: "Engine", person: Person, effect: Relay) -> None:
    """The coach's words wait until the client's bands are off; a client's go at once."""
    from bot.engine import due

    now = engine.clock()
    if person.role is Role.CLIENT:
        to_coach(engine, person, effect.text, now)
        return
    assert effect.person is not None, "a coach's words name their client"
    client = people.by_id(engine.store, effect.person)
    if not gate.allows(engine, person, Action.RELAY, client):
        engine.say(person, Say(words.NOT_YOURS), now)
        return
    if stopping_session.is_stop(effect.text) and stopping_session.under_way(engine, client):
        stopping_session.stop(engine, person, client, now, effect.text)
        return
    facts.put(engine.store, client.id, CoachDid(now, person.id, "wrote", effect.text), now)
    if due.busy(engine, client, now):
        duties.plan(engine.store, client.id, "words", {"text": effect.text}, now, now)
        engine.say(person, Say(words.TO_WAITS.format(name=client.name)), now)
        return
    morning = quiet.earliest(engine, client, now)
    if morning > now and not effect.urgent:
        duties.plan(engine.store, client.id, "words", {"text": effect.text}, morning, now)
        until = f"{local(morning, client.zone):%H:%M}"
        engine.say(person, Say(words.TO_SLEEPS.format(name=client.name, until=until)), now)
        return
    engine.say(client, Say(words.FROM_COACH.format(text=effect.text)), now)
    engine.say(person, Say(words.SENT_TO.format(name=client.name)), now)


def to_coach(engine: "Engine", client: Person, text: str, now: datetime) -> None:
    """A client's words reach the coach after quiet hours at the latest, and the client reads that they do."""
    coach, number = engine.coach_of(client), status.emergency_number(engine, client.id)
    if coach is None:
        engine.say(client, Say(words.NO_COACH.format(number=number)), now)
        return
    quiet.note(engine, coach, words.FROM_CLIENT.format(name=client.name, text=text), now)
    asleep = quiet.is_quiet(engine, coach, now)
    sent = words.COACH_SLEEPS if asleep else words.SENT_TO_COACH
    engine.say(client, Say(sent.format(coach=coach.name, number=number)), now)


def write_to_coach(engine: "Engine", client: Person, now: datetime) -> None:
    """The next line goes to the coach; in a session, where lines are answers, only one that begins so."""
    from bot.engine import due

    if due.in_session(engine, client):
        engine.say(client, Say(words.TELL_IN_SESSION), now, Priority.SESSION)
    else:
        turns.begin(engine, client, "telling", {}, now)
