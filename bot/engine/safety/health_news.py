"""Health news told while nothing is asked: about the client and new, it bars training until it was looked at."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import idle, status
from bot.engine.joining import screenings
from bot.engine.safety import alerts, unread
from bot.engine.training import loads, starting
from conversations import health_news
from conversations.protocol import Choice, Event, Said, Say
from conversations.words import engine as engine_words
from conversations.words import health_news as words
from conversations.words import safety
from core.facts import Answered
from core.safety.causes import Cause
from core.screening import Due
from core.store import facts, threads
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

READS_IT_ITSELF = unread.AROUND_TRAINING | unread.HEALTH_TALKS
# The words follow: the buttons are the client's own, and go when they do.
IS, IS_NOT = "news_is:", "news_not:"


def asked(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """ "Is that about you, and new?"; True: asked. Whoever was never screened is asked everything anyway."""
    if screenings.tier(engine, client.id) == "" or status.without_consent(engine, client.id) is not None:
        return False
    if not health_news.told(text):
        return False
    engine.say(client, Say(words.ASK, (Choice(words.YES, IS + text), Choice(words.NO, IS_NOT + text))), now)
    return True


def asked_beside(engine: "Engine", client: Person, thread: Thread, event: Event) -> bool:
    """The same while something else is asked, which waits. A session, and talks about health, read it themselves."""
    if not isinstance(event, Said) or event.message is None or client.role is not Role.CLIENT:
        return False
    return thread.dialogue not in READS_IT_ITSELF and asked(engine, client, event.text, event.at)


def is_new(engine: "Engine", client: Person, text: str, now: datetime) -> None:
    """As if it had been said before a session: the coach is told, and the health questions come again."""
    if text:
        threads.change_buttons(engine.store, client.id, IS + text, IS)
        told = safety.told(Cause.TODAY_CHANGED, status.emergency_number(engine, client.id))
        session = loads.new_session(engine, client.id)
        facts.put(engine.store, client.id, Answered(now, session, "before", "news", "yes"), now)
        alerts.raise_alert(engine, client.id, Cause.TODAY_CHANGED, text, told)
        engine.say(client, Say(told), now)
    starting.screen(engine, client, now, Due.NEWS)


def is_not(engine: "Engine", client: Person, rest: str, now: datetime) -> None:
    """Somebody else's, long ago, or a doctor's yes that the coach waits for: the words are offered to the coach."""
    threads.change_buttons(engine.store, client.id, IS_NOT + rest, IS_NOT)
    coach = engine.coach_of(client)
    if not rest or coach is None:
        engine.say(client, Say(words.NOT_NEWS), now)
        return
    asked = words.NOT_NEWS_SEND.format(coach=coach.name)
    engine.say(client, Say(asked, (Choice(engine_words.SEND_IT_LABEL, idle.SEND + rest),)), now)
