"""Words that fit no question: around training, and whenever they touch the body, they may be a cry, and are asked about."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine.safety import open_alert, said_more, stopping
from conversations.pain_said import says_only_pain
from conversations.prose import is_prose
from conversations.protocol import Alert, Effect, Event, Relay, Said
from conversations.stopwords.kinds import Kind
from conversations.stopwords.unread import worth_asking
from conversations.training.getting_better import tells_off
from core.facts import BandsOff
from core.store import duties, facts, mail
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

# Own caution, no source: words that nobody can read may be about a session so long ago, and no word at all after them calls
# the coach at once so long.
AFTER_BANDS = timedelta(hours=48)
ALARMING = timedelta(hours=24)
AROUND_TRAINING = stopping.TRAINS | {"morning"}
ASK_FOR_PAIN = frozenset({"before", "after", "morning"})
HEALTH_TALKS = frozenset({"screening", "consent", "trouble"})  # there troubles are what is talked about


def asked_whether_wrong(engine: "Engine", person: Person, thread: Thread | None, event: Event) -> bool:
    """Words that fit no question may be a cry; True: asked, and the question waits."""
    if not _typed(person, event):
        return False
    assert isinstance(event, Said)
    if thread is not None and thread.dialogue in HEALTH_TALKS:
        if thread.dialogue == "trouble" and worth_asking(event.text, near=True) and not tells_off(event.text):
            said_more.pass_on(engine, person, thread, event.text)
        return False
    if not worth_asking(event.text, near=near_training(engine, person, event.at, thread)):
        return False
    ask(engine, person, event)
    return True


def ask(engine: "Engine", person: Person, event: Said, *, sent: bool = False) -> None:
    """ "Is something wrong right now?", bands off first; words that sound of nothing can go to the coach instead.

    `sent`: they have gone there already.
    """
    open_alert.said_first(engine, person, event.at)
    to = stopping.coach_name(engine, person)
    off = facts.latest(engine.store, BandsOff, person.id)
    long_off = off is None or event.at - off.at >= ALARMING
    mild = bool(to) and long_off and not worth_asking(event.text, near=False)
    stopping.halt(engine, person, Kind.UNSURE, event.text, event.at, [], reader=to, mild=mild, sent=sent)


def asked_beside_the_coach(engine: "Engine", person: Person, text: str, now: datetime) -> None:
    """Words on their way to the coach, who may read them tonight: with bands on what touches the body is asked about too."""
    if duties.watches(engine.store, person.id) and worth_asking(text, near=False):
        ask(engine, person, Said(now, text), sent=True)


def says_more(
    engine: "Engine", person: Person, thread: Thread, event: Event, effects: tuple[Effect, ...]
) -> bool:
    """Whether words around training, taken as an answer, touch the body beside: "on now, my foot looks odd"."""
    if not _typed(person, event) or thread.dialogue not in AROUND_TRAINING:
        return False
    assert isinstance(event, Said)
    if any(isinstance(effect, (Alert, Relay)) for effect in effects) or not is_prose(event.text):
        return False
    if thread.dialogue in ASK_FOR_PAIN and says_only_pain(event.text):
        return False
    return worth_asking(event.text, near=False) and not _on_a_button(engine, person, event.text)


def _typed(person: Person, event: Event) -> bool:
    return isinstance(event, Said) and event.message is not None and person.role is Role.CLIENT


def _on_a_button(engine: "Engine", person: Person, text: str) -> bool:
    """Whether a button of the newest message says the same."""
    if person.chat is None:
        return False
    _, rows = mail.newest_buttons(engine.store, person.chat, last_only=False)
    return text.strip().casefold() in {label.casefold() for label, _ in rows}


def near_training(engine: "Engine", person: Person, at: datetime, thread: Thread | None) -> bool:
    """Whether bands may be on, or were within two days, or an alert is open that asks for whatever is new."""
    if duties.watches(engine.store, person.id) or open_alert.gravest(engine, person) is not None:
        return True
    off = facts.latest(engine.store, BandsOff, person.id)
    return (thread is not None and thread.dialogue in AROUND_TRAINING) or (
        off is not None and at - off.at < AFTER_BANDS
    )
