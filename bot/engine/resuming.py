"""Back in the middle of a session: where we were, that bands may be on, and the open question once more."""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import turns
from bot.engine.safety import never_on, open_alert
from conversations.protocol import Resumed, Say
from conversations.words import engine as words
from conversations.words import trouble
from core.store import duties, people, threads
from core.store.duties import Watch
from core.store.mail import Priority
from core.store.people import Person
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

BANDS_ON = "on."  # how the id of that question begins


def where_we_were(engine: "Engine", client: Person, now: datetime) -> None:
    """The client asked to start, in the middle of a session."""
    banded = duties.watches(engine.store, client.id)
    talk = threads.floor(engine.store, client.id)
    if banded and talk is None:
        _only_bands(engine, client, banded[0], now)
        return
    text = words.IN_SESSION_BANDED if banded else words.IN_SESSION
    if talk is not None and talk.dialogue == "trouble" and not banded:
        text = words.FIRST_THIS
    engine.say(client, Say(text), now, Priority.SESSION)
    if talk is not None:
        turns.deliver(engine, client, talk, Resumed(now))


def _only_bands(engine: "Engine", client: Person, watch: Watch, now: datetime) -> None:
    """The session is over and only its bands are left on, as far as anybody knows: they come off before all else."""
    text = trouble.ASK_OFF if open_alert.said_first(engine, client, now) else words.ON_UNASKED
    engine.say(client, Say(text, never_on.buttons(engine, watch)), now, Priority.ALERT)


def after_restart(engine: "Engine", now: datetime) -> None:
    """Everybody in a session hears that the program was away, and their open question once more."""
    live = {person.id: _session(engine, person.id) for person in people.in_talk(engine.store)}
    in_session = {number for number, session in live.items() if session is not None}
    for number in sorted(in_session | set(duties.banded(engine.store))):
        if not any(now > watch.next_at for watch in duties.watches(engine.store, number)):
            _say_so(engine, people.by_id(engine.store, number), live.get(number), now)


def _say_so(engine: "Engine", client: Person, session: Thread | None, now: datetime) -> None:
    """Bands first, then the one question that is open, as one message. Whose call is overdue gets that one alone."""
    questions = () if session is None else turns.foreseen(engine, session, Resumed(now)).replies
    banded = any(_asks_for_bands(say) for say in questions) or bool(duties.watches(engine.store, client.id))
    text = words.RESTARTED_BANDED if banded else words.RESTARTED
    overdue = session is not None and session.wake_at is not None and session.wake_at <= now
    if session is None or overdue or threads.floor(engine.store, client.id) != session:
        engine.say(client, Say(text), now, Priority.SESSION)
    else:
        _ask_again(engine, client, session, questions, text, now)


def _session(engine: "Engine", client: int) -> Thread | None:
    return threads.live_in(engine.store, client, "session")


def _asks_for_bands(question: Say) -> bool:
    """Whether bands were to go on: they may be, though nobody said so."""
    return (question.asks or "").startswith(BANDS_ON)


def _ask_again(
    engine: "Engine", client: Person, session: Thread, questions: tuple[Say, ...], text: str, now: datetime
) -> None:
    """The open question, without an event: a restart is no word of the client, so nothing waits longer for one.

    "Bands on" is left as it was asked: bands count from the message that is tapped.
    """
    again = [say for say in questions if not _asks_for_bands(say)]
    first = replace(again[0], text=f"{text}\n{again[0].text}") if again else Say(text)
    for say in (first, *again[1:]):
        engine.say(client, say, now, Priority.SESSION, session.id)
