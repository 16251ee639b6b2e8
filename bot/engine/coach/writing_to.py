"""A coach's typed words for one client: "to Nora: well done", "tell Nora that ...", "ask Nora if ..."."""

import re
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import turns
from bot.engine.coach import clients as whose
from bot.engine.coach import stopping_session
from conversations import passing_on
from conversations.protocol import Choice, Relay, Say
from conversations.words import engine as words
from core.store import threads
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

LONGEST_NAME = 3  # words
COLON = re.compile(r"^(?P<name>[^:]{1,40}):\s*(?P<text>.+)$", re.DOTALL)
ASKED_OF_THE_BOT = frozenset({"ask", "remind", "let", "say"})  # that no such client is meant is no mistake


def typed(engine: "Engine", coach: Person, text: str, now: datetime) -> bool:
    """Words that name one client go there; those that cannot be sent are told so unless a question is open."""
    said = passing_on.to_client(text)
    if said is None:
        return False
    found = _named(engine, coach, said.rest, now) or _before_colon(engine, coach, said.rest, now)
    if found is None and (said.verb in ASKED_OF_THE_BOT or threads.floor(engine.store, coach.id) is not None):
        return False
    if found is None:
        engine.say(coach, Say(words.NOT_SENT), now)
        return True
    client, line = found
    _send(engine, coach, client, said.verb, line, now)
    return True


def named(engine: "Engine", coach: Person, name: str, now: datetime) -> list[Person]:
    """Clients with this whole name, else this first name."""
    wanted = name.casefold()
    clients = whose.seen_by(engine, coach, now)
    whole = [client for client in clients if client.name.casefold() == wanted]
    return whole or [client for client in clients if client.name.casefold().split()[:1] == [wanted]]


def _send(engine: "Engine", coach: Person, client: Person, verb: str, line: str, now: datetime) -> None:
    """As it is where it is said to the client; what is said about them is asked for as they should read it."""
    from bot.engine import relaying

    if _names_another(engine, coach, line, now):
        engine.say(coach, Say(words.ONE_AT_A_TIME), now)
        return
    words_for = passing_on.as_said(verb, line)
    stops = stopping_session.is_stop(line) and stopping_session.under_way(engine, client)
    if words_for or stops:
        relaying.relay(engine, coach, Relay(words_for or line, client.id))
    else:
        turns.begin(engine, coach, "writing", {"client": client.id, "about_them": bool(line)}, now)


def _names_another(engine: "Engine", coach: Person, line: str, now: datetime) -> bool:
    """ "and Milo well done": the words are for two."""
    first, _, rest = line.partition(" ")
    return first.casefold() in ("and", "&", "+") and _named(engine, coach, rest, now) is not None


def offered(engine: "Engine", coach: Person, text: str, now: datetime) -> bool:
    """ "ruta well done": asked whether it goes to her; True: asked. The button holds the words until it is tapped."""
    said = text.strip()
    found = _named(engine, coach, said, now) or _at_the_end(engine, coach, said, now)
    if found is None or not found[1].strip():
        return False
    line = found[1].strip(" ,:-")
    offer(engine, coach, found[0], line, words.SEND_WORDS.format(name=found[0].name, text=line), now)
    return True


def offer(engine: "Engine", coach: Person, client: Person, line: str, asked: str, now: datetime) -> None:
    """A question whose button sends these words to the client."""
    send = Choice(words.SEND_IT_LABEL, f"menu:send_words:{client.id}/{line}")
    engine.say(coach, Say(asked, (send,)), now)


def send_offered(engine: "Engine", coach: Person, client: Person, line: str, now: datetime) -> None:
    """The button under the offer; once tapped it holds no words any more."""
    from bot.engine import relaying

    if not line:
        engine.say(coach, Say(words.SENT_ALREADY), now)
        return
    value = f"menu:send_words:{client.id}/"
    threads.change_buttons(engine.store, coach.id, value + line, value)
    relaying.relay(engine, coach, Relay(line, client.id))


def _at_the_end(engine: "Engine", coach: Person, said: str, now: datetime) -> tuple[Person, str] | None:
    """ "good job ruta"."""
    before, _, last = said.rstrip(".! ").rpartition(" ")
    fitting = named(engine, coach, last, now) if before else []
    return (fitting[0], said) if len(fitting) == 1 else None


def _named(engine: "Engine", coach: Person, rest: str, now: datetime) -> tuple[Person, str] | None:
    """The client whose name comes first, and what comes after it."""
    said = rest.split(maxsplit=LONGEST_NAME)
    for length in range(min(LONGEST_NAME, len(said)), 0, -1):
        fitting = named(engine, coach, " ".join(said[:length]).rstrip(",:-"), now)
        if len(fitting) == 1:
            return fitting[0], rest.split(maxsplit=length)[length] if len(rest.split()) > length else ""
    return None


def _before_colon(engine: "Engine", coach: Person, rest: str, now: datetime) -> tuple[Person, str] | None:
    """A part of a name will do where a colon ends it."""
    found = COLON.match(rest)
    fitting = [] if found is None else whose.found(engine, coach, found["name"], now)
    return (fitting[0], found["text"]) if found is not None and len(fitting) == 1 else None
