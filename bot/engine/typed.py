"""Typed words for the engine's own buttons: menus, alerts, and words to a client by name."""

import re
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import gate, turns
from bot.engine.coach import stopping_session, writing_to
from conversations.protocol import Choice, Say
from conversations.session.machine import open_question
from conversations.words import alerts as alert_words
from conversations.words import engine as words
from core.access import Action
from core.facts import CoachDid
from core.safety.causes import WEEKLY, Tier
from core.store import duties, facts, mail, people, settings, threads
from core.store.duties import OpenAlert
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

CALL = re.compile(r"^call noted\b[\s:,.–-]*(?P<note>.*)$", re.IGNORECASE | re.DOTALL)
WORDS = re.compile(r"\w+|[^\w\s.,!?:;()\-]")  # words, and pictures one by one
NOTE_WITHIN = timedelta(minutes=15)  # of the tap on "Call noted"; own choice
NOTE_FOR = "call_note:{coach}"  # a setting: about which client the coach's next line may be, and since when


def done(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """Words that are on a button of the engine's own; True: it is done."""
    from bot.engine import buttons

    said = _flat(text)
    if person.role is Role.COACH and (
        _about_alert(engine, person, text, now)
        or writing_to.typed(engine, person, text, now)
        or stopping_session.typed(engine, person, text, now)
    ):
        return True
    value = words.TYPED[person.role].get(said) or _newest(engine, person, said)
    if value is None:
        return False
    buttons.own_button(engine, person, value, now)
    return True


def thanked(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """Thanks are no answer to anything, whatever is asked; True: answered."""
    said = _words(text)
    if text.strip().casefold().startswith("coach"):  # that is for the coach
        return False
    if not said & words.THANKS or said - words.THANKS - words.BESIDE_THANKS:
        return False
    engine.say(person, Say(words.NO_THANKS_NEEDED), now)
    return True


def greeted(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """A greeting answers no question, and is no reason to put it again; True: greeted."""
    said, floor = _words(text), threads.floor(engine.store, person.id)
    if not _greets(said) or floor is None:
        return False
    engine.say(person, Say(_greeting(engine, person, floor).format(hello=words.hello(said))), now)
    return True


def _greeting(engine: "Engine", person: Person, floor: Thread) -> str:
    """With what is open: a question that can wait, one that cannot as bands are on, or none in a rest."""
    if floor.dialogue == "session" and not open_question(turns.state_of(floor)):
        return words.GREETED_RESTING
    return words.GREETED_BANDED if duties.watches(engine.store, person.id) else words.GREETED


def _greets(said: set[str]) -> bool:
    """Whether these words greet and say nothing else; "a", "good" or "evening" alone may be an answer."""
    if said - words.SALUTES - words.DAYTIMES - words.BESIDE_GREETINGS:
        return False
    asks_back = said >= words.HOW_ARE_YOU
    return asks_back or bool(said & words.SALUTES) or ("good" in said and bool(said & words.DAYTIMES))


def _words(text: str) -> set[str]:
    """The words and pictures of a line, without marks."""
    return set(WORDS.findall(text.casefold().replace("\ufe0f", "").replace("'", "")))


def _flat(text: str) -> str:
    return " ".join(text.casefold().replace("’", "'").split()).rstrip(".!")


def _newest(engine: "Engine", person: Person, said: str) -> str | None:
    """The value of a button with this label under the newest message that has any, if it is the engine's own.

    While a question is open, only where nothing was said since: a name typed for it is no tap on an old list.
    """
    if person.chat is None:
        return None
    asked = threads.floor(engine.store, person.id) is not None
    thread, rows = mail.newest_buttons(engine.store, person.chat, last_only=asked)
    if thread is not None:
        return None
    token = next((token for label, token in rows if _flat(label) == said), None)
    button = None if token is None else threads.button(engine.store, token, person.id)
    return None if button is None else button.value


# --- alerts ---
def _about_alert(engine: "Engine", coach: Person, text: str, now: datetime) -> bool:
    """ "I am on it", "call noted" with or without a note, "clear to train", "hold": of the one alert that is open.

    "I am on it" is meant for all that is open about one client.
    """
    call = CALL.match(text.strip())
    act = "call" if call is not None else alert_words.ALERT_TYPED.get(_flat(text))
    floor = threads.floor(engine.store, coach.id)
    if act is None or (act == "hold" and floor is not None and floor.dialogue == "clearing"):
        return False
    still_open = open_to(engine, coach, now)
    if not still_open:
        engine.say(coach, Say(alert_words.NO_ALERT), now)
        return True
    whom = {alert.person for alert in still_open}
    note = call["note"].strip() if call is not None else ""
    if len(still_open) > 1 and act == "take" and len(whom) == 1:
        open_ones = sorted(still_open, key=lambda one: one.tier is not Tier.NOW)
        _tap(engine, coach, act, "+".join(str(one.id) for one in open_ones), now)
    elif len(still_open) > 1:
        ask_which(engine, coach, f"alert:{act}:{{id}}", still_open, now)
    else:
        _tap(engine, coach, act, str(still_open[0].id), now)
    if note and len(whom) == 1:
        keep_note(engine, coach, whom.pop(), note, now)
    return True


def open_to(engine: "Engine", coach: Person, now: datetime) -> list[OpenAlert]:
    """The open alerts that this coach may answer, oldest first; those for the weekly look are left out."""
    clients = [
        client for one in people.coaches(engine.store) for client in people.clients_of(engine.store, one.id)
    ]
    mine = [client for client in clients if gate.allows(engine, coach, Action.TAKE_ALERT, client)]
    found = [alert for client in mine for alert in duties.open_alerts(engine.store, client.id)]
    return sorted((alert for alert in found if alert.cause not in WEEKLY), key=lambda alert: alert.id)


def ask_which(engine: "Engine", coach: Person, value: str, found: list[OpenAlert], now: datetime) -> None:
    """A button for each alert; `value` is its value, with `{id}` for the alert's."""
    from bot.engine.safety import alert_text

    names = {alert.person: people.by_id(engine.store, alert.person).name for alert in found}
    buttons = tuple(
        Choice(f"{names[alert.person]}: {alert_text.cause_line(alert)}", value.format(id=alert.id))
        for alert in found
    )
    engine.say(coach, Say(alert_words.WHICH_ALERT, buttons), now)


def _tap(engine: "Engine", coach: Person, act: str, which: str, now: datetime) -> None:
    from bot.engine import buttons

    buttons.own_button(engine, coach, f"alert:{act}:{which}", now)


# --- the note after a call ---
def ask_for_note(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """A call was noted: the coach's next line may be about it."""
    settings.put(engine.store, NOTE_FOR.format(coach=coach.id), f"{client.id}|{now.isoformat()}")
    engine.say(coach, Say(alert_words.CALL_NOTE.format(name=client.name)), now)


def noted(engine: "Engine", coach: Person, text: str, now: datetime) -> bool:
    """A line typed after "Call noted", while nothing else is asked; True: kept."""
    client, _, since = (settings.get(engine.store, NOTE_FOR.format(coach=coach.id)) or "").partition("|")
    if not client or now - datetime.fromisoformat(since) > NOTE_WITHIN:
        return False
    about = people.find(engine.store, int(client))
    # They may have left, or been handed over, since then.
    if about is None or not gate.allows(engine, coach, Action.TAKE_ALERT, about):
        return False
    keep_note(engine, coach, int(client), text.strip(), now)
    return True


def keep_note(engine: "Engine", coach: Person, client: int, note: str, now: datetime) -> None:
    """What was said on the phone, in the client's log."""
    settings.put(engine.store, NOTE_FOR.format(coach=coach.id), "")
    facts.put(engine.store, client, CoachDid(now, coach.id, "call_note", note), now)
    name = people.by_id(engine.store, client).name
    engine.say(coach, Say(alert_words.CALL_NOTE_KEPT.format(name=name, note=note)), now)
