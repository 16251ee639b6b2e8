"""Buttons: those of a talk go to it, the engine's own are done here; theirs alone, and each through the gate."""

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, idle, menus, status, turns, typed
from bot.engine.joining import agreeing
from bot.engine.safety import alerts, health_news, stopping
from bot.engine.safety.bands_off import came_off
from bot.engine.training import corrections
from bot.engine.updates import Incoming
from conversations.protocol import Said, Say
from conversations.words import engine as words
from core.access import Action
from core.store import duties, mail, people, threads
from core.store.mail import Letter, Priority
from core.store.people import Person
from core.store.threads import Button

if TYPE_CHECKING:
    from bot.engine.core import Engine


def tap(engine: "Engine", person: Person, incoming: Incoming, now: datetime) -> None:
    """A button: ours and theirs, or refused."""
    mail.post(engine.store, Letter(incoming.chat, {"query": incoming.query}, "answer", Priority.SESSION), now)
    button = threads.button(engine.store, incoming.token, person.id)
    if button is None:
        engine.say(person, Say(words.NOT_YOURS), now)
        return
    if button.value == "stop":
        stopping.stopped(engine, person, words.STOP_TAPPED, now, None)
        return
    if button.thread is None:
        own_button(engine, person, button.value, now)
        return
    thread = threads.by_id(engine.store, button.thread)
    how = status.without_consent(engine, person.id)
    if (thread is None or thread.state is None) and how is not None:
        agreeing.way_back(engine, person, how, now)
        return
    if thread is None or thread.state is None:
        engine.say(person, Say(words.FINISHED), now)
        return
    at = safe_bound(engine, button, incoming, now)
    turns.deliver(engine, person, thread, Said(at, button.value, button.question))


def safe_bound(engine: "Engine", button: Button, incoming: Incoming, now: datetime) -> datetime:
    """When it happened: the tap's arrival, but for "bands on" the time when the tapped question went out."""
    question = button.question or ""
    if button.thread is None or not question.startswith("on."):
        return now
    sent = mail.question_sent_at(engine.store, incoming.chat, incoming.message, button.thread, question)
    return now if sent is None else min(sent, now)


def own_button(engine: "Engine", person: Person, value: str, now: datetime) -> None:
    """The engine's own buttons: bands off after the time call, alerts, menus."""
    act, _, rest = value.partition(":")
    if act not in BUTTONS:
        menus.menu(engine, person, value, now)
        return
    action, whom, done = BUTTONS[act]
    client = whom(engine, person, rest)
    if client is None or not gate.allows(engine, person, action, client):
        engine.say(person, Say(words.NOT_YOURS), now)
        return
    done(engine, person, rest, now)


def bands_off(engine: "Engine", person: Person, rest: str, now: datetime) -> None:
    """The button under "time's up"."""
    watch = duties.watch_by_id(engine.store, int(rest))
    if watch is None or watch.person != person.id:
        engine.say(person, Say(words.TIME_UP_THANKS), now)
        return
    came_off(engine, person, watch, now)


def never_on(engine: "Engine", person: Person, rest: str, now: datetime) -> None:
    """The other button under it, where nobody had said that they are on."""
    watch = duties.watch_by_id(engine.store, int(rest))
    if watch is None or watch.person != person.id:
        engine.say(person, Say(words.TIME_UP_THANKS), now)
        return
    came_off(engine, person, watch, now, never=True)


def alert_tapped(engine: "Engine", coach: Person, rest: str, now: datetime) -> None:
    """A button under an alert: what, and which."""
    what, _, numbers = rest.partition(":")
    first, *more = (int(number) for number in numbers.split("+"))
    alerts.tapped(engine, coach, what, first, now, more)
    about = _client_of_alert(engine, coach, rest)
    if what == "call" and about is not None:
        typed.ask_for_note(engine, coach, about, now)


def _client_of_alert(engine: "Engine", coach: Person, rest: str) -> Person | None:
    alert = duties.alert_by_id(engine.store, int(rest.rpartition(":")[2].partition("+")[0]))
    return None if alert is None else people.by_id(engine.store, alert.person)


Whom = Callable[["Engine", Person, str], Person | None]
Done = Callable[["Engine", Person, str, datetime], None]
# The engine's own buttons: what each asks the gate for, about whom, and what it does.
BUTTONS: dict[str, tuple[Action, Whom, Done]] = {
    "bands_off": (Action.TALK, lambda engine, person, rest: person, bands_off),
    "never_on": (Action.TALK, lambda engine, person, rest: person, never_on),
    "fix": (Action.TALK, lambda engine, person, rest: person, corrections.chosen),
    "news_is": (Action.TALK, lambda engine, person, rest: person, health_news.is_new),
    "news_not": (Action.TALK, lambda engine, person, rest: person, health_news.is_not),
    "send_line": (Action.TALK, lambda engine, person, rest: person, idle.send),
    "alert": (Action.TAKE_ALERT, _client_of_alert, alert_tapped),
}
